package soil

import (
	"fmt"

	"example.org/turfplat/geo/ingest"
)

// findings gather what is wrong with a log: what recurs in a column is told
// once, where it occurs first, with how often.
type findings struct {
	source string
	list   []finding
	index  map[[2]string]int // of a code and a column in the list
}

// A finding is something wrong, and what is counted of it.
type finding struct {
	ingest.Problem
	plural string
}

// add notes a finding or counts it to that of the same code and column.
func (f *findings) add(line int, column, plural string, p ingest.Problem) {
	key := [2]string{p.Code, column}
	if i, known := f.index[key]; known {
		f.list[i].Count++
		return
	}
	if f.index == nil {
		f.index = make(map[[2]string]int)
	}
	f.index[key] = len(f.list)
	p.Place = ingest.Place{Source: f.source, Line: line, Feature: -1, Label: column}
	p.Count = 1
	f.list = append(f.list, finding{p, plural})
}

// refuse notes what stops the log from being read.
func (f *findings) refuse(line int, code, text, hint string) {
	f.add(line, "", "times", ingest.Problem{Severity: ingest.Refusal, Code: code, Text: text, Hint: hint})
}

// makeRefusal makes a Refusal of a finding, if there is such.
func (f *findings) makeRefusal(code, column string) {
	if i, found := f.index[[2]string{code, column}]; found {
		f.list[i].Severity = ingest.Refusal
	}
}

// warn notes what was left out or put right.
func (f *findings) warn(line int, column, plural, code, text, hint string) {
	f.add(line, column, plural, ingest.Problem{Severity: ingest.Warning, Code: code, Text: text, Hint: hint})
}

// refused reports whether the log cannot be used.
func (f *findings) refused() bool {
	for _, p := range f.list {
		if p.Severity == ingest.Refusal {
			return true
		}
	}
	return false
}

// problems are the findings with their counts.
func (f *findings) problems() []ingest.Problem {
	var list []ingest.Problem
	for _, found := range f.list {
		p := found.Problem
		if p.Count > 1 {
			p.Text += fmt.Sprintf(" (%d %s)", p.Count, found.plural)
		} else {
			p.Count = 0
		}
		list = append(list, p)
	}
	return list
}
