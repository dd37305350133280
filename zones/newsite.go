package zones

import (
	"fmt"
	"iter"
	"slices"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/turf"
)

// Reading says how a collection is read as a site.
type Reading struct {
	Key    *MapKey // parts that map tags play
	Repair bool    // take a ring that crosses itself for all that it goes round
	Afresh bool    // divide the turf anew, whatever zones were written earlier
	Units  Units   // in which problems tell of areas; "" = the site's own
	Region string  // whose rules hold, one of [Regions]; "" = that which the site names

	Sun     *SunRequest // divide the turf by its sun as well; nil = not
	Grasses *turf.Table // the grasses that are known; nil = the built-in ones
}

func (how Reading) grasses() *turf.Table {
	if how.Grasses == nil {
		return turf.Default()
	}
	return how.Grasses
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
	s := &Site{
		collection: c, afresh: how.Afresh, region: how.Region, sun: how.Sun, grasses: how.grasses(),
		told:     toldIn(c, how.Units),
		Problems: append([]ingest.Problem(nil), c.Problems...),
	}
	cast := s.cast(how.Key)
	s.Frame = geo.NewFrame(geo.Center(anchors(cast)))
	s.lay(cast, how.Repair)
	s.readHeader()
	return s
}

// lay lays all that plays a part into the frame.
func (s *Site) lay(cast []casting, repair bool) {
	s.layOthers(cast, s.layOutline(cast, repair), repair)
}

// cast gives each feature its part and tells how many play none. That none
// plays any is an error.
func (s *Site) cast(key *MapKey) []casting {
	cast := s.parts(key)
	if len(cast) == 0 && !s.Refused() {
		s.problem(ingest.Refusal, "no_part", s.place(), fmt.Sprintf("none of the %d features has a kind or a map tag that says what it is", len(s.collection.Features)),
			`give each object a property "kind", such as "turf", "bed" or "outline"`)
	} else {
		s.tellIdle()
	}
	return cast
}

// parts gives each feature its part and counts those that play none.
func (s *Site) parts(key *MapKey) []casting {
	cast := make([]casting, 0, len(s.collection.Features))
	idle := make(map[spot]bool)
	for _, f := range s.collection.Features {
		if f.Geometry == nil {
			continue
		}
		place, told := s.collection.Place(f), len(s.Problems)
		if r, plays := s.roleOf(f, key, place); plays {
			cast = append(cast, casting{f, place, r})
		} else if told == len(s.Problems) {
			idle[spotOf(place)] = true
		}
	}
	s.idle = len(idle)
	s.forgive(idle)
	return cast
}

// A spot is where a feature stands in one of the files of a site.
type spot struct {
	source string
	index  int
}

func spotOf(p ingest.Place) spot { return spot{p.Source, p.Feature} }

// forgive drops the warnings about objects that play no part.
func (s *Site) forgive(idle map[spot]bool) {
	s.Problems = slices.DeleteFunc(s.Problems, func(p ingest.Problem) bool {
		return p.Severity != ingest.Refusal && idle[spotOf(p.Place)]
	})
}

func (s *Site) tellIdle() {
	switch {
	case s.idle == 1:
		s.problem(ingest.Note, "idle", s.place(), "1 object plays no part and is left aside", "")
	case s.idle > 1:
		s.problem(ingest.Note, "idle", s.place(), fmt.Sprintf("%d objects play no part and are left aside", s.idle), "")
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
	for _, a := range cast {
		if a.role.kind == Outline {
			s.add(a, geo.Region{}, repair)
		}
	}
	outline, err := union(s.Objects)
	if err != nil {
		s.problem(ingest.Refusal, "geometry_failed", s.place(), "outlines cannot be joined: "+err.Error(), "")
	}
	return outline
}

// layOthers lays all objects but the outlines.
func (s *Site) layOthers(cast []casting, outline geo.Region, repair bool) {
	for _, a := range cast {
		if a.role.kind != Outline {
			s.add(a, outline, repair)
		}
	}
	s.tellMisspelt()
}

// add lays an object and files it with those that are measured. A cover that
// lies wholly outside the outline is kept to be drawn. Whatever is wrong with
// a geometry out there does not matter, but its height may, and its setback.
func (s *Site) add(a casting, outline geo.Region, repair bool) {
	told := len(s.Problems)
	o, err := s.object(a)
	outside := s.outside(o, outline)
	if outside && o.Cover != "" {
		s.Problems = s.Problems[:told]
		s.Beyond = append(s.Beyond, o)
		s.checkAttributes(o)
		return
	}
	if !outside {
		s.tellFaults(o, err, repair)
	}
	s.Objects = append(s.Objects, o)
	s.checkAttributes(o)
}

// outside reports whether an object lies wholly outside the outline.
func (s *Site) outside(o *Object, outline geo.Region) bool {
	if outline.Empty() {
		return false
	}
	if o.Ground.Empty() {
		return !s.extent(o).Meets(outline.Bounds())
	}
	in, err := geo.Intersection(o.Ground, outline)
	return err == nil && in.Empty()
}

// extent is the rectangle round what was traced of an object.
func (s *Site) extent(o *Object) geo.Bounds {
	b := geo.Region{}.Bounds()
	for p := range positions(o.Feature.Geometry) {
		b = b.With(s.Frame.XY(p))
	}
	return b
}
