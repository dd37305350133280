package ingest

import "github.com/paulmach/orb"

// A pbfBlock decodes the objects of one block; numbers of fields are those of
// osmformat.proto (wiki.openstreetmap.org/wiki/PBF_Format).
type pbfBlock struct {
	*extract
	texts       [][]byte
	granularity int64 // nanodegrees
	latOffset   int64 // nanodegrees
	lonOffset   int64
	broken      bool // something points nowhere or stops short
	object      osmObject
}

// primitives reads a block of objects.
func (p *pbfFile) primitives(data []byte) *fault {
	b := &p.last
	*b = pbfBlock{extract: p.extract, granularity: 100, texts: b.texts[:0], object: b.object}
	if f := b.preamble(data); f != nil {
		return f
	}
	m := pbfMessage{rest: data}
	for m.next() && !b.broken {
		if m.field == 2 {
			if f := b.group(m.body); f != nil {
				return f
			}
		}
	}
	if m.broken || b.broken {
		return p.damaged("its objects cannot be read")
	}
	return nil
}

// preamble reads what holds for all objects of a block, wherever it stands.
func (b *pbfBlock) preamble(data []byte) *fault {
	m := pbfMessage{rest: data}
	for m.next() {
		switch m.field {
		case 1:
			if f := b.textTable(m.body); f != nil {
				return f
			}
		case 17:
			b.granularity = int64(m.number)
		case 19:
			b.latOffset = int64(m.number)
		case 20:
			b.lonOffset = int64(m.number)
		}
	}
	return nil
}

func (b *pbfBlock) textTable(table []byte) *fault {
	m := pbfMessage{rest: table}
	for m.next() {
		if m.field != 1 {
			continue
		}
		if len(b.texts) == b.limits.Tags {
			return beyond("limit_tags", b.limits.Tags, "texts in one block")
		}
		b.texts = append(b.texts, m.body)
	}
	b.broken = b.broken || m.broken
	return nil
}

// text returns an entry of the table.
func (b *pbfBlock) text(i uint64) string {
	if i >= uint64(len(b.texts)) {
		b.broken = true
		return ""
	}
	return string(b.texts[i])
}

// position turns a latitude and a longitude in units of the granularity
// into degrees.
func (b *pbfBlock) position(lat, lon int64) orb.Point {
	const nano = 1e9
	return orb.Point{
		float64(b.lonOffset+b.granularity*lon) / nano,
		float64(b.latOffset+b.granularity*lat) / nano,
	}
}

func (b *pbfBlock) group(group []byte) (f *fault) {
	m := pbfMessage{rest: group}
	for m.next() && !b.broken && f == nil {
		switch m.field {
		case 1:
			f = b.single(m.body)
		case 2:
			f = b.dense(m.body)
		case 3:
			f = b.way(m.body)
		case 4:
			f = b.relation(m.body)
		}
	}
	b.broken = b.broken || m.broken
	return f
}

// begin clears the object at hand.
func (b *pbfBlock) begin(kind osmKind) *osmObject {
	o := &b.object
	*o = osmObject{kind: kind, tags: o.tags[:0], nodes: o.nodes[:0], members: o.members[:0]}
	return o
}
