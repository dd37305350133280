package ingest

import (
	"bufio"
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
)

// pbfBegin follows the four bytes of length at the start of a PBF file: the
// type of its first block.
const pbfBegin = "\x0a\x09OSMHeader"

// Limits of the format (wiki.openstreetmap.org/wiki/PBF_Format).
const (
	pbfHeaderBytes = 64 << 10
	pbfBlobBytes   = 32 << 20 // also unpacked
)

// pbfFeatures are what a file may require of its reader.
var pbfFeatures = map[string]bool{"OsmSchema-V0.6": true, "DenseNodes": true, "HistoricalInformation": true}

// pbfFile reads the blocks of a PBF file one after the other.
type pbfFile struct {
	*extract
	r        *bufio.Reader
	offset   int // in the file
	from     int // where the block at hand begins
	unpacked int // bytes of all blocks so far
	packed   []byte
	data     bytes.Buffer
	zlib     io.ReadCloser
	last     pbfBlock // whose memory the next one uses
}

func readPBF(r io.Reader, e *extract) *fault {
	p := &pbfFile{extract: e, r: bufio.NewReaderSize(r, 1<<16)}
	for {
		if _, err := p.r.Peek(1); err == io.EOF {
			return nil
		}
		if f := p.block(); f != nil {
			return f
		}
	}
}

func (p *pbfFile) block() *fault {
	p.from = p.offset
	size, f := p.take(4)
	if f != nil {
		return f
	}
	kind, blobSize, f := p.header(int(binary.BigEndian.Uint32(size)))
	if f != nil {
		return f
	}
	blob, f := p.take(blobSize)
	if f != nil {
		return f
	}
	switch kind {
	case "OSMHeader":
		return p.unpack(blob, p.required)
	case "OSMData":
		return p.unpack(blob, p.primitives)
	}
	return nil // of a later version of the format, to be passed over
}

// header reads what stands before a blob: its type and its size.
func (p *pbfFile) header(size int) (kind string, blobSize int, f *fault) {
	if size < 0 || size > pbfHeaderBytes {
		return "", 0, p.damaged(fmt.Sprintf("its header would have %d bytes", size))
	}
	header, f := p.take(size)
	if f != nil {
		return "", 0, f
	}
	m := pbfMessage{rest: header}
	for m.next() {
		switch m.field {
		case 1:
			kind = string(m.body)
		case 3:
			if m.number > pbfBlobBytes {
				return "", 0, p.damaged(fmt.Sprintf("it would have %d bytes", m.number))
			}
			blobSize = int(m.number)
		}
	}
	if m.broken {
		return "", 0, p.damaged("its header cannot be read")
	}
	return kind, blobSize, nil
}

// take reads n bytes, which are good until the next take.
func (p *pbfFile) take(n int) ([]byte, *fault) {
	if p.offset > p.limits.Bytes-n {
		return nil, beyond("limit_bytes", p.limits.Bytes, "bytes")
	}
	const step = 1 << 20 // a size is only believed when the bytes are there
	p.packed = p.packed[:0]
	for n > 0 {
		from := len(p.packed)
		p.packed = append(p.packed, make([]byte, min(n, step))...)
		if f := p.fill(p.packed[from:]); f != nil {
			return nil, f
		}
		n -= step
	}
	return p.packed, nil
}

func (p *pbfFile) fill(b []byte) *fault {
	n, err := io.ReadFull(p.r, b)
	p.offset += n
	switch err {
	case nil:
		return nil
	case io.EOF, io.ErrUnexpectedEOF:
		return &fault{
			code: "input_short", text: fmt.Sprintf("ends early at offset %d, inside the block that begins at offset %d", p.offset, p.from),
			hint: "copy or download it again",
		}
	}
	return unreadOn(err)
}

// unpack hands what a blob holds to read.
func (p *pbfFile) unpack(blob []byte, read func([]byte) *fault) *fault {
	m := pbfMessage{rest: blob}
	for m.next() {
		switch m.field {
		case 1:
			return p.unpacking(m.body, read)
		case 3:
			data, err := p.inflate(m.body)
			if err != nil {
				return p.damaged(err.Error())
			}
			return p.unpacking(data, read)
		case 4, 5, 6, 7:
			return &fault{
				code: "pbf_feature", text: fmt.Sprintf("the block at offset %d is packed in a way that is not supported", p.from),
				hint: "write it with zlib compression",
			}
		}
	}
	return p.damaged("it holds no data")
}

// unpacking keeps account of unpacked bytes.
func (p *pbfFile) unpacking(data []byte, read func([]byte) *fault) *fault {
	if len(data) > pbfBlobBytes {
		return p.damaged("it holds more than the 32 MiB that are allowed")
	}
	if p.unpacked += len(data); p.unpacked > p.limits.Bytes {
		return beyond("limit_bytes", p.limits.Bytes, "bytes when unpacked")
	}
	return read(data)
}

func (p *pbfFile) inflate(packed []byte) ([]byte, error) {
	var err error
	if p.zlib == nil {
		p.zlib, err = zlib.NewReader(bytes.NewReader(packed))
	} else {
		err = p.zlib.(zlib.Resetter).Reset(bytes.NewReader(packed), nil)
	}
	if err == nil {
		p.data.Reset()
		_, err = p.data.ReadFrom(io.LimitReader(p.zlib, pbfBlobBytes+1))
	}
	if errors.Is(err, io.ErrUnexpectedEOF) {
		err = errors.New("its data end early")
	}
	return p.data.Bytes(), err
}

// required checks what a file asks of its reader.
func (p *pbfFile) required(header []byte) *fault {
	m := pbfMessage{rest: header}
	for m.next() {
		if m.field == 4 && !pbfFeatures[string(m.body)] {
			return &fault{code: "pbf_feature", text: "requires the feature " + Quoted(string(m.body)) + ", which is not supported"}
		}
	}
	if m.broken {
		return p.damaged("it cannot be read")
	}
	return nil
}

func (p *pbfFile) damaged(why string) *fault {
	return &fault{
		code: "pbf_damaged", text: fmt.Sprintf("the block at offset %d is damaged: %s", p.from, why),
		hint: "copy or download it again",
	}
}
