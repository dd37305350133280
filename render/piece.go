package render

import (
	"math"

	"example.org/turfplat/geo"
)

// A piece is a connected part of ground with the place in it that has most
// room.
type piece struct {
	area  polygon
	pole  Point
	clear float64 // mm from the pole to the edge
}

func newPiece(area polygon) piece {
	const tolerance = 0.2 // mm
	p := piece{area: area}
	p.pole, p.clear = pole(area, tolerance)
	search := poleSearch{area: area, inside: bandsOf(area)}
	if center := area.centroid(); search.clearance(center) >= nearlyMost*p.clear {
		p.pole = center
	}
	return p
}

// nearlyMost is the share of the most room that the centre of a piece must
// have to be the better place for a label.
const nearlyMost = 0.8

// centroid returns the centre of gravity.
func (p polygon) centroid() Point {
	var x, y, area float64
	origin := p.bounds().min
	p.edges(func(a, b Point) {
		ax, ay, bx, by := a.X-origin.X, a.Y-origin.Y, b.X-origin.X, b.Y-origin.Y
		cross := ax*by - bx*ay
		x, y, area = x+(ax+bx)*cross, y+(ay+by)*cross, area+3*cross
	})
	if area == 0 {
		return origin
	}
	return origin.plus(x/area, y/area)
}

// largestPiece returns the piece of a region in the window with the most room.
func largestPiece(v view, r geo.Region) (largest piece, ok bool, err error) {
	shown, err := v.shown(r)
	if err != nil {
		return piece{}, false, err
	}
	for _, region := range shown.Pieces() {
		if p := newPiece(v.area(region)); !ok || p.clear > largest.clear {
			largest, ok = p, true
		}
	}
	return largest, ok, nil
}

// direction returns how a piece runs about a point in it: the mean direction
// of the edges within reach, in degrees from -90 to 90, so that text along it
// is upright.
func (p piece) direction(at Point, reach float64) float64 {
	near := (p.clear + reach) * (p.clear + reach)
	sin, cos, _ := p.run(func(a, b Point) bool { return squaredDistance(at, a, b) <= near })
	return math.Atan2(sin, cos) / 2 * 180 / math.Pi
}

// long reports whether the piece runs in one direction more than in others: a
// rectangle does if it is at least twice as long as it is wide.
func (p piece) long() bool {
	const least = 1. / 3
	sin, cos, length := p.run(func(a, b Point) bool { return true })
	return math.Hypot(sin, cos) >= least*length
}

// run adds up the edges by their direction: sine and cosine are those of twice
// the angle, so that both ways along an edge count alike.
func (p piece) run(counts func(a, b Point) bool) (sin, cos, length float64) {
	p.area.edges(func(a, b Point) {
		if !counts(a, b) {
			return
		}
		d := math.Hypot(b.X-a.X, b.Y-a.Y)
		double := 2 * math.Atan2(b.Y-a.Y, b.X-a.X)
		sin += d * math.Sin(double)
		cos += d * math.Cos(double)
		length += d
	})
	return sin, cos, length
}
