package ingest

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
