package ingest

import "encoding/binary"

// A pbfMessage walks the fields of a message in the protocol buffer encoding
// (protobuf.dev/programming-guides/encoding).
type pbfMessage struct {
	rest   []byte
	field  uint64
	number uint64 // of a field that is a number
	body   []byte // of a field that is a text, a message or packed numbers
	broken bool   // the rest cannot be read
}

// The ways a field may be written.
const (
	pbfVarint = 0
	pbfWide   = 1 // 8 bytes
	pbfBody   = 2
	pbfNarrow = 5 // 4 bytes
)

// next steps to the next field; false at the end, or if the rest is broken.
func (m *pbfMessage) next() bool {
	if len(m.rest) == 0 || m.broken {
		return false
	}
	key := m.varint()
	m.field, m.number, m.body = key>>3, 0, nil
	switch key & 7 {
	case pbfVarint:
		m.number = m.varint()
	case pbfBody:
		m.body = m.cut(m.varint())
	case pbfWide:
		m.cut(8)
	case pbfNarrow:
		m.cut(4)
	default:
		m.broken = true
	}
	return !m.broken
}

func (m *pbfMessage) varint() uint64 {
	v, n := binary.Uvarint(m.rest)
	if n <= 0 {
		m.broken = true
		return 0
	}
	m.rest = m.rest[n:]
	return v
}

func (m *pbfMessage) cut(n uint64) []byte {
	if m.broken || n > uint64(len(m.rest)) {
		m.broken = true
		return nil
	}
	body := m.rest[:n:n]
	m.rest = m.rest[n:]
	return body
}

// pbfNumbers walks packed numbers.
type pbfNumbers struct {
	rest   []byte
	sum    int64 // of the differences read so far
	broken bool
}

// more reports whether there are numbers left.
func (n *pbfNumbers) more() bool { return len(n.rest) > 0 && !n.broken }

func (n *pbfNumbers) next() uint64 {
	v, size := binary.Uvarint(n.rest)
	if size <= 0 {
		n.broken = true
		return 0
	}
	n.rest = n.rest[size:]
	return v
}

// sumNext reads a difference to the number before, and returns the number.
func (n *pbfNumbers) sumNext() int64 {
	n.sum += zigzag(n.next())
	return n.sum
}

// zigzag undoes the encoding of signed numbers as 0, -1, 1, -2, ...
func zigzag(v uint64) int64 { return int64(v>>1) ^ -int64(v&1) }
