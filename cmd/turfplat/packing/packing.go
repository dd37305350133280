// Package packing reads and writes compressed files: as one text, and as blocks
// that are packed each by itself, so that a file that breaks off is good up to
// its last whole block and can be gone on with from there.
package packing

import (
	"bufio"
	"bytes"
	"io"
	"path/filepath"
	"strings"
	"sync"

	"github.com/klauspost/compress/gzip"
	"github.com/klauspost/compress/zstd"
)

// A Way is one in which files are compressed.
type Way struct {
	Name   string
	Ending string // of file names
	begins func(head []byte) bool
	unpack func(io.Reader) (io.ReadCloser, error)
	pack   func(dst, text []byte) []byte      // appends the text as a block of its own
	block  func(*bufio.Reader) (block, error) // reads one such block
}

// ways are those that are read, whatever the file is called, and written by the
// ending of its name. Sources of the first bytes: RFC 1952 2.3.1, RFC 8878 3.1.1
// and 3.1.2 (a frame to be skipped may come first).
var ways = []*Way{
	{
		Name: "gzip", Ending: ".gz",
		begins: func(head []byte) bool { return bytes.HasPrefix(head, []byte("\x1f\x8b\x08")) },
		unpack: func(r io.Reader) (io.ReadCloser, error) { return gzip.NewReader(r) },
		pack:   packGzip, block: gzipBlock,
	},
	{
		Name: "zstd", Ending: ".zst",
		begins: func(head []byte) bool {
			return bytes.HasPrefix(head, []byte("\x28\xb5\x2f\xfd")) ||
				len(head) >= 4 && head[0]&0xf0 == 0x50 && bytes.Equal(head[1:4], []byte("\x2a\x4d\x18"))
		},
		unpack: unpackZstd,
		pack:   func(dst, text []byte) []byte { return zstdPress().EncodeAll(text, dst) }, block: zstdBlock,
	},
}

// Of is the way that a file name asks for; nil if it asks for none.
func Of(name string) *Way {
	for _, w := range ways {
		if strings.EqualFold(filepath.Ext(name), w.Ending) {
			return w
		}
	}
	return nil
}

// Known is the way in which a file is packed that begins like this; nil if it is
// not packed in one of those known. Four bytes are enough.
func Known(head []byte) *Way {
	for _, w := range ways {
		if w.begins(head) {
			return w
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
