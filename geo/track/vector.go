package track

import (
	"math"

	"example.org/turfplat/geo"
)

func plus(p, q geo.XY) geo.XY          { return geo.XY{X: p.X + q.X, Y: p.Y + q.Y} }
func minus(p, q geo.XY) geo.XY         { return geo.XY{X: p.X - q.X, Y: p.Y - q.Y} }
func times(p geo.XY, k float64) geo.XY { return geo.XY{X: p.X * k, Y: p.Y * k} }
func dot(p, q geo.XY) float64          { return p.X*q.X + p.Y*q.Y }
func cross(p, q geo.XY) float64        { return p.X*q.Y - p.Y*q.X }
func norm(p geo.XY) float64            { return math.Hypot(p.X, p.Y) }
func distance(p, q geo.XY) float64     { return math.Hypot(p.X-q.X, p.Y-q.Y) }

// turnedRight returns p turned a quarter to the right: of an edge, its normal
// outwards on a counter-clockwise ring.
func turnedRight(p geo.XY) geo.XY { return geo.XY{X: p.Y, Y: -p.X} }

// signedArea is positive for a counter-clockwise ring; ground gone round twice
// counts twice.
func signedArea(ring []geo.XY) float64 {
	var sum float64
	for i := 1; i+1 < len(ring); i++ {
		sum += cross(minus(ring[i], ring[0]), minus(ring[i+1], ring[0]))
	}
	return sum / 2
}

func ringLength(ring []geo.XY) float64 {
	var sum float64
	for i, p := range ring {
		sum += distance(p, ring[(i+1)%len(ring)])
	}
	return sum
}
