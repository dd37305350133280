package zones

import (
	"fmt"
	"iter"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// Reading says how a collection is read as a site.
type Reading struct {
	Key    *MapKey // parts that map tags play
	Repair bool    // take a ring that crosses itself for all that it goes round
}

// A casting is a feature with the part it plays.
type casting struct {
	feature *ingest.Feature
	place   ingest.Place
	role    role
}

// NewSite finds the part each feature of a collection plays and lays it into
// a frame around the property. Problems of the collection are carried over;
// if the site is Refused it must not be measured.
func NewSite(c *ingest.Collection, how Reading) *Site {
	s := &Site{collection: c, Problems: append([]ingest.Problem(nil), c.Problems...)}
	cast := s.cast(how.Key)
	s.Frame = geo.NewFrame(geo.Center(anchors(cast)))

	outline := s.layOutline(cast, how.Repair)
	for _, a := range cast {
		if a.role.kind == Outline {
			continue
		}
		if a.role.kind.IsCover() && !outline.Empty() && !s.mayMeet(a.feature.Geometry, outline) {
			s.setAside(a)
			continue
		}
		if o := s.object(a.feature, a.role, a.place, how.Repair); o != nil {
			s.keep(o, outline)
		}
	}
	s.readHeader()
	return s
}

// cast gives each feature its part and counts those that play none.
func (s *Site) cast(key *MapKey) []casting {
	var cast []casting
	idle := 0
	refused := len(s.Problems)
	for _, f := range s.collection.Features {
		if f.Geometry == nil {
			continue
		}
		place := s.collection.Place(f)
		if r, plays := s.roleOf(f, key, place); plays {
			cast = append(cast, casting{f, place, r})
		} else if refused == len(s.Problems) {
			idle++
		}
		refused = len(s.Problems)
	}
	s.tellIdle(idle, len(cast))
	return cast
}

func (s *Site) tellIdle(idle, cast int) {
	place := s.place()
	switch {
	case cast == 0 && !s.Refused():
		s.problem(ingest.Refusal, "no_part", place, fmt.Sprintf("none of the %d features has a kind or a map tag that says what it is", len(s.collection.Features)),
			`give each object a property "kind", such as "turf", "bed" or "outline"`)
	case idle == 1:
		s.problem(ingest.Note, "idle", place, "1 object plays no part and is left aside", "")
	case idle > 1:
		s.problem(ingest.Note, "idle", place, fmt.Sprintf("%d objects play no part and are left aside", idle), "")
	}
}

// anchors are the places around which the frame is laid: those of the
// outline, else of the covers, else all.
func anchors(cast []casting) iter.Seq[orb.Point] {
	chosen := func(k Kind) bool { return true }
	for _, a := range cast {
		if a.role.kind == Outline {
			chosen = func(k Kind) bool { return k == Outline }
			break
		}
		if a.role.kind.IsCover() {
			chosen = Kind.IsCover
		}
	}
	return func(yield func(orb.Point) bool) {
		for _, a := range cast {
			if !chosen(a.role.kind) {
				continue
			}
			for p := range positions(a.feature.Geometry) {
				if !yield(p) {
					return
				}
			}
		}
	}
}

func positions(g orb.Geometry) iter.Seq[orb.Point] {
	return func(yield func(orb.Point) bool) {
		for _, p := range points(g) {
			if !yield(p) {
				return
			}
		}
		for _, l := range lines(g) {
			for _, p := range l {
				if !yield(p) {
					return
				}
			}
		}
		for _, polygon := range polygons(g) {
			for _, r := range polygon {
				for _, p := range r {
					if !yield(p) {
						return
					}
				}
			}
		}
	}
}

// layOutline lays the outlines and returns what they enclose.
func (s *Site) layOutline(cast []casting, repair bool) geo.Region {
	var parts []geo.Region
	for _, a := range cast {
		if a.role.kind != Outline {
			continue
		}
		if o := s.object(a.feature, a.role, a.place, repair); o != nil {
			s.Objects = append(s.Objects, o)
			parts = append(parts, o.Ground)
		}
	}
	outline, err := geo.Union(parts...)
	if err != nil {
		s.problem(ingest.Refusal, "geometry_failed", s.place(), err.Error(), "")
	}
	return outline
}

// mayMeet reports whether a geometry's rectangle meets the outline's. A line
// is given room for its width.
func (s *Site) mayMeet(g orb.Geometry, outline geo.Region) bool {
	const widest = 30 // m, half the width of any line
	var b geo.Bounds
	first := true
	for p := range positions(g) {
		at := s.Frame.XY(p)
		if first {
			b, first = geo.Bounds{Min: at, Max: at}, false
		}
		b = b.With(at)
	}
	return b.Grown(widest).Meets(outline.Bounds())
}

// setAside keeps a cover that lies wholly outside the outline, to be drawn.
// Whatever is wrong with it does not matter.
func (s *Site) setAside(a casting) {
	told := len(s.Problems)
	if o := s.object(a.feature, a.role, a.place, true); o != nil {
		s.Beyond = append(s.Beyond, o)
	}
	s.Problems = s.Problems[:told]
}

// keep files an object with those that are measured, or with those beyond the
// outline.
func (s *Site) keep(o *Object, outline geo.Region) {
	if o.Cover != "" && !outline.Empty() {
		if in, err := geo.Intersection(o.Ground, outline); err == nil && in.Empty() {
			s.Beyond = append(s.Beyond, o)
			return
		}
	}
	s.Objects = append(s.Objects, o)
}
