package zones

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

const (
	// setback is the kind of what is laid round water, drains and wells to
	// keep away from them; nobody traces it.
	setback Kind = "setback"
	// noShorter is by how much a setback is laid wider than it is asked for: a
	// buffer is right to 1 %, and a setback is the least distance.
	noShorter = 1.01
	// rim is the mean width, in metres, under which a setback beyond a keepout
	// that was traced along the same water is no ground of its own: a tracing
	// is hardly surer, and nobody walks it.
	rim = 0.5
)

// A shoreline is what a setback is laid round: objects of one name, or those
// without one of one sort.
type shoreline struct {
	id, name string
	place    ingest.Place
	grounds  []geo.Region         // with the setback, and what is in it
	rules    map[string]shoreRule // that it rests on, by what they are near
}

// setbacks returns the ground kept away from water, drains and wells, on the
// property or beyond, as far as it reaches turf: one object a name.
func (s *Site) setbacks(turf geo.Region) ([]*Object, error) {
	if turf.Empty() {
		return nil, nil
	}
	lines := make(map[string]*shoreline)
	for _, o := range slices.Concat(s.Objects, s.Beyond) {
		if err := s.keepAway(o, turf.Bounds(), lines); err != nil {
			return nil, err
		}
	}
	var objects []*Object
	rules := make(map[string]shoreRule)
	for _, name := range slices.Sorted(maps.Keys(lines)) {
		l := lines[name]
		ground, err := geo.Union(l.grounds...)
		if err != nil {
			return nil, err
		}
		on, err := geo.Intersection(ground, turf)
		if err != nil {
			return nil, err
		}
		if s.pieces(on) > 0 {
			objects = append(objects, s.setbackObject(l, ground))
			maps.Copy(rules, l.rules)
		}
	}
	s.tellSetbackRules(rules)
	return objects, nil
}

// keepAway adds the setback of an object that has one, and that comes near the
// turf, to that of its name.
func (s *Site) keepAway(o *Object, turf geo.Bounds, lines map[string]*shoreline) error {
	near, distance, rule := s.setbackOf(o)
	reach := turf.Grown(2 * distance)
	if distance == 0 || !o.bounds().Meets(reach) {
		return nil
	}
	ground, err := o.within(distance*noShorter, reach)
	if err != nil || ground.Empty() {
		return err
	}
	name := cmp.Or(o.Name, nearWords[near][0], "Hazard")
	if lines[name] == nil {
		lines[name] = &shoreline{name: name, rules: make(map[string]shoreRule)}
	}
	lines[name].with(o, ground)
	if rule != nil {
		lines[name].rules[near] = *rule
	}
	return nil
}

// with adds an object of the name. The id is the least of those that named
// objects have, so that the order of the file does not matter.
func (l *shoreline) with(o *Object, ground geo.Region) {
	id := strings.ReplaceAll(strings.ToLower(l.name), " ", "-")
	if o.Name != "" && o.Feature.ID != "" {
		id = o.Feature.ID
	}
	if l.id == "" || id < l.id {
		l.id, l.place = id, o.Place
	}
	l.grounds = append(l.grounds, ground)
}

// within returns the ground of an object, as far as it lies in reach, and all
// ground closer to it than d metres.
func (o *Object) within(d float64, reach geo.Bounds) (geo.Region, error) {
	var parts []geo.Region
	for _, at := range o.Points {
		if o.Ground.Empty() {
			parts = append(parts, geo.Disc(at, d))
		}
	}
	ground, err := inBounds(o.Ground, reach)
	if err != nil {
		return geo.Region{}, err
	}
	wide, err := ground.Buffer(d)
	if err != nil {
		return geo.Region{}, err
	}
	return geo.Union(append(parts, wide)...)
}

// inBounds cuts a region down to a rectangle, so that a lake costs no more
// than its shore.
func inBounds(r geo.Region, b geo.Bounds) (geo.Region, error) {
	if in := r.Bounds(); b.With(in.Min).With(in.Max) == b || r.Empty() {
		return r, nil
	}
	west, south, east, north := math.Floor(b.Min.X), math.Floor(b.Min.Y), math.Ceil(b.Max.X), math.Ceil(b.Max.Y)
	box, err := geo.RegionOf([]geo.Ring{{{X: west, Y: south}, {X: east, Y: south}, {X: east, Y: north}, {X: west, Y: north}}})
	if err != nil {
		return geo.Region{}, err
	}
	return geo.Intersection(r, box)
}

// setbackObject makes an object of a setback, so that it divides the turf as a
// keepout does.
func (s *Site) setbackObject(l *shoreline, ground geo.Region) *Object {
	var props ingest.Properties
	props.Set("id", l.id+"-setback")
	props.Set("name", l.name+" setback")
	feature := ingest.NewFeature(props, plain(s.Frame.MultiPolygon(ground)))
	return &Object{ID: feature.ID, Name: l.name + " setback", Kind: setback, Ground: ground, Feature: feature, Place: l.place}
}

// takeSetback gives a setback its turf. All zones yet are keepouts and other
// setbacks; they get the rims that a setback leaves along them.
func (d *division) takeSetback(o *Object, part geo.Region) error {
	var own, rims []geo.Region
	for _, piece := range part.Pieces() {
		if len(d.neighbours(piece)) > 0 && d.site.meanWidth(piece) < rim {
			rims = append(rims, piece)
		} else {
			own = append(own, piece)
		}
	}
	ground, err := geo.Union(own...)
	if err != nil {
		return err
	}
	switch whole := d.site.pieces(ground) > 0; {
	case whole:
		d.lay(o, ground)
	case len(rims) > 0:
		d.taken = append(d.taken, o)
		rims = append(rims, own...) // slivers
	}
	for _, piece := range rims {
		if err := d.giveToNeighbours(piece); err != nil {
			return err
		}
	}
	return nil
}
