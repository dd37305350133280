package lanes

import (
	"fmt"
	"math"
	"slices"
)

// A Pattern is what a spreader leaves across its way in one pass, as catch
// against the way to the side of the lane's centre line. Offsets are metres,
// negative to the left; catches are in any unit, 1 for the shapes made here.
type Pattern struct {
	name   string
	swath  float64
	reach  [2]float64 // how far it throws to the left and to the right, m
	catch  func(offset float64) float64
	output float64 // the integral of catch over all offsets
	left   float64 // the share of it to the left of the centre
}

// Triangle falls evenly from the centre to nothing at one swath to each side,
// so that passes a swath apart add up to an even cover.
func Triangle(swath float64) Pattern {
	return shaped("triangle", swath, swath, func(x float64) float64 { return max(0, 1-math.Abs(x)/swath) })
}

// bellEnd is where the bell is cut off, in standard deviations.
const bellEnd = 4

// Bell is a normal curve whose half-centre distance is the swath, cut off at
// four standard deviations.
func Bell(swath float64) Pattern {
	sigma := swath / math.Sqrt(8*math.Ln2)
	return shaped("bell", swath, bellEnd*sigma, func(x float64) float64 {
		if math.Abs(x) > bellEnd*sigma {
			return 0
		}
		return math.Exp(-x * x / (2 * sigma * sigma))
	})
}

// Trapezoid is even over the inner half of the swath and falls to nothing half
// a swath farther out.
func Trapezoid(swath float64) Pattern {
	return shaped("trapezoid", swath, 0.75*swath, func(x float64) float64 {
		return min(1, max(0, 1.5-2*math.Abs(x)/swath))
	})
}

// Drop is even over the swath and nothing beyond: a drop spreader.
func Drop(swath float64) Pattern {
	return shaped("drop", swath, swath/2, func(x float64) float64 {
		if math.Abs(x) > swath/2 {
			return 0
		}
		return 1
	})
}

// Shapes lists the names that [Shaped] knows.
var Shapes = []string{"triangle", "bell", "trapezoid", "drop"}

// Shaped returns the pattern of a name in Shapes and a swath in metres.
func Shaped(name string, swath float64) (Pattern, error) {
	i := slices.Index(Shapes, name)
	if i < 0 {
		return Pattern{}, fmt.Errorf("pattern %q is not known: write triangle, bell, trapezoid or drop", name)
	}
	return []func(float64) Pattern{Triangle, Bell, Trapezoid, Drop}[i](swath), nil
}

func shaped(name string, swath, reach float64, catch func(float64) float64) Pattern {
	p := Pattern{name: name, swath: swath, reach: [2]float64{reach, reach}, catch: catch}
	p.output = p.integral(-reach, reach)
	p.left = p.integral(-reach, 0) / p.output
	return p
}

// Swath is the effective swath: the width between the places, left and right,
// at which the catch is half of that at the centre.
func (p Pattern) Swath() float64 { return p.swath }

// Reach is how far the pattern throws to the left and to the right.
func (p Pattern) Reach() (left, right float64) { return p.reach[0], p.reach[1] }

// integral sums the catch between two offsets by Simpson's rule.
func (p Pattern) integral(from, to float64) float64 {
	const n = 400 // even
	h := (to - from) / n
	sum := p.catch(from) + p.catch(to)
	for i := 1; i < n; i++ {
		sum += float64(2+2*(i%2)) * p.catch(from+float64(i)*h)
	}
	return sum * h / 3
}
