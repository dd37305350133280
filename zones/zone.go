package zones

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/sun"
)

// A Zone is a part of the turf that is treated as one.
type Zone struct {
	ID       string
	Name     string
	Letter   string // A, B ... on maps and in tables
	Exposure string // full, part, shade, deep; "" = not known
	Species  string
	Apply    bool     // false: nothing may be applied
	Slope    float64  // percent; 0 = level or not known
	Aspect   *float64 // degrees clockwise from north that the slope faces; nil = not known
	Watered  bool     // irrigated, as far as the site says
	Sun      Sunshine
	Region   geo.Region

	setback    bool              // laid round water, a drain or a well
	written    bool              // by an earlier division
	properties ingest.Properties // of the object it was traced as
	place      ingest.Place
}

// Place is where the object stands that the zone was made from; parts of one
// have the same.
func (z Zone) Place() ingest.Place { return z.place }

// steepest is a slope, in percent, on which nobody keeps turf (45 degrees).
const steepest = 100.0

// zoneOf makes a zone of the turf in an object.
func (s *Site) zoneOf(o *Object, part geo.Region) Zone {
	p := o.Feature.Properties
	z := Zone{ID: zoneID(o), Name: zoneName(o), Apply: o.Kind == ZoneKind, setback: o.Kind == setback, written: isDerived(o.Feature), Region: part, properties: p, place: o.Place}
	if raw, stated := p.Raw("apply"); stated && !blank(raw) {
		apply, _ := p.Bool("apply") // what cannot be read is no leave to apply anything
		z.Apply = z.Apply && apply
	}
	z.Exposure, _ = p.Text("exposure")
	if z.Exposure != "" && !slices.Contains(sun.Exposures, sun.Exposure(z.Exposure)) {
		s.problem(ingest.Warning, "exposure_unknown", o.Place, fmt.Sprintf("exposure %q is not known, left aside", z.Exposure), "write full, part, shade or deep")
		z.Exposure = ""
	}
	z.Species = o.statedSpecies()
	z.Watered, _ = p.Bool("irrigated")
	if slope, ok := p.Number("slope_percent"); ok && math.Abs(slope) <= steepest {
		z.Slope = math.Abs(slope)
	}
	z.Sun.Hours, z.Sun.Known = writtenSun(o.Feature)
	if aspect, ok := p.Number("aspect_deg"); ok && math.Abs(aspect) <= fullTurn {
		z.Aspect = &aspect
	}
	return z
}

// zoneID tells a zone from the object that it was traced as; both may stand in
// one file. It comes of the object's id, else of its name, which both stay when
// the file is put in another order.
func zoneID(o *Object) string {
	if isDerived(o.Feature) {
		return o.ID
	}
	return "zone/" + cmp.Or(o.Feature.ID, hyphened(o.Name), string(o.Kind))
}

// zoneName is what people call a zone: a place in the file would tell them
// nothing.
func zoneName(o *Object) string {
	switch {
	case o.Feature.Label() != "":
		return o.Feature.Label()
	case o.Kind == Keepout:
		return "Keepout"
	}
	return "Zone"
}
