package main

import (
	"bufio"
	"bytes"
	"io"
	"iter"
)

// A stint is what a file that breaks off holds of one site.
type stint struct {
	mark
	text []byte
	end  int64 // where it ends in the file, packed as that is
}

// A mark says which site a line of the output is of.
type mark struct {
	id      string
	refused bool // it is the line of a site that was refused
}

// A lineSeq is lines, and where each ends in the file.
type lineSeq = iter.Seq2[[]byte, int64]

// wholeLines yields the whole lines of a file that breaks off, and where each ends
// in it; of a packed file those of its whole blocks.
func wholeLines(f io.Reader, how *packing) lineSeq {
	r := bufio.NewReaderSize(f, 1<<16)
	if how == nil {
		return func(yield func([]byte, int64) bool) {
			for at := int64(0); ; {
				line, err := r.ReadBytes('\n')
				if err != nil {
					return
				}
				if at += int64(len(line)); !yield(line, at) {
					return
				}
			}
		}
	}
	return func(yield func([]byte, int64) bool) {
		at := int64(0)
		for b := range blocksOf(r, how) {
			if !bytes.HasSuffix(b.text, []byte{'\n'}) {
				return
			}
			at += b.size
			for line := range bytes.Lines(b.text) {
				if !yield(line, at) {
					return
				}
			}
		}
	}
}

// records joins lines that a quoted cell runs over (RFC 4180 2.6).
func records(lines lineSeq) lineSeq {
	return func(yield func([]byte, int64) bool) {
		var open []byte
		for line, end := range lines {
			open = append(open, line...)
			if bytes.Count(open, []byte{'"'})%2 == 1 {
				continue
			}
			if !yield(open, end) {
				return
			}
			open = nil
		}
	}
}

// stints gathers lines by the site that they are of. A line that its site
// began with begins another one; where single, so does each.
func stints(lines lineSeq, of func(line []byte) mark, single bool) iter.Seq[stint] {
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
