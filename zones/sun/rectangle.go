package sun

import (
	"math"

	"example.org/turfplat/geo"
)

// heading is the way of a compass bearing, one metre long.
func (d Degrees) heading() geo.XY {
	sin, cos := math.Sincos(d.radians())
	return geo.XY{X: sin, Y: cos}
}

func dot(a, b geo.XY) float64 { return a.X*b.X + a.Y*b.Y }

func leftOf(a geo.XY) geo.XY { return geo.XY{X: -a.Y, Y: a.X} }

// areaOf is the area of a counter-clockwise ring, m2.
func areaOf(ring geo.Ring) float64 {
	sum := 0.0
	for i := 2; i < len(ring); i++ {
		sum += cross(ring[0], ring[i-1], ring[i]) / 2
	}
	return sum
}

// extent returns how far a ring reaches against a way and along it, in metres
// from the frame's centre.
func extent(ring geo.Ring, way geo.XY) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, p := range ring {
		least, most = min(least, dot(p, way)), max(most, dot(p, way))
	}
	return least, most
}

// longSide returns the way of the longer side of the least rectangle round a
// convex ring; one of its sides runs along a side of the ring (Freeman &
// Shapira 1975, Commun. ACM 18:409-413).
func longSide(ring geo.Ring) geo.XY {
	least, best := math.Inf(1), geo.XY{X: 1}
	from := ring[len(ring)-1]
	for _, to := range ring {
		length := math.Hypot(to.X-from.X, to.Y-from.Y)
		along := geo.XY{X: (to.X - from.X) / length, Y: (to.Y - from.Y) / length}
		from = to
		back, front := extent(ring, along)
		right, left := extent(ring, leftOf(along))
		if area := (front - back) * (left - right); area < least {
			least, best = area, along
			if left-right > front-back {
				best = leftOf(along)
			}
		}
	}
	return best
}

// crossing returns from where to where a line along a way, offset to the left
// of the frame's centre, runs inside a convex ring.
func crossing(ring geo.Ring, along geo.XY, offset float64) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	side := leftOf(along)
	a := ring[len(ring)-1]
	for _, b := range ring {
		da, db := dot(a, side)-offset, dot(b, side)-offset
		if da != db && da*db <= 0 {
			t := dot(a, along) + (dot(b, along)-dot(a, along))*da/(da-db)
			from, to = min(from, t), max(to, t)
		}
		a = b
	}
	return from, to
}
