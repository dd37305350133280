package lanes

import (
	"math"

	"example.org/turfplat/geo"
)

// straightness is how far, as a part of the width of its arm, an axis may be
// drawn beside the middle for the sake of a straighter walk.
const straightness = 0.2

// axesOf returns the lines along the middle of a narrow region, the longest
// first, none shorter than least, run on almost to the region's edge at its
// ends.
func axesOf(arm geo.Region, step, least float64) []geo.Line {
	at, mesh := meshOf(arm, step)
	g := middleOf(arm, at, mesh)
	var axes []geo.Line
	for {
		path := g.longest()
		line := make(geo.Line, len(path))
		for i, n := range path {
			line[i] = g.at[n]
		}
		if length(line) < least {
			return axes
		}
		width := widthAlong(line, arm)
		if line = withoutForks(line, width); length(line) > 0 {
			line = runOn(straightened(line, arm, straightness*width), arm, width)
		}
		if length(line) >= least {
			axes = append(axes, line)
		}
		g.drop(path)
	}
}

// withoutForks cuts the ends off an axis at which it leaves the middle for a
// corner of its arm: three quarters of the arm's width, as the fork at a
// square end is.
func withoutForks(l geo.Line, width float64) geo.Line {
	const fork = 0.75
	return shortened(turned(shortened(turned(l), fork*width)), fork*width)
}

// straightened simplifies a line as far as it stays in its arm.
func straightened(l geo.Line, arm geo.Region, tolerance float64) geo.Line {
	const finest = 0.01 // m
	for ; tolerance > finest; tolerance /= 2 {
		if s := simplified(l, tolerance); len(arm.Inside(s)) == 1 && length(arm.Inside(s)[0]) > length(s)-finest {
			return s
		}
	}
	return l
}

// widthAlong is the greatest width of an arm along its axis.
func widthAlong(axis geo.Line, arm geo.Region) float64 {
	width := 0.0
	for _, p := range axis {
		width = max(width, 2*distanceToEdges(p, arm))
	}
	return width
}

// shortened cuts a length off the start of a line; nothing is left of one that
// is shorter.
func shortened(l geo.Line, by float64) geo.Line {
	for i := 1; i < len(l); i++ {
		d := l[i-1].Distance(l[i])
		if d > by {
			return append(geo.Line{l[i-1].Toward(l[i], by/d)}, l[i:]...)
		}
		by -= d
	}
	return nil
}

// distanceToEdges is the way from p to the nearest edge of a region.
func distanceToEdges(p geo.XY, r geo.Region) float64 {
	nearest := math.Inf(1)
	edgesOf(r, func(a, b geo.XY) { nearest = min(nearest, p.DistanceToEdge(a, b)) })
	return nearest
}

// simplified drops the positions of a line that lie within tolerance metres of
// a straight way past them (Douglas & Peucker 1973).
func simplified(l geo.Line, tolerance float64) geo.Line {
	if len(l) < 3 {
		return l
	}
	a, b := l[0], l[len(l)-1]
	off, at := 0.0, 0
	for i := 1; i < len(l)-1; i++ {
		if d := l[i].DistanceToEdge(a, b); d > off {
			off, at = d, i
		}
	}
	if off <= tolerance {
		return geo.Line{a, b}
	}
	head, tail := simplified(l[:at+1], tolerance), simplified(l[at:], tolerance)
	return append(head[:len(head)-1:len(head)-1], tail...)
}

// runOn lengthens a line straight at both ends to the edge of the region round
// it, but no farther than most metres.
func runOn(l geo.Line, r geo.Region, most float64) geo.Line {
	n := len(l)
	longer := append(geo.Line(nil), l...)
	longer[0] = onward(l[1], l[0], r, most)
	longer[n-1] = onward(l[n-2], l[n-1], r, most)
	return longer
}

// onward goes on from a past b almost to the edge of a region.
func onward(a, b geo.XY, r geo.Region, most float64) geo.XY {
	const short = 0.3 // m
	way := b.Minus(a)
	return b.Plus(unit(way).Times(max(0, min(most, sight(r, b, way)-short))))
}

// sight is the way from p in a direction to the first edge of a region, m; 0
// if there is none.
func sight(r geo.Region, p, direction geo.XY) float64 {
	far := p.Plus(unit(direction))
	nearest := math.Inf(1)
	edgesOf(r, func(a, b geo.XY) {
		if t, s, ok := sightOf(p, far, a, b); ok && t > 0 && 0 <= s && s <= 1 {
			nearest = min(nearest, t)
		}
	})
	if math.IsInf(nearest, 1) {
		return 0
	}
	return nearest
}
