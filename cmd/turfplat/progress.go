package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"
)

// A progress line shows, on a terminal only, how many sites of a long run are
// done, and where the length of the files is known how long the rest will take.
type progress struct {
	to    io.Writer // nil = silent
	start time.Time
	next  time.Time // when to show it again
	shown bool
	count int

	taken func() int64 // bytes read of the files
	first int64        // of those, before it began
	whole int64        // bytes of the files; 0 = not known
}

const patience = 2 * time.Second // before the first word

func (o *order) progress() *progress {
	now := time.Now()
	p := &progress{start: now, next: now.Add(patience), taken: o.taken.Load, first: o.taken.Load(), whole: o.length()}
	if isTerminal(o.messages) && !o.quiet {
		p.to = o.messages
	}
	return p
}

// length is the sum of the lengths of the files that sites are read from; 0 if
// one has none, as a pipe.
func (o *order) length() (sum int64) {
	for _, file := range o.siteFiles() {
		info, err := os.Stat(file)
		if f, ok := o.in.(*os.File); ok && file == "-" {
			info, err = f.Stat()
		}
		if err != nil || !info.Mode().IsRegular() {
			return 0
		}
		sum += info.Size()
	}
	return sum
}

func (p *progress) step() {
	p.count++
	if p.to == nil {
		return
	}
	if now := time.Now(); now.After(p.next) {
		p.next = now.Add(patience / 10)
		p.shown = true
		fmt.Fprintf(p.to, "\r%s\x1b[K", p.text(now))
	}
}

// text is the line at a moment.
func (p *progress) text(now time.Time) string {
	passed := now.Sub(p.start)
	parts := []string{fmt.Sprintf("%d sites", p.count), fmt.Sprintf("%.0f a second", float64(p.count)/passed.Seconds())}
	if done, all := p.taken()-p.first, p.whole-p.first; done > 0 && done <= all {
		share := float64(done) / float64(all)
		left := time.Duration(float64(passed) * (1 - share) / share)
		parts = append(parts, fmt.Sprintf("%.0f %%", 100*share), roughly(left)+" left")
	}
	return strings.Join(parts, ", ")
}

// roughly is a time in the unit that tells it best.
func roughly(d time.Duration) string {
	switch {
	case d < 90*time.Second:
		return fmt.Sprintf("%.0f s", d.Seconds())
	case d < 90*time.Minute:
		return fmt.Sprintf("%.0f min", d.Minutes())
	}
	return fmt.Sprintf("%.1f h", d.Hours())
}

// hide takes the line off the terminal, for other words to stand there.
func (p *progress) hide() {
	if p.shown {
		fmt.Fprint(p.to, "\r\x1b[K")
		p.shown = false
	}
}
