package ingest

import (
	"bufio"
	"bytes"
)

// textLines hands out the lines of a text file.
type textLines struct {
	r      *bufio.Reader
	log    *trackLog
	number int // of the line at hand, from 1
}

// next returns the next line without its end; it may be used until the next
// call. Lines longer than the buffer are no text: they are passed over.
func (l *textLines) next() (line []byte, ok bool) {
	for !l.log.full() {
		line, err := l.r.ReadSlice('\n')
		l.number++
		if err == bufio.ErrBufferFull {
			l.log.note(finding{severity: Warning, code: "line_long", text: "line is too long, passed over", plural: "lines"}, l.number)
			for err == bufio.ErrBufferFull {
				_, err = l.r.ReadSlice('\n')
			}
			if err != nil {
				return nil, false
			}
			continue
		}
		if err != nil && len(line) == 0 {
			return nil, false
		}
		return bytes.TrimRight(line, "\r\n"), true
	}
	return nil, false
}
