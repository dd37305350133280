package zones

import (
	"errors"
	"fmt"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A division is turf on its way into zones.
type division struct {
	site  *Site
	turf  geo.Region
	taken []*Object // what had its turf already
	zones []Zone

	promised map[string]bool // ids of zones that objects state and have not got yet
}

// telling is the overlap of two objects, in square metres, that is worth a word
// (1 m2).
const telling = 1.0

// layZones divides the turf: keepouts, then setbacks, then traced zones, the
// smaller first, then what is left; each but the setbacks is divided by the
// cutlines that cross it, by the grasses that turf objects state, and at last
// by its sun, if that is asked for. Zones that an earlier division wrote into
// the file take the place of the traced ones and the cutlines they came from.
func (s *Site) layZones(turf geo.Region) ([]Zone, *Sunlight, error) {
	d := &division{site: s, turf: turf, promised: make(map[string]bool)}
	traced, written := s.zoneObjects()
	setbacks, err := s.setbacks(turf)
	if err != nil {
		return nil, nil, err
	}
	barred := slices.Concat(s.Of(Keepout), setbacks)
	var light *Sunlight
	if len(written) > 0 && !s.afresh {
		light, err = d.again(written, barred)
	} else {
		light, err = d.anew(slices.Concat(barred, traced))
	}
	return d.lettered(), light, err
}

// anew divides the turf between objects, and by all that divides zones.
func (d *division) anew(named []*Object) (*Sunlight, error) {
	if err := d.takeAll(named); err != nil {
		return nil, err
	}
	if err := d.takeRest(false); err != nil {
		return nil, err
	}
	if err := d.cut(d.site.Of(Cutline)); err != nil {
		return nil, err
	}
	if err := d.plantZones(); err != nil {
		return nil, err
	}
	d.tellShadeStated()
	return d.byLight()
}

// again lays the zones that an earlier division wrote, and tells which of them
// hold ground that is barred by now.
func (d *division) again(written, barred []*Object) (*Sunlight, error) {
	if err := d.takeAll(written); err != nil {
		return nil, err
	}
	if err := d.takeRest(true); err != nil {
		return nil, err
	}
	if err := d.plantZones(); err != nil {
		return nil, err
	}
	d.tellShadeStated()
	light, err := d.lightWritten()
	return light, errors.Join(err, d.tellOutdated(barred))
}

// takeAll gives objects the turf in them, in the order in which they take it.
func (d *division) takeAll(named []*Object) error {
	sortObjects(d.site.Frame, named)
	slices.SortStableFunc(named, func(a, b *Object) int { return precedence(a) - precedence(b) })
	for _, o := range named {
		if o.Feature.ID != "" {
			d.promised[zoneID(o)] = true
		}
	}
	for _, o := range named {
		if err := d.take(o); err != nil {
			return err
		}
	}
	return nil
}

// precedence is the order in which objects take turf.
func precedence(o *Object) int {
	return slices.Index([]Kind{Keepout, setback, ZoneKind}, o.Kind)
}

// zoneObjects returns the zones that a person traced, and those that a
// division wrote.
func (s *Site) zoneObjects() (traced, derived []*Object) {
	for _, o := range s.Of(ZoneKind) {
		if isDerived(o.Feature) {
			derived = append(derived, o)
		} else {
			traced = append(traced, o)
		}
	}
	return traced, derived
}

// isDerived reports whether a division wrote the feature.
func isDerived(f *ingest.Feature) bool {
	kind, _ := f.Properties.Text("kind")
	derived, _ := f.Properties.Bool("derived")
	return Kind(kind) == ZoneKind && derived
}

// take gives a named object the turf in it that none before it has.
func (d *division) take(o *Object) error {
	own, err := less(o.Ground, d.taken)
	if err != nil {
		return err
	}
	part, err := geo.Intersection(own, d.turf)
	if err != nil {
		return err
	}
	if o.Kind == setback {
		return d.takeSetback(o, part)
	}
	if d.site.pieces(part) == 0 {
		return d.tellEmpty(o)
	}
	if err := d.tellShared(o); err != nil {
		return err
	}
	d.lay(o, part)
	return nil
}

// lay makes a zone of the turf of an object.
func (d *division) lay(o *Object, part geo.Region) {
	d.taken = append(d.taken, o)
	z := d.site.zoneOf(o, part)
	if o.Feature.ID != "" {
		delete(d.promised, z.ID)
	}
	z.ID = d.freshID(z.ID)
	d.zones = append(d.zones, z)
}

// tellEmpty warns of an object that gets no turf.
func (d *division) tellEmpty(o *Object) error {
	on, err := geo.Intersection(o.Ground, d.turf)
	if d.site.pieces(on) == 0 {
		d.site.problem(ingest.Warning, "zone_without_turf", o.Place, fmt.Sprintf("%s lies on no turf", o.Kind), "move it onto the lawn that it is meant for")
	} else {
		d.site.problem(ingest.Warning, "zone_without_turf", o.Place, fmt.Sprintf("all turf of the %s lies in smaller zones, keepouts or setbacks", o.Kind), "")
	}
	return err
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
				fmt.Sprintf("%s also lie in zone %q, which is the smaller and keeps them", d.site.told.Told(area), z.Name), "")
		}
	}
	return nil
}

