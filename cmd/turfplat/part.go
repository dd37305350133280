package main

import (
	"bytes"
	"iter"

	"example.org/turfplat/cmd/turfplat/packing"
)

// A stint is what a file that breaks off holds of one site.
type stint struct {
	mark
	text []byte
	end  int64 // where it ends in the file, packed as that is
}

// A mark says which site a line of the output is of.
type mark struct {
	id       string
	refused  bool   // it is the line of a site that was refused
	warnings string // that it tells of: a site that comes again has one more than the first
}

// stints gathers lines by the site that they are of. A line that its site
// began with begins another one; where single, so does each.
func stints(lines packing.Lines, of func(line []byte) mark, single bool) iter.Seq[stint] {
	return func(yield func(stint) bool) {
		var s stint
		var first []byte
		for line, end := range lines {
			m := of(line)
			if s.text != nil && (single || m != s.mark || bytes.Equal(line, first)) {
				if !yield(s) {
					return
				}
				s.text = nil
			}
			if s.text == nil {
				s.mark, first = m, line
			}
			s.text, s.end = append(s.text, line...), end
		}
		if s.text != nil {
			yield(s)
		}
	}
}
