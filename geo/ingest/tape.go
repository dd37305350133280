package ingest

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"hash"
	"io"
)

// A tape is the input of a reader of tracks: it is counted and hashed as it
// runs by, and stops at a limit. Whatever error a format sees of it, fault
// tells afterwards what happened.
type tape struct {
	r     io.Reader
	limit int // of bytes
	read  int
	sum   hash.Hash
	err   error // that stopped it, but for io.EOF
}

func newTape(r io.Reader, limit int) *tape {
	return &tape{r: r, limit: limit, sum: sha256.New()}
}

// errTapeLong stops a tape that runs past its limit.
var errTapeLong = errors.New("input is too long")

func (t *tape) Read(p []byte) (int, error) {
	if t.err != nil {
		return 0, t.err
	}
	n, err := t.r.Read(p)
	t.read += n
	t.sum.Write(p[:n])
	if t.read > t.limit {
		err = errTapeLong
	}
	if err != nil && err != io.EOF {
		t.err = err
	}
	return n, err
}

// digest is that of the bytes read.
func (t *tape) digest() (d [32]byte) {
	t.sum.Sum(d[:0])
	return d
}

// fault is that of a tape that did not run to its end; nil if it did.
func (t *tape) fault() *fault {
	switch t.err {
	case nil:
		return nil
	case errTapeLong:
		return &fault{
			code: "limit_bytes", limit: true,
			text: fmt.Sprintf("has more than %d bytes, the limit for one file", t.limit),
			hint: "split it into smaller files",
		}
	}
	return &fault{code: "read_failed", text: "cannot be read on: " + t.err.Error()}
}
