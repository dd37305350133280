package render

import (
	"math"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
)

// Pens of lanes. Laps are heavy and dashed, fill lanes thin and unbroken, ways
// without spreading dotted.
var (
	headerInk = blue.shade(0.75)
	travelInk = grey
)

func headerPen(lines []Line) []Element {
	return []Element{Path{Lines: lines, Stroke: headerInk, Weight: heavyLine, Dash: []float64{3.2, 0.9}}}
}

func fillPen(lines []Line) []Element {
	return []Element{Path{Lines: lines, Stroke: black, Weight: thinLine}}
}

func travelPen(lines []Line) []Element {
	return []Element{Path{Lines: lines, Stroke: travelInk, Weight: 0.45, Dash: []float64{0.05, 1.25}, Round: true}}
}

// handwork is turf too narrow for a spreader: level lines, used for nothing
// else.
var handwork = pattern{rulings: []ruling{{spacing: 0.9}}, weight: thinLine}

var handInk = reddishPurple.shade(0.5)

func byHand(area polygon) []Element {
	return []Element{
		Path{Lines: area.lines(), Fill: white}, handwork.fill(area, handInk),
		Path{Lines: area.lines(), Stroke: handInk, Weight: thinLine},
	}
}

// notNow is a zone that is not treated this time.
func notNow(area polygon) []Element {
	turf := looks[zones.Turf].paled()
	return []Element{Path{Lines: area.lines(), Fill: white}, turf.pattern.fill(area, turf.ink), turf.outlined(area)}
}

// barredOff is a zone on which nothing is applied.
func barredOff(area polygon) []Element {
	return []Element{barred.fill(area, warning), Path{Lines: area.lines(), Stroke: warning, Weight: mediumLine}}
}

// arrowhead is a filled head on a line, its middle at a point.
func arrowhead(at Point, turn, size float64, p lanes.Pass) Path {
	length, half, ink := 2.3*size, 0.75*size, black
	if p == lanes.Header {
		length, half, ink = 2.9*size, size, headerInk
	}
	head := ring{{-length / 2, -half}, {length / 2, 0}, {-length / 2, half}, {-length / 4, 0}}
	for i, q := range head {
		head[i] = q.turned(turn).plus(at.X, at.Y)
	}
	return Path{Lines: polygon{head}.lines(), Fill: ink}
}

// arrows are the heads on a lane that spreads, one on each stretch of it, where
// it runs straight, no label stands and no other lane runs. Where lanes lie so
// close that there is no such place, numbered ones have small heads.
func (l laneLayer) arrows(i int, others laneSegments, numbered bool) []Element {
	const every = 75.0 // mm
	lane := others.all[i]
	if !lane.Spreading {
		return nil
	}
	var heads []Element
	for _, line := range lane.lines {
		whole := line.length()
		parts := max(1, math.Floor(whole/every))
		for part := range int(parts) {
			from := whole * float64(part) / parts
			head, ok := l.arrow(line, from, from+whole/parts, 1, lane.Pass, func(p plate) bool { return !others.cross(p, i, false) })
			if !ok && (numbered || lane.Pass == lanes.Header) {
				head, ok = l.arrow(line, from, from+whole/parts, 0.6, lane.Pass, func(plate) bool { return true })
			}
			if ok {
				heads = append(heads, head)
			}
		}
	}
	return heads
}

// arrow places a head between two ways along a line.
func (l laneLayer) arrow(line Line, from, to, size float64, p lanes.Pass, fits func(plate) bool) (Path, bool) {
	const step, room, bend = 1.5, 2.4, 0.25 // mm
	for _, way := range fromMiddle(from, to, step, room*size/2) {
		a, at, b := line.at(way-room*size/2), line.at(way), line.at(way+room*size/2)
		turn := math.Atan2(b.Y-a.Y, b.X-a.X) * 180 / math.Pi
		box := turnedPlate(at, room*size, 1.6*size, turn)
		if squaredDistance(at, a, b) <= bend*bend && l.labels.free(box) && fits(box) {
			return arrowhead(at, turn, size, p), true
		}
	}
	return Path{}, false
}

// fromMiddle returns ways between two, a margin inside them, from a little
// beyond the middle outwards.
func fromMiddle(from, to, step, margin float64) []float64 {
	const first = 0.55 // numbers stand before the middle
	middle := from + (to-from)*first
	var ways []float64
	for off := 0.0; off <= (to-from)*first; off += step {
		for _, way := range []float64{middle + off, middle - off} {
			if way >= from+margin && way <= to-margin {
				ways = append(ways, way)
			}
		}
	}
	return ways
}
