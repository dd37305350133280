package main

import (
	"fmt"
	"io"
	"strings"
	"sync"
	"time"

	"example.org/turfplat/geo/ingest"
)

// A desk is where a command works: what comes in, what goes out, and what is
// said about it.
type desk struct {
	in            io.Reader
	out, messages io.Writer
	now           func() time.Time
	underway      underway
	talking       sync.Mutex // while a message is written, and for good once interrupted
}

func newDesk(in io.Reader, out, messages io.Writer) *desk {
	return &desk{in: in, out: out, messages: messages, now: time.Now}
}

// tell writes one message a line: the program, the kind of message, the text.
func (d *desk) tell(kind, text string) {
	d.talking.Lock()
	defer d.talking.Unlock()
	d.say(kind, text)
}

// say tells while no one else does.
func (d *desk) say(kind, text string) {
	for _, line := range strings.Split(text, "\n") {
		fmt.Fprintf(d.messages, "turfplat: %s: %s\n", kind, line)
	}
}

// tellProblems tells what was found in a site: errors all, of warnings of one
// sort the first few and the number of the others.
func (d *desk) tellProblems(problems []ingest.Problem) {
	s := d.sparing()
	s.tell(problems)
	s.sum(checkLists)
}

// tellAll tells every problem, in full but for those of the whole file.
func (d *desk) tellAll(problems []ingest.Problem) {
	for _, p := range told(problems) {
		d.tellProblem(p)
	}
}

func (d *desk) tellProblem(p ingest.Problem) {
	kind := p.Severity.String()
	if p.Severity == ingest.Note {
		kind = "hint"
	}
	d.tell(kind, p.String())
	if p.Hint != "" {
		d.tell("hint", p.Hint)
	}
}
