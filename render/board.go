package render

import (
	"math"
	"slices"
)

// A plate is the ground that a label or sign covers: a rectangle, perhaps
// turned.
type plate [4]Point

// levelPlate is a plate of a width and height about a point.
func levelPlate(center Point, width, height float64) plate {
	return turnedPlate(center, width, height, 0)
}

// turnedPlate is a plate turned about its centre, in degrees
// counter-clockwise.
func turnedPlate(center Point, width, height, turn float64) plate {
	w, h := width/2, height/2
	var p plate
	for i, corner := range [...]Point{{-w, -h}, {w, -h}, {w, h}, {-w, h}} {
		p[i] = corner.turned(turn).plus(center.X, center.Y)
	}
	return p
}

// strokePlate is the plate of a straight line.
func strokePlate(a, b Point, width float64) plate {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	turn := math.Atan2(b.Y-a.Y, b.X-a.X) * 180 / math.Pi
	return turnedPlate(Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, length, width, turn)
}

// box is the upright box round the plate.
func (p plate) box() rect { return boundsOf(p[:]...) }

func (p plate) center() Point { return Point{(p[0].X + p[2].X) / 2, (p[0].Y + p[2].Y) / 2} }

// grown returns the plate with a rim.
func (p plate) grown(rim float64) plate {
	across, up := unit(p[0], p[1]), unit(p[1], p[2])
	move := func(q Point, a, u float64) Point {
		return q.plus(rim*(a*across.X+u*up.X), rim*(a*across.Y+u*up.Y))
	}
	return plate{move(p[0], -1, -1), move(p[1], 1, -1), move(p[2], 1, 1), move(p[3], -1, 1)}
}

func unit(a, b Point) Point {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	if length == 0 {
		return Point{}
	}
	return Point{(b.X - a.X) / length, (b.Y - a.Y) / length}
}

// meets reports whether two plates share ground: they do unless a side of one
// of them parts them.
func (p plate) meets(q plate) bool { return !p.aloof(q) && !p.parts(q) && !q.parts(p) }

// aloof reports whether the upright boxes round two plates keep apart, which is
// quick to find out.
func (p plate) aloof(q plate) bool {
	pc, qc := p.center(), q.center()
	return math.Abs(pc.X-qc.X) > max(math.Abs(p[0].X-pc.X), math.Abs(p[1].X-pc.X))+max(math.Abs(q[0].X-qc.X), math.Abs(q[1].X-qc.X)) ||
		math.Abs(pc.Y-qc.Y) > max(math.Abs(p[0].Y-pc.Y), math.Abs(p[1].Y-pc.Y))+max(math.Abs(q[0].Y-qc.Y), math.Abs(q[1].Y-qc.Y))
}

// parts reports whether one of the plate's sides has all of the other beyond
// it.
func (p plate) parts(q plate) bool {
	for i, a := range p {
		b := p[(i+1)%len(p)]
		beyond := true
		for _, c := range q {
			if (b.X-a.X)*(c.Y-a.Y)-(b.Y-a.Y)*(c.X-a.X) >= 0 {
				beyond = false
				break
			}
		}
		if beyond {
			return true
		}
	}
	return false
}

// holds reports whether a point lies in the plate.
func (p plate) holds(q Point) bool { return p.meets(plate{q, q, q, q}) }

// within reports whether the plate lies in a rectangle.
func (p plate) within(r rect) bool {
	for _, corner := range p {
		if !r.holds(corner) {
			return false
		}
	}
	return true
}

// A board keeps the plates that are taken, so that no label comes to lie on
// another one or on a sign.
type board struct{ taken []takenPlate }

// A takenPlate has the upright box round it at hand.
type takenPlate struct {
	plate
	box rect
}

func (b *board) take(p plate) { b.taken = append(b.taken, takenPlate{p, p.box()}) }

// release gives a plate back.
func (b *board) release(p plate) {
	b.taken = slices.DeleteFunc(b.taken, func(t takenPlate) bool { return t.plate == p })
}

func (b *board) free(p plate) bool {
	box := p.box()
	for i := range b.taken {
		if t := &b.taken[i]; t.box.meets(box) && !t.parts(p) && !p.parts(t.plate) {
			return false
		}
	}
	return true
}

// A field is an area in which labels are to be placed.
type field struct {
	area   polygon
	inside bands
}

func newField(area polygon) field { return field{area, bandsOf(area)} }

// holds reports whether a plate lies wholly in the field.
func (f field) holds(p plate) bool {
	for _, corner := range p {
		if !f.inside.holds(corner) {
			return false
		}
	}
	return !f.crosses(p)
}

// crosses reports whether the edge of the field runs through a plate.
func (f field) crosses(p plate) bool {
	low, high := p[0].Y, p[0].Y
	for _, corner := range p {
		low, high = min(low, corner.Y), max(high, corner.Y)
	}
	for k := f.inside.band(low); k <= f.inside.band(high); k++ {
		for _, e := range f.inside.edges[k] {
			if p.meets(plate{e.a, e.b, e.b, e.a}) {
				return true
			}
		}
	}
	return false
}

// meets reports whether a plate shares ground with the field.
func (f field) meets(p plate) bool { return f.inside.holds(p.center()) || f.crosses(p) }
