package zones

import (
	"cmp"
	"fmt"
	"slices"

	"example.org/turfplat/geo"
)

const (
	// alike is the share of the ground they cover together from which two objects
	// of a kind are one and the same. Of objects that do not overlap each other no
	// two can have more than half in common with a third, so that the answer is
	// never in doubt.
	alike = 0.5
	// stability is the change of an area, as a share of it, below which a second
	// survey tells nothing new: the rule of thumb of farm registers (European
	// Commission, Joint Research Centre, guidance on land parcel identification
	// systems).
	stability = 0.02
	// smallestPart is the share of a whole below which a part of it is no reason to
	// call it divided: the rest is still the same thing, with another beside it
	// (our choice, no source).
	smallestPart = 0.1
)

// A match holds what stands in a site and what was surveyed of it again: one
// and one; one and the parts it fell into; or several and what they became.
type match struct{ old, new []*Object }

// matching finds the objects of a site among those of a second survey. An
// object matches at most once, and the same in whatever order they come.
type matching struct {
	*footprints
	old, new []*Object
	taken    map[*Object]bool
	found    []match
}

// newMatching matches by id; then what was traced by the very same positions;
// then what fell into parts and what grew together; then, kind by kind, the
// likest pairs.
func newMatching(prints *footprints, old, new []*Object) *matching {
	m := &matching{footprints: prints, taken: make(map[*Object]bool)}
	m.old, m.new = slices.SortedFunc(slices.Values(old), compareTracings), slices.SortedFunc(slices.Values(new), compareTracings)
	m.by(idOf, m.sameByID)
	m.by(tracingOf, func(_, _ *Object) bool { return true })
	m.parts(m.left(m.old), m.left(m.new), func(whole *Object, parts []*Object) { m.take([]*Object{whole}, parts) })
	m.parts(m.left(m.new), m.left(m.old), func(whole *Object, parts []*Object) { m.take(parts, []*Object{whole}) })
	m.pairs()
	return m
}

func (m *matching) take(old, new []*Object) {
	m.found = append(m.found, match{old, new})
	for _, o := range slices.Concat(old, new) {
		m.taken[o] = true
	}
}

// left are those of the objects that match nothing so far.
func (m *matching) left(objects []*Object) []*Object {
	return slices.DeleteFunc(slices.Clone(objects), func(o *Object) bool { return m.taken[o] })
}

// by matches objects that have the same key and pass as the same, as they come;
// "" is no key.
func (m *matching) by(key func(*Object) string, same func(old, new *Object) bool) {
	waiting := make(map[string][]*Object)
	for _, o := range m.left(m.old) {
		waiting[key(o)] = append(waiting[key(o)], o)
	}
	for _, n := range m.left(m.new) {
		k := key(n)
		if i := slices.IndexFunc(waiting[k], func(o *Object) bool { return same(o, n) }); k != "" && i >= 0 {
			m.take(waiting[k][i:i+1:i+1], []*Object{n})
			waiting[k] = slices.Concat(waiting[k][:i], waiting[k][i+1:])
		}
	}
}

func idOf(o *Object) string { return o.Feature.ID }

// sameByID reports whether two objects of one id are the same. Those of another
// kind may bear the id by chance, as in files that just count, unless it is
// that of map data or they lie on the same ground.
func (m *matching) sameByID(old, new *Object) bool {
	return old.Kind == new.Kind || isMapID(idOf(old)) || m.likeness(m.grownOf(old), m.grownOf(new)) > alike
}

// tracingOf tells an object's kind and its very positions, to a micrometre, for
// files may hold no more.
func tracingOf(o *Object) string {
	text := []byte(fmt.Sprint(o.Kind, shapeOf(o.Feature.Geometry), o.Width))
	for p := range positions(o.Feature.Geometry) {
		text = fmt.Appendf(text, " %.11f %.11f", p.Lon(), p.Lat())
	}
	return string(text)
}

// parts finds the wholes that several parts divide between them. Points have
// no parts.
func (m *matching) parts(wholes, parts []*Object, take func(whole *Object, parts []*Object)) {
	byKind := ofKinds(wholes)
	lying := make(map[*Object][]*Object)
	for _, part := range parts {
		if len(part.Points) > 0 {
			continue
		}
		if whole := m.wholeOf(part, byKind[part.Kind]); whole != nil {
			lying[whole] = append(lying[whole], part)
		}
	}
	for _, whole := range wholes {
		if len(lying[whole]) < 2 {
			continue
		}
		if dividing := m.dividing(whole, lying[whole]); len(dividing) > 1 {
			take(whole, dividing)
		}
	}
}

func ofKinds(objects []*Object) map[Kind][]*Object {
	byKind := make(map[Kind][]*Object)
	for _, o := range objects {
		byKind[o.Kind] = append(byKind[o.Kind], o)
	}
	return byKind
}

// wholeOf returns the object that most of a part lies in, nil if there is
// none; if as much of it lies in several, the one that it is most like.
func (m *matching) wholeOf(part *Object, among []*Object) *Object {
	var best *Object
	most := 0.0
	for _, whole := range among {
		if m.apart(part, whole) {
			continue
		}
		p, w := m.of(part), m.of(whole)
		shared := squareCentimetres(m.shared(p, w))
		if shared <= alike*squareCentimetres(m.frame.Area(p)) || shared < most {
			continue
		}
		if shared > most || m.likeness(p, w) > m.likeness(p, m.of(best)) {
			best, most = whole, shared
		}
	}
	return best
}

// dividing returns those of the parts that divide a whole between them: most
// of each, and a tenth of the whole, lies in no larger one; together they have
// most of the whole.
func (m *matching) dividing(whole *Object, parts []*Object) []*Object {
	rest := m.of(whole)
	all := m.frame.Area(rest)
	var dividing []*Object
	for _, part := range m.largestFirst(parts) {
		less, err := geo.Difference(rest, m.of(part))
		m.fail(err)
		if own := m.frame.Area(rest) - m.frame.Area(less); own > smallestPart*all && own > alike*m.frame.Area(m.of(part)) {
			rest = less
			dividing = append(dividing, part)
		}
	}
	if m.frame.Area(rest) > alike*all {
		return nil
	}
	return dividing
}

func (m *matching) largestFirst(objects []*Object) []*Object {
	size := func(o *Object) float64 { return squareCentimetres(m.frame.Area(m.of(o))) }
	return slices.SortedStableFunc(slices.Values(objects), func(a, b *Object) int { return cmp.Compare(size(b), size(a)) })
}

// pairs matches what is left one to one, the likest first.
func (m *matching) pairs() {
	type pair struct {
		old, new *Object
		like     float64
	}
	var pairs []pair
	byKind := ofKinds(m.left(m.old))
	for _, n := range m.left(m.new) {
		for _, o := range byKind[n.Kind] {
			if m.apart(o, n) {
				continue
			}
			if like := m.likeness(m.grownOf(o), m.grownOf(n)); like > alike {
				pairs = append(pairs, pair{o, n, like})
			}
		}
	}
	slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(b.like, a.like) })
	for _, p := range pairs {
		if !m.taken[p.old] && !m.taken[p.new] {
			m.take([]*Object{p.old}, []*Object{p.new})
		}
	}
}
