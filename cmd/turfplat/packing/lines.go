package packing

import (
	"bufio"
	"bytes"
	"io"
	"iter"
)

// Lines are lines with their ends, and where each ends in the file.
type Lines = iter.Seq2[[]byte, int64]

// WholeLines yields the whole lines of a file that breaks off; of one that is
// packed those of its whole blocks, each of which ends where its block does.
// A nil how is a file that is not packed.
func WholeLines(f io.Reader, how *Way) Lines {
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

// Records joins lines that a quoted cell runs over (RFC 4180 2.6).
func Records(lines Lines) Lines {
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
