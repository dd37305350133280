package ingest

import (
	"bufio"
	"bytes"
)

// Beginning returns the first bytes of an input without taking them, as many as
// tell what it is, but does not wait for more than a first line that is a whole
// JSON object: who sends that may wait for an answer. It is good until the input
// is read.
func Beginning(r *bufio.Reader) []byte { return beginning(r, sniffBytes) }

func beginning(r *bufio.Reader, most int) []byte {
	for looked := 0; ; {
		head, _ := r.Peek(r.Buffered())
		end := bytes.IndexByte(head[looked:], '\n')
		if len(head) >= most || end >= 0 && wholeObject(head[:looked+end]) {
			return head[:min(len(head), most)]
		}
		looked = len(head)
		if all, err := r.Peek(looked + 1); err != nil {
			return all
		}
	}
}

func wholeObject(line []byte) bool {
	value := wellFormed(bytes.TrimPrefix(line, []byte{recordSeparator}))
	return len(value) > 0 && value[0] == '{'
}
