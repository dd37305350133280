package lanes

import (
	"slices"

	"example.org/turfplat/geo"
)

// A task is a stint of one piece of ground. Its fill tasks come after its
// header tasks, so that turns lie on ground that is already done.
type task struct {
	stint
	group int // piece of ground
	plot  int
	pass  Pass
}

// before reports whether a task must come before another.
func (t task) before(o task) bool { return t.group == o.group && t.pass == Header && o.pass == Fill }

// A course is a task walked in a certain sense: its lines in order.
type course struct {
	lines []geo.Line
	inner float64 // m walked from line to line
}

func (c course) entry() geo.XY { return c.lines[0][0] }

func (c course) exit() geo.XY {
	last := c.lines[len(c.lines)-1]
	return last[len(last)-1]
}

// courses returns the ways in which a task can be walked. Those of even and odd
// number are each other's reverse, but for laps, which are walked one way
// round, with the edge on the deflector's side.
func (t task) courses(w *walker, shield Side) []course {
	if t.lap {
		return t.lapCourses(shield)
	}
	var all []course
	for _, fromLeft := range []bool{true, false} {
		c := course{lines: toAndFro(t.rows, fromLeft)}
		for i := 1; i < len(c.lines); i++ {
			before := c.lines[i-1]
			c.inner += w.way(before[len(before)-1], c.lines[i][0])
		}
		all = append(all, c, c.reversed())
	}
	if len(t.rows) == 1 {
		return all[:2]
	}
	return all
}

// toAndFro returns rows walked in turn, every other one the other way.
func toAndFro(rows []geo.Line, forward bool) []geo.Line {
	lines := make([]geo.Line, len(rows))
	for i, r := range rows {
		lines[i] = r
		if (i%2 == 0) != forward {
			lines[i] = turned(r)
		}
	}
	return lines
}

func turned(l geo.Line) geo.Line {
	l = slices.Clone(l)
	slices.Reverse(l)
	return l
}

func (c course) reversed() course {
	lines := make([]geo.Line, len(c.lines))
	for i, l := range c.lines {
		lines[len(lines)-1-i] = turned(l)
	}
	return course{lines, c.inner}
}

// lapCourses lets a lap start at some of its positions, spread over its length.
func (t task) lapCourses(shield Side) []course {
	const most = 8
	lap := t.rows[0]
	if shield == Left {
		lap = turned(lap)
	}
	lap = startedAt(lap, longestSide(lap))
	var all []course
	whole, gone := length(lap), 0.0
	for i := range len(lap) - 1 {
		if gone >= whole*float64(len(all))/most {
			c := course{}
			for range t.rows {
				c.lines = append(c.lines, startedAt(lap, i))
			}
			all = append(all, c)
		}
		gone += lap[i].Distance(lap[i+1])
	}
	return all
}
