package zones

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A Zone is a part of the turf that is treated as one.
type Zone struct {
	ID       string
	Name     string
	Letter   string // A, B ... on maps and in tables
	Exposure string // full, part, shade, deep; "" = not known
	Species  string
	Apply    bool    // false: nothing may be applied
	Slope    float64 // percent; 0 = level or not known
	Region   geo.Region
}

const (
	// sliver is the mean width, in metres, under which a piece of turf between
	// zones is what rounding of coordinates left, not ground.
	sliver = 0.002
	// telling is the overlap of two objects, in square metres, that is worth a
	// word (1 m2).
	telling = 1.0
)

// layZones divides the turf: keepouts, then traced zones, the smaller first,
// then what is left; each is divided by the cutlines that cross it. Zones
// that an earlier division wrote into the file take the place of the traced
// ones and the cutlines they came from.
func (s *Site) layZones(turf geo.Region) ([]Zone, error) {
	d := &division{site: s, left: turf}
	traced, derived := s.zoneObjects()
	named := slices.Concat(s.Of(Keepout), traced)
	if len(derived) > 0 {
		named = derived
	}
	sortObjects(s.Frame, named)
	slices.SortStableFunc(named, func(a, b *Object) int { return keepoutsFirst(a) - keepoutsFirst(b) })
	for _, o := range named {
		if err := d.take(o); err != nil {
			return nil, err
		}
	}
	if err := d.takeRest(len(derived) > 0); err != nil {
		return nil, err
	}
	if len(derived) == 0 {
		if err := d.cut(s.Of(Cutline)); err != nil {
			return nil, err
		}
	}
	return d.lettered(), nil
}

func keepoutsFirst(o *Object) int {
	if o.Kind == Keepout {
		return 0
	}
	return 1
}

// zoneObjects returns the zones that a person traced, and those that a
// division wrote.
func (s *Site) zoneObjects() (traced, derived []*Object) {
	for _, o := range s.Of(ZoneKind) {
		if is, _ := o.Feature.Properties.Bool("derived"); is {
			derived = append(derived, o)
		} else {
			traced = append(traced, o)
		}
	}
	return traced, derived
}

// A division is turf on its way into zones.
type division struct {
	site  *Site
	zones []Zone
	left  geo.Region // turf not yet in a zone
}

// take gives a named object the turf in it that is still left.
func (d *division) take(o *Object) error {
	part, err := geo.Intersection(o.Ground, d.left)
	if err != nil {
		return err
	}
	if part.Empty() {
		d.site.problem(ingest.Warning, "zone_without_turf", o.Place, fmt.Sprintf("%s holds no turf that is not in another zone", o.Kind), "")
		return nil
	}
	if d.left, err = geo.Difference(d.left, o.Ground); err != nil {
		return err
	}
	if err := d.tellShared(o); err != nil {
		return err
	}
	d.zones = append(d.zones, zoneOf(o, part))
	return nil
}

// tellShared warns of turf that an earlier zone had taken from another one,
// but not of a zone that lies wholly inside it: that is how zones are nested.
func (d *division) tellShared(o *Object) error {
	for _, z := range d.zones {
		shared, err := geo.Intersection(o.Ground, z.Region)
		if err != nil {
			return err
		}
		area := d.site.Frame.Area(shared)
		if nested := area > d.site.Frame.Area(z.Region)-telling; area > telling && z.Apply && !nested {
			d.site.problem(ingest.Warning, "zone_overlap", o.Place,
				fmt.Sprintf("%.1f m2 also lie in zone %q, which is the smaller and keeps them", float64(area), z.Name), "")
		}
	}
	return nil
}

func zoneOf(o *Object, part geo.Region) Zone {
	p := o.Feature.Properties
	z := Zone{ID: o.ID, Name: o.Label(), Apply: o.Kind != Keepout, Region: part}
	if apply, stated := p.Bool("apply"); stated && !apply {
		z.Apply = false
	}
	z.Exposure, _ = p.Text("exposure")
	z.Species, _ = p.Text("species")
	if slope, ok := p.Number("slope_percent"); ok {
		z.Slope = math.Abs(slope)
	}
	return z
}

// takeRest makes a zone of the turf that no named one holds, but gives
// slivers to the zone they lie along.
func (d *division) takeRest(divided bool) error {
	var rest []geo.Region
	for _, piece := range d.left.Pieces() {
		if len(d.zones) > 0 && d.site.meanWidth(piece) < sliver {
			if err := d.giveToNeighbour(piece); err != nil {
				return err
			}
			continue
		}
		rest = append(rest, piece)
	}
	if len(rest) == 0 {
		return nil
	}
	region, err := geo.Union(rest...)
	if err != nil {
		return err
	}
	z := Zone{ID: "turf", Name: "Turf", Apply: true, Region: region}
	if len(d.zones) > 0 {
		z.ID, z.Name = "rest", "Rest"
	}
	if divided {
		d.site.problem(ingest.Warning, "zones_outdated", d.site.place(),
			fmt.Sprintf("%.1f m2 of turf lie in none of the zones written earlier", float64(d.site.Frame.Area(region))), "run zone again")
	}
	z.ID = d.freshID(z.ID)
	d.zones = append(d.zones, z)
	return nil
}

// meanWidth is the width of the strip that has a region's area and perimeter.
func (s *Site) meanWidth(r geo.Region) float64 {
	return 2 * float64(s.Frame.Area(r)) / float64(s.Frame.Perimeter(r))
}

func (d *division) giveToNeighbour(piece geo.Region) error {
	best, most := 0, geo.Length(-1)
	for i, z := range d.zones {
		if along := d.site.Frame.Contact(piece, z.Region, sliver); along > most {
			best, most = i, along
		}
	}
	var err error
	d.zones[best].Region, err = geo.Union(d.zones[best].Region, piece)
	return err
}

func (d *division) freshID(id string) string {
	taken := func(id string) bool {
		return slices.ContainsFunc(d.zones, func(z Zone) bool { return z.ID == id })
	}
	fresh := id
	for n := 2; taken(fresh); n++ {
		fresh = fmt.Sprintf("%s-%d", id, n)
	}
	return fresh
}

// lettered orders the zones for people, those that are treated first, the
// largest first, and gives them letters.
func (d *division) lettered() []Zone {
	size := make(map[string]geo.Area, len(d.zones))
	for _, z := range d.zones {
		size[z.ID] = d.site.Frame.Area(z.Region)
	}
	slices.SortStableFunc(d.zones, func(a, b Zone) int {
		if a.Apply != b.Apply {
			if a.Apply {
				return -1
			}
			return 1
		}
		return cmp.Or(cmp.Compare(size[b.ID], size[a.ID]), cmp.Compare(a.ID, b.ID))
	})
	for i := range d.zones {
		d.zones[i].Letter = letter(i)
	}
	return d.zones
}

// letter counts A to Z, AA, AB ...
func letter(i int) string {
	s := ""
	for i++; i > 0; i = (i - 1) / 26 {
		s = string(rune('A'+(i-1)%26)) + s
	}
	return s
}
