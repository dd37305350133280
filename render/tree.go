package render

import "math"

// leaf tells broad-leaved crowns from needled ones.
type leaf int

// Leaves.
const (
	broadLeaf leaf = iota
	needleLeaf
)

// tree returns a tree seen from above: the edge of its crown, true to scale if
// the diameter is, and a dot for its trunk. Broad-leaved crowns are scalloped,
// needled ones spiked.
func tree(trunk Point, diameter float64, leaf leaf) Group {
	title := "Broad-leaved tree"
	crown := scalloped(trunk, diameter/2)
	if leaf == needleLeaf {
		title, crown = "Needled tree", spiked(trunk, diameter/2)
	}
	green := bluishGreen.shade(0.6)
	return Group{ID: "tree", Title: title, Elements: []Element{
		Path{Lines: polygon{crown}.lines(), Stroke: green, Weight: thinLine},
		Path{Lines: disc(trunk, min(0.5, diameter/6)).lines(), Fill: green},
	}}
}

// lobes returns how many lobes of about the given width go round a circle.
func lobes(radius, width float64) int {
	return max(7, int(math.Round(2*math.Pi*radius/width)))
}

// scalloped returns a ring of outward bulges that touch the circle.
func scalloped(center Point, radius float64) ring {
	const width, pieces = 3.2, 8 // mm of a bulge, edges of a bulge
	n := lobes(radius, width)
	depth := radius * 0.75 * math.Pi / float64(n)
	var ring ring
	for i := range n * pieces {
		bulge := math.Abs(math.Sin(math.Pi * float64(i) / pieces))
		ring = append(ring, center.polar(radius-depth*(1-bulge), 2*math.Pi*float64(i)/float64(n*pieces)))
	}
	return ring
}

// spiked returns a star whose points touch the circle.
func spiked(center Point, radius float64) ring {
	const width = 2.4 // mm from point to point
	n := lobes(radius, width)
	depth := min(radius*0.3, 1.1)
	var ring ring
	for i := range 2 * n {
		ring = append(ring, center.polar(radius-depth*float64(i%2), math.Pi*float64(i)/float64(n)))
	}
	return ring
}
