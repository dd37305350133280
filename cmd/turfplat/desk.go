package main

import (
	"fmt"
	"io"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// A desk is where a command works: what comes in, what goes out, and what is
// said about it.
type desk struct {
	in            io.Reader
	out, messages io.Writer
}

// tell writes one message a line: the program, the kind of message, the text.
func (d *desk) tell(kind, text string) {
	for _, line := range strings.Split(text, "\n") {
		fmt.Fprintf(d.messages, "turfplat: %s: %s\n", kind, line)
	}
}

// alike is how many warnings of one sort are told in full.
const alike = 4

// tellProblems tells what was found in a site: errors all, of warnings of one
// sort the first few and the number of the others.
func (d *desk) tellProblems(problems []ingest.Problem) {
	count := make(map[string]int)
	for _, p := range problems {
		if count[p.Code]++; p.Severity == ingest.Refusal || count[p.Code] <= alike {
			d.tellProblem(p)
		}
	}
	summed := make(map[string]bool)
	for _, p := range problems {
		if more := count[p.Code] - alike; p.Severity != ingest.Refusal && more > 0 && !summed[p.Code] {
			summed[p.Code] = true
			d.tell("warning", fmt.Sprintf("%s: %d more like it: turfplat check lists them all (%s)", p.Place.Source, more, p.Code))
		}
	}
}

// tellAll tells every problem in full.
func (d *desk) tellAll(problems []ingest.Problem) {
	for _, p := range problems {
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
