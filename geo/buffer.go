package geo

import (
	"fmt"
	"math"
	"slices"

	"github.com/peterstace/simplefeatures/geom"
)

// A Line is an open line in a frame; it is closed if it ends where it starts.
type Line []XY

const quadrantEdges = 16 // a round join of 1 m radius stays within 1.2 mm of the circle

// Buffer returns the ground within d metres of the region, or, for negative
// d, the ground of the region farther than -d from its edge. Joins are round:
// a mitre reaches farther than d at each sharp corner of a walked edge. The
// distance is right to 1 %: the engine smooths hollows shallower than that
// and draws joins as chords.
func (r Region) Buffer(d float64) (Region, error) {
	if r.Empty() || d == 0 {
		return r, nil
	}
	b, err := geom.Buffer(r.geometry(), d, geom.BufferQuadSegments(quadrantEdges), geom.BufferJoinStyleRound())
	return buffered(b, err)
}

// Stroke returns the ground covered by a line of a width in metres: flat
// ends, round joins. A closed line has no ends. It is the same to the last
// digit wherever a closed line starts, and from whichever end a line is drawn.
func (l Line) Stroke(width float64) (Region, error) {
	b, err := geom.Buffer(l.oneWay().geometry(), width/2, geom.BufferQuadSegments(quadrantEdges),
		geom.BufferEndCapFlat(), geom.BufferJoinStyleRound())
	return buffered(b, err)
}

func buffered(g geom.Geometry, err error) (Region, error) {
	if err != nil {
		return Region{}, fmt.Errorf("geo: buffer failed: %w", err)
	}
	o, err := Lay(regionOf(polygonsOf(g))) // snapping may make edges touch
	if err != nil {
		return Region{}, err
	}
	defer o.Release()
	return o.Ground(func([]int) bool { return true }), nil
}

// Disc returns the ground within radius metres of p: a regular polygon of the
// disc's area, with a vertex 0.08 % outside. Nothing for a radius that rounds
// to 0.
func Disc(p XY, radius float64) Region {
	const sides = 4 * quadrantEdges
	r := radius * math.Sqrt(2*math.Pi/(sides*math.Sin(2*math.Pi/sides)))
	ring := make(Ring, sides)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
		ring[i] = p.Plus(XY{r * cos, r * sin}).snapped()
	}
	if ring = ring.withoutRepeats(); len(ring) < sides {
		return Region{}
	}
	return regionOf([]Polygon{{Shell: ring}})
}

// oneWay returns the least of all ways to draw the line, by its positions. The
// engine rounds, and smooths hollows, in the order in which it meets them.
func (l Line) oneWay() Line {
	back := slices.Clone(l)
	slices.Reverse(back)
	ways := append(l.fromLeast(), back.fromLeast()...)
	return slices.MinFunc(ways, func(a, b Line) int { return slices.CompareFunc(a, b, compareXY) })
}

// fromLeast returns a closed line started at its least position, wherever it
// comes there, and an open one as it is.
func (l Line) fromLeast() []Line {
	if len(l) < 2 || l[0] != l[len(l)-1] {
		return []Line{l}
	}
	least := slices.MinFunc(l, compareXY)
	var ways []Line
	for i := range l[1:] {
		if l[i] == least {
			ways = append(ways, slices.Concat(l[i:], l[1:i+1]))
		}
	}
	return ways
}

func (l Line) geometry() geom.Geometry {
	coordinates := make([]float64, 0, 2*len(l))
	for _, p := range l {
		coordinates = append(coordinates, p.X, p.Y)
	}
	return geom.NewLineString(geom.NewSequence(coordinates, geom.DimXY)).AsGeometry()
}