// takeRest makes a zone of the turf that no named one holds, but gives
// strips and slivers to the zones they lie along.
func (d *division) takeRest(divided bool) error {
	left, err := less(d.turf, d.taken)
	if err != nil {
		return err
	}
	if left, err = d.withoutStrips(left); err != nil {
		return err
	}
	var rest []geo.Region
	for _, piece := range left.Pieces() {
		if len(d.zones) > 0 && d.site.pieces(piece) == 0 {
			if err := d.giveToNeighbours(piece); err != nil {
				return err
			}
			continue
		}
		rest = append(rest, piece)
	}
	if len(rest) == 0 {
		return nil
	}
	region := left
	if len(rest) < len(left.Polygons()) {
		if region, err = geo.Union(rest...); err != nil {
			return err
		}
	}
	z := Zone{ID: "zone/turf", Name: "Turf", Apply: true, Region: region, place: d.site.place()}
	if slices.ContainsFunc(d.zones, func(o Zone) bool { return !o.setback }) {
		z.ID, z.Name = "zone/rest", "Rest"
	}
	if divided {
		d.site.problem(ingest.Warning, "zones_outdated", d.site.place(),
			d.site.told.Told(d.site.Frame.Area(region))+" of turf lie in none of the zones written earlier", "run zone again")
	}
	z.ID = d.freshID(z.ID)
	d.zones = append(d.zones, z)
	return nil
}

// tellOutdated warns of keepouts and setbacks in zones that were written
// before them.
func (d *division) tellOutdated(kept []*Object) error {
	for _, o := range kept {
		for _, z := range d.zones {
			shared, err := geo.Intersection(o.Ground, z.Region)
			if err != nil {
				return err
			}
			if area := d.site.Frame.Area(shared); z.Apply && area > telling {
				d.site.problem(ingest.Warning, "zones_outdated", o.Place,
					fmt.Sprintf("%s of the %s lie in zone %q, which was written earlier", d.site.told.Told(area), o.Kind, z.Name), "run zone again")
			}
		}
	}
	return nil
}

func (d *division) indexOf(z Zone) int {
	return slices.IndexFunc(d.zones, func(o Zone) bool { return o.ID == z.ID })
}

// remove takes a zone away, whose parts are to come in its place.
func (d *division) remove(z Zone) {
	d.zones = slices.DeleteFunc(d.zones, func(o Zone) bool { return o.ID == z.ID })
}

func (d *division) freshID(id string) string {
	taken := func(id string) bool {
		return d.promised[id] || slices.ContainsFunc(d.zones, func(z Zone) bool { return z.ID == id })
	}
	fresh := id
	for n := 2; taken(fresh); n++ {
		fresh = fmt.Sprintf("%s-%d", id, n)
	}
	return fresh
}
