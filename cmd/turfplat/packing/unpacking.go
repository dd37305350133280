package packing

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/klauspost/compress/zstd"
)

// Unpack reads the text of a packed file; taken tells how many bytes of it were
// read so far. Errors say what is wrong with the data: it is damaged or breaks
// off, or unpacks to more than a file of sites ever does.
func (w *Way) Unpack(r io.Reader, taken func() int64) (io.ReadCloser, error) {
	text, err := w.unpack(r)
	if err != nil {
		return nil, fmt.Errorf("the %s data is damaged: %w", w.Name, err)
	}
	return &unpacking{ReadCloser: text, how: w, packed: taken}, nil
}

// An unpacking reads packed text and stops at what no file of sites is.
type unpacking struct {
	io.ReadCloser
	how    *Way
	packed func() int64 // bytes taken so far
	text   int64        // bytes given so far
	line   int64        // of those since the last line began
}

const (
	// longestLine is far above the limit for one site, which is told with its
	// line; nothing but a bomb gets here.
	longestLine = 1 << 30
	// densest is how many times its size a file may unpack to, once that is much.
	// gzip does not pass 1,032; text of sites has about 5 to 20.
	densest = 2000
	much    = 64 << 20
)

func (u *unpacking) Read(p []byte) (int, error) {
	n, err := u.ReadCloser.Read(p)
	u.text += int64(n)
	if at := bytes.LastIndexAny(p[:n], "\n\x1e"); at >= 0 {
		u.line = int64(n - at - 1)
	} else {
		u.line += int64(n)
	}
	switch {
	case u.line > longestLine:
		err = fmt.Errorf("it unpacks to more than %d MiB on one line", longestLine>>20)
	case u.text > much && u.text > densest*u.packed():
		err = fmt.Errorf("it unpacks to more than %d times its size: unpack it first if it is to be trusted", densest)
	case errors.Is(err, io.ErrUnexpectedEOF):
		err = fmt.Errorf("the %s data breaks off", u.how.Name)
	case errors.Is(err, zstd.ErrWindowSizeExceeded):
		err = fmt.Errorf("the zstd data refers back over more than %d MiB: pack it again without --long or --ultra", widestWindow>>20)
	case err != nil && err != io.EOF:
		err = fmt.Errorf("the %s data is damaged: %w", u.how.Name, err)
	}
	return n, err
}
