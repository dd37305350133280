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

// A pbfObject holds the fields that nodes, ways and relations have in common,
// and the rest as it stands.
type pbfObject struct {
	keys, values pbfNumbers
	visible      bool
}

// common takes a field that all objects have.
func (o *pbfObject) common(m *pbfMessage) {
	switch m.field {
	case 2:
		o.keys.rest = m.body
	case 3:
		o.values.rest = m.body
	case 4:
		o.visible = visible(m.body)
	}
}

// visible reads an Info message: only deleted objects have the field false.
func visible(info []byte) bool {
	m := pbfMessage{rest: info}
	for m.next() {
		if m.field == 6 {
			return m.number != 0
		}
	}
	return true
}

// finish adds the tags to the object at hand and hands it on.
func (b *pbfBlock) finish(common *pbfObject) *fault {
	if !common.visible {
		b.deleted(&b.object)
		return nil
	}
	for common.keys.more() && common.values.more() {
		key, value := b.text(common.keys.next()), b.text(common.values.next())
		if f := b.tag(&b.object, key, value); f != nil {
			return f
		}
	}
	if common.keys.broken || common.values.broken || common.keys.more() != common.values.more() {
		b.broken = true
	}
	if b.broken {
		return nil
	}
	return b.add(b.object)
}

func (b *pbfBlock) single(node []byte) *fault {
	o, common := b.begin(osmNode), &pbfObject{visible: true}
	var lat, lon int64
	m := pbfMessage{rest: node}
	for m.next() {
		switch m.field {
		case 1:
			o.id = zigzag(m.number)
		case 8:
			lat = zigzag(m.number)
		case 9:
			lon = zigzag(m.number)
		default:
			common.common(&m)
		}
	}
	if m.broken {
		b.broken = true
		return nil
	}
	if common.visible {
		if f := b.place(o.id, b.position(lat, lon)); f != nil {
			return f
		}
	}
	return b.finish(common)
}

// dense reads nodes that are written as columns.
func (b *pbfBlock) dense(nodes []byte) *fault {
	var ids, lats, lons, tags, seen pbfNumbers
	m := pbfMessage{rest: nodes}
	for m.next() {
		switch m.field {
		case 1:
			ids.rest = m.body
		case 5:
			seen.rest = visibleColumn(m.body)
		case 8:
			lats.rest = m.body
		case 9:
			lons.rest = m.body
		case 10:
			tags.rest = m.body
		}
	}
	for ids.more() && lats.more() && lons.more() && !b.broken {
		o := b.begin(osmNode)
		o.id = ids.sumNext()
		at := b.position(lats.sumNext(), lons.sumNext())
		if f := b.denseTags(o, &tags); f != nil {
			return f
		}
		if seen.more() && seen.next() == 0 {
			b.deleted(o)
			continue
		}
		if f := b.place(o.id, at); f != nil {
			return f
		}
		if f := b.add(*o); f != nil {
			return f
		}
	}
	b.broken = b.broken || m.broken || ids.broken || lats.broken || lons.broken || tags.broken ||
		ids.more() || lats.more() || lons.more()
	return nil
}

// denseTags reads the tags of the next dense node, which end with a zero.
func (b *pbfBlock) denseTags(o *osmObject, tags *pbfNumbers) *fault {
	for tags.more() {
		key := tags.next()
		if key == 0 {
			return nil
		}
		if f := b.tag(o, b.text(key), b.text(tags.next())); f != nil {
			return f
		}
	}
	return nil
}

// visibleColumn is that of a DenseInfo message.
func visibleColumn(info []byte) []byte {
	m := pbfMessage{rest: info}
	for m.next() {
		if m.field == 6 {
			return m.body
		}
	}
	return nil
}

func (b *pbfBlock) way(way []byte) *fault {
	o, common := b.begin(osmWay), &pbfObject{visible: true}
	var nodes, lats, lons pbfNumbers
	m := pbfMessage{rest: way}
	for m.next() {
		switch m.field {
		case 1:
			o.id = int64(m.number)
		case 8:
			nodes.rest = m.body
		case 9:
			lats.rest = m.body // only where the nodes are left out
		case 10:
			lons.rest = m.body
		default:
			common.common(&m)
		}
	}
	for nodes.more() {
		id := nodes.sumNext()
		if lats.more() && lons.more() {
			if f := b.place(id, b.position(lats.sumNext(), lons.sumNext())); f != nil {
				return f
			}
		}
		if f := b.node(o, id); f != nil {
			return f
		}
	}
	if m.broken || nodes.broken || lats.broken || lons.broken {
		b.broken = true
		return nil
	}
	return b.finish(common)
}

func (b *pbfBlock) relation(relation []byte) *fault {
	o, common := b.begin(osmRelation), &pbfObject{visible: true}
	var roles, ids, kinds pbfNumbers
	m := pbfMessage{rest: relation}
	for m.next() {
		switch m.field {
		case 1:
			o.id = int64(m.number)
		case 8:
			roles.rest = m.body
		case 9:
			ids.rest = m.body
		case 10:
			kinds.rest = m.body
		default:
			common.common(&m)
		}
	}
	for roles.more() && ids.more() && kinds.more() {
		kind := kinds.next()
		if kind > uint64(osmRelation) {
			b.broken = true
			return nil
		}
		if f := b.member(o, osmMember{osmKind(kind), ids.sumNext(), b.text(roles.next())}); f != nil {
			return f
		}
	}
	if m.broken || roles.broken || ids.broken || kinds.broken || roles.more() || ids.more() || kinds.more() {
		b.broken = true
		return nil
	}
	return b.finish(common)
}
