package render

import "math"

// strokeOutline returns the inked surface of the path's stroke as
// counter-clockwise pieces that overlap: a plank for each edge and a disc for
// each corner and round end. The non-zero rule joins them.
func (p Path) strokeOutline() []Line {
	var pieces []Line
	for _, line := range p.Lines {
		for _, dash := range dashed(line, p.Dash) {
			pieces = append(pieces, p.inked(dash)...)
		}
	}
	return pieces
}

func (p Path) inked(line Line) []Line {
	var pieces []Line
	for i, q := range line.Points {
		last := i == len(line.Points)-1
		if !last || line.Closed {
			next := line.Points[(i+1)%len(line.Points)]
			if plank := plank(q, next, p.Weight); plank != nil {
				pieces = append(pieces, Line{plank, true})
			}
		}
		corner := line.Closed || i > 0 && !last
		if corner || p.Round {
			pieces = append(pieces, disc(q, p.Weight/2).lines()...)
		}
	}
	return pieces
}

// plank returns the rectangle of a straight stroke, or nil for one of no
// length.
func plank(a, b Point, width float64) ring {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	if length == 0 {
		return nil
	}
	dx, dy := (b.X-a.X)/length*width/2, (b.Y-a.Y)/length*width/2
	return ring{a.plus(dy, -dx), b.plus(dy, -dx), b.plus(-dy, dx), a.plus(-dy, dx)}
}

// dashed cuts a line into its dashes; pattern holds lengths of dashes and gaps
// in turn.
func dashed(line Line, pattern []float64) []Line {
	if len(pattern) == 0 || len(line.Points) < 2 {
		return []Line{line}
	}
	if len(pattern)%2 == 1 {
		pattern = append(pattern[:len(pattern):len(pattern)], pattern...)
	}
	points := line.Points
	if line.Closed {
		points = append(points[:len(points):len(points)], points[0])
	}
	cutter := dashCutter{pattern: pattern, left: pattern[0], dash: []Point{points[0]}}
	for i := 1; i < len(points); i++ {
		cutter.follow(points[i-1], points[i])
	}
	cutter.end()
	return cutter.done
}

// dashCutter walks along a line with the pen up or down.
type dashCutter struct {
	pattern []float64
	part    int     // of the pattern; even parts are dashes
	left    float64 // of this part
	dash    []Point // under the pen
	done    []Line
}

func (c *dashCutter) follow(a, b Point) {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	gone := 0.0
	for length-gone > c.left {
		gone += c.left
		at := Point{a.X + (b.X-a.X)*gone/length, a.Y + (b.Y-a.Y)*gone/length}
		c.add(at)
		c.end()
		c.part = (c.part + 1) % len(c.pattern)
		c.left = c.pattern[c.part]
		c.add(at)
	}
	c.left -= length - gone
	c.add(b)
}

func (c *dashCutter) add(p Point) {
	if c.part%2 == 0 {
		c.dash = append(c.dash, p)
	}
}

// end lifts the pen.
func (c *dashCutter) end() {
	if len(c.dash) > 1 {
		c.done = append(c.done, Line{Points: c.dash})
	}
	c.dash = nil
}
