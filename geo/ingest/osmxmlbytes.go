package ingest

import (
	"bufio"
	"io"
)

// osmTokenBytes is how long one tag, comment or text of an XML extract may be;
// the server allows 255 characters in a value (OSM API 0.6).
const osmTokenBytes = 1 << 20

// osmBytes hands a document to the XML decoder, and stops it before it stores
// too much. The decoder takes single bytes of a reader that gives them.
type osmBytes struct {
	*bufio.Reader
	limit int
	read  int
	token int // bytes of the token at hand
	fault *fault
}

// ReadByte gives the next byte within the limits.
func (b *osmBytes) ReadByte() (byte, error) {
	c, err := b.Reader.ReadByte()
	if err != nil {
		if err != io.EOF {
			b.fault = unreadOn(err)
		}
		return 0, err
	}
	b.read++
	b.token++
	switch {
	case b.read > b.limit:
		b.fault = beyond("limit_bytes", b.limit, "bytes")
	case b.token > osmTokenBytes:
		b.fault = beyond("limit_bytes", osmTokenBytes, "bytes in one piece of text")
	default:
		return c, nil
	}
	return 0, io.ErrShortBuffer
}
