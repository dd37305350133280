package ingest

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
