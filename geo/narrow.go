package geo

import (
	"cmp"
	"math"
	"slices"
)

const (
	// steepest is by how much a metre ground widens that is a corner and not
	// narrow: a corner has a border up to its tip. Towards it the width that is
	// narrow goes down to nothing, lest rounding decide about a metre of border.
	steepest = 0.1
)

// NewBroadBorder is NewBorder, but where edges face each other, less than
// `narrow` metres apart, neither counts: what lies between them, be it ground of
// the region or a gap in it, is one edge drawn twice.
func NewBroadBorder(r Region, narrow float64) *Border {
	b := newBorder(r, narrow*math.Hypot(1, steepest)+grain)
	b.strikeNarrow(narrow)
	return b
}

// strikeNarrow takes edges that face each other out of what counts, the nearest
// first: between edges farther apart may lie others, which those edges are then
// none of, as where a crack runs along the rim of a lawn.
func (b *Border) strikeNarrow(narrow float64) {
	facings, all := b.facings(narrow)
	if !all && narrow > grain {
		b.strikeNarrow(narrow / 4)
		facings, _ = b.facings(narrow)
	}
	if len(facings) == 0 {
		return
	}
	if len(b.counting) == 0 {
		b.counting = blank(b.counting, len(b.edges))
	}
	slices.SortFunc(facings, b.byNearness)
	for _, f := range facings {
		b.strike(f)
	}
}

// byNearness puts the nearest first, and of those as near the western ones, so
// that the order hangs on the ground alone.
func (b *Border) byNearness(f, g facing) int {
	if f.apart != g.apart {
		return cmp.Compare(f.apart, g.apart)
	}
	return cmp.Or(compareXY(b.edges[f.edge].a, b.edges[g.edge].a), compareXY(b.edges[f.other].a, b.edges[g.other].a))
}

// strike takes what lies opposite each other of two edges out of what counts,
// where both still do.
func (b *Border) strike(f facing) {
	e, o := b.edges[f.edge], b.edges[f.other]
	way := e.b.Minus(e.a)
	along := func(p XY) float64 { return p.Minus(e.a).Dot(way) / way.Dot(way) }
	from, to := along(o.a), along(o.b) // of the other edge, as shares of this one
	one, other := &b.counting[f.edge], &b.counting[f.other]
	for _, s := range common(one.spans(), []span{f.part}, nil) {
		opposite := span{(s.to - from) / (to - from), (s.from - from) / (to - from)}
		for _, t := range common(other.spans(), []span{opposite}, nil) {
			other.take(t)
			one.take(span{from + t.to*(to-from), from + t.from*(to-from)})
		}
	}
}
