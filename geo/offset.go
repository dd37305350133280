package geo

import (
	"fmt"
	"math"
)

// roundness is how far, in metres, a round join of Offset may run beside its
// arc.
const roundness = 0.0005

// Offset returns the ground within d metres of the region or, for negative d,
// the ground of the region farther than -d from its edge. Joins are round, and
// the distance is right to 1 mm wherever the edge runs.
//
// Each edge sweeps a strip and each bent vertex a sector. Their sides are
// drawn as one line beside each ring, through the vertex itself where strips
// overlap; the ground it winds round is that which no strip covers, or, for
// positive d, that which any does.
func (r Region) Offset(d float64) (Region, error) {
	if r.Empty() || d == 0 {
		return r, nil
	}
	n := newNoder(mostCrossings)
	defer n.release()
	for _, p := range r.polygons {
		for _, ring := range p.Rings() {
			line := ring.beside(d)
			for i, p := range line {
				n.add(0, p, line.next(i))
			}
		}
	}
	if err := n.node(); err != nil {
		return Region{}, fmt.Errorf("geo: offset failed: %w", err)
	}
	ground := n.subdivided()
	defer ground.release()
	return ground.partition(1, func(counts []lap) int {
		if len(counts) > 0 && counts[0].times > 0 {
			return 0
		}
		return -1
	})[0], nil
}

// beside returns the line d metres to the right of a ring.
func (r Ring) beside(d float64) Ring {
	var line Ring
	for i, a := range r {
		b, c := r.next(i), r[(i+2)%len(r)]
		in, out := a.normal(b), b.normal(c)
		line = append(line, a.Plus(in.Times(d)).snapped(), b.Plus(in.Times(d)).snapped())
		if turn := orientation(a, b, c); turn < 0 == (d > 0) || turn == 0 && in.Dot(out) > 0 {
			line = append(line, b)
		} else {
			line = append(line, b.arc(in, out, d)...)
		}
	}
	return line
}

// arc returns the stations between two normals round p, on the side on which
// the line beside turns.
func (p XY) arc(in, out XY, d float64) Ring {
	radius := math.Abs(d)
	turn := math.Atan2(in.Cross(out), in.Dot(out))
	if turn < 0 == (d > 0) { // straight back, and rounding
		turn = math.Copysign(math.Pi, d)
	}
	most := 2 * math.Acos(1-min(1, 2*roundness/radius)) // twice: half of the bow lies outside
	n := math.Ceil(math.Abs(turn) / most)
	var stations Ring
	reach := d * 2 / (1 + math.Cos(turn/n/2)) // half inside the arc, half outside
	for k := 1.0; k < n; k++ {
		sin, cos := math.Sincos(turn * k / n)
		stations = append(stations, p.Plus(XY{in.X*cos - in.Y*sin, in.X*sin + in.Y*cos}.Times(reach)).snapped())
	}
	return stations
}

// normal returns the unit vector to the right of the way from p to q.
func (p XY) normal(q XY) XY {
	way := q.Minus(p)
	return XY{way.Y, -way.X}.Times(1 / way.Norm())
}
