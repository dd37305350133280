package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"sync"

	"github.com/klauspost/compress/gzip"
	"github.com/klauspost/compress/zstd"
)

// A packing is a way in which files are compressed.
type packing struct {
	name   string
	ending string // of file names
	begins func(head []byte) bool
	unpack func(io.Reader) (io.ReadCloser, error)
	pack   func(dst, text []byte) []byte      // appends the text as a block of its own
	block  func(*bufio.Reader) (block, error) // reads one such block
}

// packings are those that are read, whatever the file is called, and written
// by the ending of the output's name. Sources of the first bytes: RFC 1952
// 2.3.1, RFC 8878 3.1.1 and 3.1.2 (a frame to be skipped may come first).
var packings = []*packing{
	{
		name: "gzip", ending: ".gz",
		begins: func(head []byte) bool { return bytes.HasPrefix(head, []byte("\x1f\x8b\x08")) },
		unpack: func(r io.Reader) (io.ReadCloser, error) { return gzip.NewReader(r) },
		pack:   packGzip, block: gzipBlock,
	},
	{
		name: "zstd", ending: ".zst",
		begins: func(head []byte) bool {
			return bytes.HasPrefix(head, []byte("\x28\xb5\x2f\xfd")) ||
				len(head) >= 4 && head[0]&0xf0 == 0x50 && bytes.Equal(head[1:4], []byte("\x2a\x4d\x18"))
		},
		unpack: unpackZstd,
		pack:   func(dst, text []byte) []byte { return zstdPress().EncodeAll(text, dst) }, block: zstdBlock,
	},
}

// packingOf is the packing that a file name asks for; nil if it asks for none.
func packingOf(name string) *packing {
	for _, p := range packings {
		if strings.EqualFold(filepath.Ext(name), p.ending) {
			return p
		}
	}
	return nil
}

// widestWindow is how far back packed text may refer, which is what unpacking
// takes of memory; the widest that zstd writes without being told so twice.
const widestWindow = 128 << 20

func unpackZstd(r io.Reader) (io.ReadCloser, error) {
	d, err := zstd.NewReader(r, zstd.WithDecoderConcurrency(1), zstd.WithDecoderMaxWindow(widestWindow))
	if err != nil {
		return nil, err
	}
	return d.IOReadCloser(), nil
}

// zstdPress packs blocks. On one core, so that bytes depend on the text only.
var zstdPress = sync.OnceValue(func() *zstd.Encoder {
	e, err := zstd.NewWriter(nil, zstd.WithEncoderConcurrency(1), zstd.WithEncoderCRC(true), zstd.WithZeroFrames(true))
	if err != nil {
		panic(err) // the options are ours
	}
	return e
})

// gzipPresses pack blocks, without a name or a time.
var gzipPresses = sync.Pool{New: func() any { return gzip.NewWriter(nil) }}

func packGzip(dst, text []byte) []byte {
	b := bytes.NewBuffer(dst)
	w := gzipPresses.Get().(*gzip.Writer)
	defer gzipPresses.Put(w)
	w.Reset(b)
	w.Write(text) // into memory: neither fails
	w.Close()
	return b.Bytes()
}

// An unpacking reads packed text and stops at what no file of sites is.
type unpacking struct {
	io.ReadCloser
	how    *packing
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
		err = fmt.Errorf("the %s data breaks off", u.how.name)
	case errors.Is(err, zstd.ErrWindowSizeExceeded):
		err = fmt.Errorf("the zstd data refers back over more than %d MiB: pack it again without --long or --ultra", widestWindow>>20)
	case err != nil && err != io.EOF:
		err = fmt.Errorf("the %s data is damaged: %w", u.how.name, err)
	}
	return n, err
}
