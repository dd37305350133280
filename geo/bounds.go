package geo

import "math"

// Bounds is an upright rectangle in a frame.
type Bounds struct{ Min, Max XY }

var noBounds = Bounds{XY{math.Inf(1), math.Inf(1)}, XY{math.Inf(-1), math.Inf(-1)}}

// With returns the bounds stretched to hold p.
func (b Bounds) With(p XY) Bounds {
	return Bounds{XY{min(b.Min.X, p.X), min(b.Min.Y, p.Y)}, XY{max(b.Max.X, p.X), max(b.Max.Y, p.Y)}}
}

// Union returns the bounds of both.
func (b Bounds) Union(o Bounds) Bounds {
	if o.Empty() {
		return b
	}
	return b.With(o.Min).With(o.Max)
}

// Empty reports whether the bounds hold nothing.
func (b Bounds) Empty() bool { return b.Min.X > b.Max.X }

// Meets reports whether two bounds share a point.
func (b Bounds) Meets(o Bounds) bool {
	return b.Min.X <= o.Max.X && o.Min.X <= b.Max.X && b.Min.Y <= o.Max.Y && o.Min.Y <= b.Max.Y
}

// Apart returns how far in metres the nearest points of two bounds lie apart; 0
// if they meet.
func (b Bounds) Apart(o Bounds) float64 {
	gap := func(min, max, oMin, oMax float64) float64 { return math.Max(0, math.Max(min-oMax, oMin-max)) }
	return math.Hypot(gap(b.Min.X, b.Max.X, o.Min.X, o.Max.X), gap(b.Min.Y, b.Max.Y, o.Min.Y, o.Max.Y))
}

// Grown returns the bounds moved outwards by d metres on each side.
func (b Bounds) Grown(d float64) Bounds {
	return Bounds{XY{b.Min.X - d, b.Min.Y - d}, XY{b.Max.X + d, b.Max.Y + d}}
}

// Width is the east-west extent in metres; zero if empty.
func (b Bounds) Width() float64 { return max(0, b.Max.X-b.Min.X) }

// Height is the north-south extent in metres; zero if empty.
func (b Bounds) Height() float64 { return max(0, b.Max.Y-b.Min.Y) }

func (b Bounds) holds(p XY) bool {
	return b.Min.X <= p.X && p.X <= b.Max.X && b.Min.Y <= p.Y && p.Y <= b.Max.Y
}

func edgeBounds(a, b XY) Bounds {
	return Bounds{XY{min(a.X, b.X), min(a.Y, b.Y)}, XY{max(a.X, b.X), max(a.Y, b.Y)}}
}

// Bounds returns the bounds of a line.
func (l Line) Bounds() Bounds {
	b := Region{}.Bounds()
	for _, p := range l {
		b = b.With(p)
	}
	return b
}
