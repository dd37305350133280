package main

import (
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"
)

// A progress line shows, on a terminal only, how many sites of a long run are
// done.
type progress struct {
	to    io.Writer // nil = silent
	start time.Time
	shown time.Time
	count int
}

const patience = 2 * time.Second // before the first word

func (o *order) progress() *progress {
	now := time.Now()
	p := &progress{start: now, shown: now.Add(patience)}
	if f, ok := o.messages.(*os.File); ok && !o.quiet {
		if info, err := f.Stat(); err == nil && info.Mode()&fs.ModeCharDevice != 0 {
			p.to = f
		}
	}
	return p
}

func (p *progress) step() {
	p.count++
	now := time.Now()
	if p.to == nil || now.Before(p.shown) {
		return
	}
	p.shown = now.Add(patience / 10)
	fmt.Fprintf(p.to, "\r%d sites, %.0f a second ", p.count, float64(p.count)/now.Sub(p.start).Seconds())
}

func (p *progress) done() {
	if p.to != nil && time.Since(p.start) > patience {
		fmt.Fprint(p.to, "\r\x1b[K")
	}
}
