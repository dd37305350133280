package zones

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A cutline divides a piece of turf if it runs inside it for some way and
// leaves something on both sides; else it is a pen that slipped over the edge.
const (
	crossing  = 0.5 // m
	leastPart = 1.0 // m2
)

// cut divides the zones by the cutlines. A line that ends on another one must
// wait until that one has divided its zone: those that run right through are
// taken first.
func (d *division) cut(cutlines []*Object) error {
	waiting := slices.Clone(cutlines)
	slices.SortStableFunc(waiting, compareStanding)
	for len(waiting) > 0 {
		next := d.leastLoose(waiting)
		if err := d.cutBy(waiting[next]); err != nil {
			return err
		}
		waiting = slices.Delete(waiting, next, next+1)
	}
	return nil
}

// leastLoose returns the first of the cutlines with the fewest loose ends.
func (d *division) leastLoose(cutlines []*Object) int {
	best, fewest := 0, math.MaxInt
	for i, o := range cutlines {
		if n := d.looseEnds(o); n < fewest {
			best, fewest = i, n
		}
		if fewest == 0 {
			break
		}
	}
	return best
}

// looseEnds counts the ends of a cutline that lie well inside a zone.
func (d *division) looseEnds(o *Object) int {
	n := 0
	for _, l := range o.Lines {
		for _, end := range []geo.XY{l[0], l[len(l)-1]} {
			for _, z := range d.zones {
				if !z.Region.Contains(end) {
					continue
				}
				if out, err := geo.Difference(geo.Disc(end, crossing), z.Region); err == nil && out.Empty() {
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
	d.site.checkSides(o)
	for _, l := range o.Lines {
		for _, z := range slices.Clone(d.zones) {
			if z.setback {
				continue
			}
			c, err := d.site.cutRegion(z.Region, l)
			if errors.Is(err, geo.ErrBentCut) {
				d.site.problem(ingest.Refusal, "cutline_bent", o.Place, "cutline turns back on itself, so that it has no two sides", "draw it from edge to edge without a loop, or trace the part as a zone instead")
				return nil
			}
			if err != nil {
				return err
			}
			if !c.left.Empty() {
				divided = true
				d.replace(z, c, o)
			}
		}
	}
	if !divided {
		d.site.problem(ingest.Warning, "cutline_idle", o.Place, "cutline crosses no turf", "draw it right across the lawn that it is to divide")
	}
	return nil
}

// A cutting is a region divided by a line.
type cutting struct {
	left, right geo.Region
	whole       geo.Region // the pieces that the line does not cross
}

// cutRegion divides the pieces of a region that a line crosses.
func (s *Site) cutRegion(r geo.Region, l geo.Line) (cutting, error) {
	var lefts, rights, wholes []geo.Region
	for _, piece := range r.Pieces() {
		left, right, err := s.cutPiece(piece, l)
		if err != nil {
			return cutting{}, err
		}
		if left.Empty() {
			wholes = append(wholes, piece)
			continue
		}
		lefts, rights = append(lefts, left), append(rights, right)
	}
	left, err1 := geo.Union(lefts...)
	right, err2 := geo.Union(rights...)
	whole, err3 := geo.Union(wholes...)
	c := cutting{left, right, whole}
	if err := errors.Join(err1, err2, err3); err != nil || left.Empty() || s.pieces(whole) > 0 {
		return c, err
	}
	return s.withSlivers(c)
}

// withSlivers gives slivers that a line does not cross, which are no zone of
// their own, to the part that they lie along, or else to the larger.
func (s *Site) withSlivers(c cutting) (cutting, error) {
	for _, piece := range c.whole.Pieces() {
		along := s.Frame.Contact(piece, c.left, sliver) - s.Frame.Contact(piece, c.right, sliver)
		if along == 0 {
			along = geo.Length(s.Frame.Area(c.left) - s.Frame.Area(c.right))
		}
		side := &c.left
		if along < 0 {
			side = &c.right
		}
		var err error
		if *side, err = geo.Union(*side, piece); err != nil {
			return c, err
		}
	}
	c.whole = geo.Region{}
	return c, nil
}

// cutPiece divides a piece, or returns nothing if the line does not cross it.
func (s *Site) cutPiece(piece geo.Region, l geo.Line) (left, right geo.Region, err error) {
	if s.lengthInside(piece, l) < crossing {
		return left, right, nil
	}
	left, right, err = piece.Cut(l)
	if min(s.Frame.Area(left), s.Frame.Area(right)) < leastPart {
		return geo.Region{}, geo.Region{}, err
	}
	return left, right, err
}

func (s *Site) lengthInside(r geo.Region, l geo.Line) geo.Length {
	var sum geo.Length
	for _, part := range r.Inside(l) {
		sum += s.Frame.LineLength(part)
	}
	return sum
}

// replace puts two parts in a zone's place, named by where they lie to each
// other; what was not cut keeps its name. A part has the grass that the line
// says of its side, else that of the zone.
func (d *division) replace(z Zone, c cutting, o *Object) {
	d.remove(z)
	if !c.whole.Empty() {
		uncut := z
		uncut.Region = c.whole
		d.zones = append(d.zones, uncut)
	}
	left, right := c.left.Centroid(), c.right.Centroid()
	toLeft, toRight := bearings(left, right)
	planted := d.sidesOf(o, left, right)
	for _, part := range []struct {
		bearing string
		region  geo.Region
		species string
	}{{toLeft, c.left, planted.grassAt(left, right)}, {toRight, c.right, planted.grassAt(right, left)}} {
		p := z
		p.ID, p.Name, p.Region = d.freshID(z.ID+"-"+part.bearing), z.Name+", "+part.bearing, part.region
		p.Species = cmp.Or(part.species, z.Species)
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
