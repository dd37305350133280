package sun

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A Patch is turf of one class, in one or several pieces.
type Patch struct {
	Class    int // by the limits, from 0, the sunniest
	Region   geo.Region
	Hours    float64 // mean direct sun a day
	Doubtful float64 // share of it that lies within half an hour of a limit
}

// Patches divides turf by its hours of direct sun into patches that a person
// can walk, at most one of each class, the sunniest first. They tile the
// turf: all are cut by the same outlines from both sides.
//
// No piece of a patch is under 14 m2, or so narrow that no disc of 1.5 m fits
// in, unless the turf itself is in pieces that are. What is too narrow goes to
// what lies beside it; strips of several classes that are wide enough together
// are ground of the class of their mean hours. Outlines lie within 0.5 m
// of the edges of cells of their class, once cells are smoothed to patches.
// The mean hours of each piece that can be walked are those of its class.
// The field must hold hours for the cells whose middle lies in the turf.
// Without any there are no patches.
func Patches(f *Field, turf geo.Region, frame geo.Frame, l Limits) ([]Patch, error) {
	c := classed(f, turf, l)
	if !slices.ContainsFunc(c.class, func(k int8) bool { return k != none }) {
		return nil, nil
	}
	c.settle()
	d := &dividing{classing: c, field: f, frame: frame}
	if err := d.clip(turf); err != nil {
		return nil, err
	}
	if err := d.mend(); err != nil {
		return nil, err
	}
	return d.patches()
}

// A dividing is turf on its way into patches.
type dividing struct {
	*classing
	field  *Field // as the hours are, under no smoothing
	frame  geo.Frame
	pieces []*piece
}

// A piece is turf of one class that hangs together.
type piece struct {
	class    int8
	region   geo.Region
	area     float64 // m2
	hours    float64 // mean
	walkable bool
}

// clip lays the grounds of the classes over the turf. What none of them holds
// is of the last class.
func (d *dividing) clip(turf geo.Region) error {
	var present []int8
	for k := range int8(len(d.limits) + 1) {
		if slices.Contains(d.class, k) {
			present = append(present, k)
		}
	}
	parts, err := d.cut(turf, present)
	if err != nil {
		return err
	}
	for i, part := range parts {
		if err := d.add(present[i], part); err != nil {
			return err
		}
	}
	return nil
}

// cut returns the turf of each class.
func (d *dividing) cut(turf geo.Region, classes []int8) ([]geo.Region, error) {
	last := len(classes) - 1
	if last == 0 {
		return []geo.Region{turf}, nil
	}
	laid := []geo.Region{turf}
	outlines := d.outlines()
	for _, k := range classes[:last] {
		ground, err := assembled(outlines[k])
		if err != nil {
			return nil, err
		}
		laid = append(laid, ground)
	}
	overlay, err := geo.Lay(laid...)
	if err != nil {
		return nil, err
	}
	defer overlay.Release()
	return overlay.Partition(len(classes), func(holders []int) int {
		switch {
		case holders[0] != 0:
			return -1
		case len(holders) == 1:
			return last
		}
		return holders[1] - 1
	}), nil
}

// add takes up the pieces of a region.
func (d *dividing) add(class int8, r geo.Region) error {
	for _, region := range r.Pieces() {
		p := &piece{class: class, region: region, area: float64(d.frame.Area(region))}
		p.hours, _ = d.field.Mean(region, d.limits)
		if err := d.tread(p); err != nil {
			return err
		}
		d.pieces = append(d.pieces, p)
	}
	return nil
}

// tread finds whether a piece is large and wide enough to be walked.
func (d *dividing) tread(p *piece) error {
	if p.area < figures["patch_area"] {
		return nil
	}
	core, err := p.region.Buffer(-figures["patch_width"] / 2)
	p.walkable = !core.Empty()
	return err
}

// Mean returns the mean hours of the cells in a region and the share of them
// that lies within half an hour of a limit; of ground between the cells, the
// hours of the cell nearest to its middle. NaN if the field has no hours.
func (f *Field) Mean(r geo.Region, l Limits) (hours, doubtful float64) {
	window := f.windowOver(r.Bounds())
	n := 0.0
	for i, in := range window.within(r) {
		if !in {
			continue
		}
		if h := f.at(window.Center(i)); !math.IsNaN(h) {
			n++
			hours += h
			if l.doubtful(h) {
				doubtful++
			}
		}
	}
	if n == 0 {
		return f.nearest(r.Centroid()), 0
	}
	return hours / n, doubtful / n
}

// nearest returns the hours of the cell nearest to a position.
func (f *Field) nearest(p geo.XY) float64 {
	hours, least := math.NaN(), math.Inf(1)
	for cell, h := range f.Values {
		q := f.Center(cell)
		if d := math.Hypot(q.X-p.X, q.Y-p.Y); d < least && !math.IsNaN(h) {
			hours, least = h, d
		}
	}
	return hours
}
