package zones

import "example.org/turfplat/geo"

// sliver is the mean width, in metres, under which a piece of turf between zones
// is what rounding of coordinates left, not ground.
const sliver = 0.002

// meanWidth is the width of the strip that has a region's area and perimeter.
func (s *Site) meanWidth(r geo.Region) float64 {
	return 2 * float64(s.Frame.Area(r)) / float64(s.Frame.Perimeter(r))
}

// pieces counts the pieces of a region that are more than slivers.
func (s *Site) pieces(r geo.Region) int {
	n := 0
	for _, piece := range r.Pieces() {
		if s.meanWidth(piece) >= sliver {
			n++
		}
	}
	return n
}
