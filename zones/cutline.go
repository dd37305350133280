package zones

import (
	"errors"
	"math"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// crossing is how far, in metres, a cutline must run inside a zone to divide
// it: less is a pen that slipped over the edge.
const crossing = 0.5

// cut divides the zones by the cutlines. A line that ends on another one must
// wait until that one has divided its zone: those that run right through are
// taken first.
func (d *division) cut(cutlines []*Object) error {
	waiting := slices.Clone(cutlines)
	slices.SortFunc(waiting, func(a, b *Object) int {
		if a.ID < b.ID {
			return -1
		}
		return 1
	})
	for len(waiting) > 0 {
		next := 0
		for i, o := range waiting {
			if d.loose(o) < d.loose(waiting[next]) {
				next = i
			}
		}
		if err := d.cutBy(waiting[next]); err != nil {
			return err
		}
		waiting = slices.Delete(waiting, next, next+1)
	}
	return nil
}

// loose counts the ends of a cutline that lie well inside a zone.
func (d *division) loose(o *Object) int {
	n := 0
	for _, l := range o.Lines {
		for _, end := range []geo.XY{l[0], l[len(l)-1]} {
			for _, z := range d.zones {
				inner := geo.Disc(end, crossing)
				if in, err := geo.Difference(inner, z.Region); err == nil && in.Empty() {
					n++
				}
			}
		}
	}
	return n
}

// cutBy divides each zone that a cutline crosses.
func (d *division) cutBy(o *Object) error {
	divided := false
	for _, l := range o.Lines {
		for _, z := range slices.Clone(d.zones) {
			if d.site.lengthInside(z.Region, l) < crossing {
				continue
			}
			left, right, err := z.Region.Cut(l)
			if errors.Is(err, geo.ErrBentCut) {
				d.site.problem(ingest.Refusal, "cutline_bent", o.Place, err.Error(), "trace the part as a zone instead")
				return nil
			}
			if err != nil {
				return err
			}
			divided = true
			if !left.Empty() && !right.Empty() {
				d.replace(z, left, right)
			}
		}
	}
	if !divided {
		d.site.problem(ingest.Warning, "cutline_idle", o.Place, "cutline crosses no turf", "")
	}
	return nil
}

func (s *Site) lengthInside(r geo.Region, l geo.Line) geo.Length {
	var sum geo.Length
	for _, part := range r.Inside(l) {
		sum += s.Frame.LineLength(part)
	}
	return sum
}

// replace puts two parts in a zone's place, named by where they lie to each
// other.
func (d *division) replace(z Zone, left, right geo.Region) {
	d.zones = slices.DeleteFunc(d.zones, func(o Zone) bool { return o.ID == z.ID })
	toLeft, toRight := bearings(left.Centroid(), right.Centroid())
	for _, part := range []struct {
		bearing string
		region  geo.Region
	}{{toLeft, left}, {toRight, right}} {
		p := z
		p.ID, p.Name, p.Region = d.freshID(z.ID+"-"+part.bearing), z.Name+", "+part.bearing, part.region
		d.zones = append(d.zones, p)
	}
}

// bearings names the quarter in which each of two places lies from the other.
func bearings(a, b geo.XY) (string, string) {
	east, north := a.X-b.X, a.Y-b.Y
	switch {
	case math.Abs(east) > math.Abs(north) && east > 0:
		return "east", "west"
	case math.Abs(east) > math.Abs(north):
		return "west", "east"
	case north > 0:
		return "north", "south"
	}
	return "south", "north"
}
