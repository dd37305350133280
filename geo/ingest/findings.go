package ingest

import (
	"fmt"

	"github.com/paulmach/orb"
)

// A finding is one thing wrong with a feature, however often it occurs there.
type finding struct {
	severity Severity
	code     string
	text     string
	hint     string
	near     *orb.Point // where it occurs first
	count    int
	plural   string // what is counted
}

// findings are those of one feature, in the order met.
type findings []finding

// again counts n more of a finding that is there already.
func (fs findings) again(code string, n int) bool {
	for i := range fs {
		if fs[i].code == code {
			fs[i].count += n
			return true
		}
	}
	return false
}

// add notes a finding, or adds its count to that of the same code.
func (fs *findings) add(f finding) {
	f.count = max(f.count, 1)
	if !fs.again(f.code, f.count) {
		*fs = append(*fs, f)
	}
}

// refused reports whether any of them blocks the site.
func (fs findings) refused() bool {
	for _, f := range fs {
		if f.severity == Refusal {
			return true
		}
	}
	return false
}

// problem puts a finding at its place.
func (f finding) problem(place Place) Problem {
	place.Near = f.near
	text := f.text
	if f.count > 1 {
		text += fmt.Sprintf(" (%d %s)", f.count, f.plural)
	}
	return Problem{Severity: f.severity, Code: f.code, Place: place, Text: text, Hint: f.hint, Count: f.count}
}
