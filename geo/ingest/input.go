package ingest

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"hash"
	"io"
)

// recordSeparator begins each text of a JSON text sequence (RFC 7464 2.1, RFC
// 8142 2).
const recordSeparator = 0x1e

// input cuts a stream into records: lines, or what stands between record
// separators.
type input struct {
	r         *bufio.Reader
	limits    Limits
	separator byte
	line      int // on which the next record begins
	offset    int // at which the next record begins
	ended     bool
	failed    error     // why it ended within a record that had a fault of its own
	many      bool      // if there is more, it is more records
	sum       hash.Hash // of all bytes read; nil once the records count one by one
}

func newInput(r io.Reader, limits Limits) *input {
	in := &input{
		r:         bufio.NewReaderSize(r, 1<<16),
		limits:    limits,
		separator: '\n',
		line:      1,
		sum:       sha256.New(),
	}
	if mark := []byte("\xef\xbb\xbf"); bytes.Equal(in.peek(len(mark)), mark) {
		in.r.Discard(len(mark))
		in.take(mark)
	}
	if bytes.HasPrefix(in.peek(1), []byte{recordSeparator}) {
		in.separator = recordSeparator
	}
	return in
}

// peek returns up to n bytes without taking them. A read error comes back
// when they are taken.
func (in *input) peek(n int) []byte {
	b, _ := in.r.Peek(n)
	return b
}

// next returns the next record that is not blank; ok is false at the end. That
// an input cannot be read on is a fault of the record it happens in or, if that
// has one already, of one more.
func (in *input) next() (rec record, ok bool) {
	for !in.ended {
		rec = record{line: in.line, offset: in.offset, grammar: grammar{depth: in.limits.Depth}, at: -1}
		in.fill(&rec)
		if rec.fault != nil || rec.grammar.begun() {
			return rec, true
		}
	}
	if in.failed == nil {
		return rec, false
	}
	rec = record{line: in.line, offset: in.offset}
	rec.fail(readFailed(in.failed), -1)
	in.failed = nil
	return rec, true
}

func readFailed(err error) *fault {
	return &fault{code: "read_failed", text: "cannot be read on: " + err.Error()}
}

// fill adds the stretch up to the next separator to rec. After a fault the
// rest of the stretch is passed over.
func (in *input) fill(rec *record) {
	for passed := 0; ; {
		chunk, err := in.r.ReadSlice(in.separator)
		in.take(chunk)
		if rec.fault == nil {
			rec.add(in.text(chunk), in.most())
		} else {
			passed += len(chunk)
		}
		switch {
		case err == bufio.ErrBufferFull:
			if in.ended = in.hopeless(rec.fault, passed); in.ended {
				return
			}
		case err != nil:
			in.end(rec, err)
			return
		default:
			return
		}
	}
}

// most is how many bytes a record may have.
func (in *input) most() int {
	if in.many {
		return min(in.limits.Line, in.limits.Bytes)
	}
	return in.limits.Bytes
}

// hopeless reports whether to give up an input that may still be one document
// when it has a fault and its line goes on and on.
func (in *input) hopeless(f *fault, passed int) bool {
	return !in.many && f != nil && (f.limit || passed > in.limits.Bytes)
}

// take keeps account of bytes read.
func (in *input) take(chunk []byte) {
	in.offset += len(chunk)
	in.line += bytes.Count(chunk, []byte{'\n'})
	if in.sum != nil {
		in.sum.Write(chunk)
	}
}

// text is chunk without a record separator.
func (in *input) text(chunk []byte) []byte {
	if in.separator == recordSeparator {
		return bytes.TrimSuffix(chunk, []byte{recordSeparator})
	}
	return chunk
}

func (in *input) end(rec *record, err error) {
	in.ended = true
	switch {
	case err == io.EOF:
	case rec.fault == nil:
		rec.fail(readFailed(err), -1)
	default:
		in.failed = err
	}
}

// rest adds all that is left of the input to rec.
func (in *input) rest(rec *record) {
	for !in.ended && rec.fault == nil {
		in.fill(rec)
	}
}
