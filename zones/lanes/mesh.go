package lanes

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A triangle is three stations of a mesh, counter-clockwise.
type triangle [3]int

// mostStations keeps the mesh of a verge miles long within bounds.
const mostStations = 4000

// meshOf divides a region into triangles between stations on its edge, step
// metres apart, none of which has another station in its circle (Bowyer 1981,
// Watson 1981). The step must be small beside the region's width.
func meshOf(r geo.Region, step float64) ([]geo.XY, []triangle) {
	at := stationsOn(r, max(step, perimeter(r)/mostStations))
	n := len(at)
	at = append(at, around(r.Bounds())...)
	mesh := []triangle{{n, n + 1, n + 2}}
	for i := range n {
		mesh = insert(mesh, at, i)
	}
	within := mesh[:0]
	for _, t := range mesh {
		if max(t[0], t[1], t[2]) < n && !t.flat(at) && r.Contains(at[t[0]].Plus(at[t[1]]).Plus(at[t[2]]).Times(1./3)) {
			within = append(within, t)
		}
	}
	return at[:n], within
}

// flat reports whether a triangle lies between stations of one straight edge.
func (t triangle) flat(at []geo.XY) bool {
	a, b, c := at[t[0]], at[t[1]], at[t[2]]
	longest := max(a.Distance(b), b.Distance(c), c.Distance(a))
	return b.Minus(a).Cross(c.Minus(a)) < 10*hairline*longest
}

// stationsOn returns stations along the edges of a region, each moved by a
// micrometre, as circles through four of them could be drawn in two ways.
func stationsOn(r geo.Region, step float64) []geo.XY {
	const golden, tiny = 0.6180339887498949, 1e-6
	var at []geo.XY
	for _, ring := range ringsOf(r) {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			n := math.Ceil(a.Distance(b) / step)
			for k := range int(n) {
				i := float64(len(at) + 1)
				_, f := math.Modf(i * golden)
				_, g := math.Modf(i * golden * golden)
				at = append(at, a.Toward(b, float64(k)/n).Plus(geo.XY{X: tiny * f, Y: tiny * g}))
			}
		}
	}
	return at
}

// around returns the corners of a triangle far around bounds.
func around(b geo.Bounds) []geo.XY {
	middle := b.Min.Toward(b.Max, 0.5)
	far := 100 * max(b.Width(), b.Height())
	return []geo.XY{middle.Plus(geo.XY{X: -far, Y: -far}), middle.Plus(geo.XY{X: far, Y: -far}), middle.Plus(geo.XY{Y: far})}
}

// insert puts a station into a mesh: the triangles whose circles hold it give
// way to a fan around it.
func insert(mesh []triangle, at []geo.XY, i int) []triangle {
	var rim [][2]int
	kept := mesh[:0]
	for _, t := range mesh {
		if !inCircle(at[t[0]], at[t[1]], at[t[2]], at[i]) {
			kept = append(kept, t)
			continue
		}
		for k := range 3 {
			side := [2]int{t[k], t[(k+1)%3]}
			if j := slices.Index(rim, [2]int{side[1], side[0]}); j >= 0 {
				rim = slices.Delete(rim, j, j+1)
			} else {
				rim = append(rim, side)
			}
		}
	}
	for _, side := range rim {
		kept = append(kept, triangle{side[0], side[1], i})
	}
	return kept
}

// inCircle reports whether p lies in the circle through a, b and c, which run
// counter-clockwise.
func inCircle(a, b, c, p geo.XY) bool {
	a, b, c = a.Minus(p), b.Minus(p), c.Minus(p)
	return a.Dot(a)*b.Cross(c)+b.Dot(b)*c.Cross(a)+c.Dot(c)*a.Cross(b) > 0
}
