package track

import "example.org/turfplat/geo"

// turnedRight returns p turned a quarter to the right: of an edge, its normal
// outwards on a counter-clockwise ring.
func turnedRight(p geo.XY) geo.XY { return geo.XY{X: p.Y, Y: -p.X} }

// signedArea is positive for a counter-clockwise ring; ground gone round twice
// counts twice.
func signedArea(ring []geo.XY) float64 {
	var sum float64
	for i := 1; i+1 < len(ring); i++ {
		sum += ring[i].Minus(ring[0]).Cross(ring[i+1].Minus(ring[0]))
	}
	return sum / 2
}

func ringLength(ring []geo.XY) float64 {
	var sum float64
	for i, p := range ring {
		sum += p.Distance(ring[(i+1)%len(ring)])
	}
	return sum
}
