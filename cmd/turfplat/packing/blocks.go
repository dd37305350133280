package packing

import (
	"bufio"
	"errors"
	"io"
	"iter"
	"sync"

	"github.com/klauspost/compress/gzip"
	"github.com/klauspost/compress/zstd"
)

// blockSize is the text that is packed together: enough to pack well, little
// enough to do again when a run breaks off.
const blockSize = 1 << 18

// A Writer writes text in blocks that are packed each by itself. A block ends
// where a Write ends.
type Writer struct {
	w            io.Writer
	how          *Way
	text, packed []byte
	written      bool
}

// NewWriter returns a Writer that packs what it writes to w.
func NewWriter(w io.Writer, how *Way) *Writer { return &Writer{w: w, how: how} }

func (p *Writer) Write(text []byte) (int, error) {
	p.text = append(p.text, text...)
	if len(p.text) < blockSize {
		return len(text), nil
	}
	return len(text), p.flush()
}

func (p *Writer) flush() error {
	p.packed = p.how.pack(p.packed[:0], p.text)
	p.text, p.written = p.text[:0], true
	_, err := p.w.Write(p.packed)
	return err
}

// Begun reports whether there is any text.
func (p *Writer) Begun() bool { return p.written || len(p.text) > 0 }

// Finish writes what is left; a file of no text at all is one empty block.
func (p *Writer) Finish() error {
	if p.written && len(p.text) == 0 {
		return nil
	}
	return p.flush()
}

// A block is one as read: its text, and how many bytes it takes in the file.
type block struct {
	text []byte
	size int64
}

// blocksOf yields the whole blocks of a file.
func blocksOf(f io.Reader, how *Way) iter.Seq[block] {
	return func(yield func(block) bool) {
		r := bufio.NewReaderSize(f, 1<<16)
		for {
			b, err := how.block(r)
			if err != nil || !yield(b) {
				return
			}
		}
	}
}

// largestBlock bounds what a block of a foreign file may ask for.
const largestBlock = 1 << 30

var errForeignBlock = errors.New("is packed in another way")

// A counter counts the bytes taken from a reader, to the byte.
type counter struct {
	*bufio.Reader
	taken int64
}

func (c *counter) Read(p []byte) (int, error) {
	n, err := c.Reader.Read(p)
	c.taken += int64(n)
	return n, err
}

func (c *counter) ReadByte() (byte, error) {
	b, err := c.Reader.ReadByte()
	if err == nil {
		c.taken++
	}
	return b, err
}

// gzipBlock reads a member of a gzip file (RFC 1952 2.2).
func gzipBlock(r *bufio.Reader) (block, error) {
	c := &counter{Reader: r}
	z, err := gzip.NewReader(c)
	if err != nil {
		return block{}, err
	}
	z.Multistream(false)
	text, err := io.ReadAll(io.LimitReader(z, largestBlock+1))
	if err == nil && len(text) > largestBlock {
		err = errForeignBlock
	}
	return block{text, c.taken}, err
}

// zstdBlock reads a frame of a zstd file (RFC 8878 3.1.1).
func zstdBlock(r *bufio.Reader) (block, error) {
	frame, err := zstdFrame(r)
	if err != nil {
		return block{}, err
	}
	text, err := zstdOpener().DecodeAll(frame, nil)
	return block{text, int64(len(frame))}, err
}

// zstdOpener unpacks blocks.
var zstdOpener = sync.OnceValue(func() *zstd.Decoder {
	d, err := zstd.NewReader(nil, zstd.WithDecoderConcurrency(1), zstd.WithDecoderMaxMemory(largestBlock))
	if err != nil {
		panic(err) // the options are ours
	}
	return d
})

// zstdFrame takes a frame from r as it is.
func zstdFrame(r *bufio.Reader) ([]byte, error) {
	head, err := r.Peek(zstd.HeaderMaxSize)
	if len(head) == 0 {
		return nil, err
	}
	var h zstd.Header
	if err := h.Decode(head); err != nil {
		return nil, err
	}
	if h.Skippable {
		return nil, errForeignBlock
	}
	f := &frameTaker{r: r}
	f.take(h.HeaderSize)
	for last := false; !last && f.err == nil; {
		last = f.takeBlock()
	}
	if h.HasCheckSum {
		f.take(4)
	}
	return f.frame, f.err
}

// A frameTaker takes a frame piece by piece, up to its first error.
type frameTaker struct {
	r     *bufio.Reader
	frame []byte
	err   error
}

// take takes n bytes and returns them.
func (f *frameTaker) take(n int) []byte {
	if f.err == nil && len(f.frame)+n > largestBlock {
		f.err = errForeignBlock
	}
	if f.err != nil {
		return make([]byte, n)
	}
	at := len(f.frame)
	f.frame = append(f.frame, make([]byte, n)...)
	_, f.err = io.ReadFull(f.r, f.frame[at:])
	return f.frame[at:]
}

// takeBlock takes a block of the frame (RFC 8878 3.1.1.2), and reports whether
// it was the last.
func (f *frameTaker) takeBlock() (last bool) {
	const repeated = 1 // a block that is one byte, many times
	head := f.take(3)
	word := int(head[0]) | int(head[1])<<8 | int(head[2])<<16
	size := word >> 3
	if word>>1&3 == repeated {
		size = 1
	}
	if f.err == nil {
		f.take(size)
	}
	return word&1 == 1
}
