package render

// A rim answers which edges lie on the edge of an area, and which run through
// it.
type rim struct{ edges bands }

func newRim(area polygon) rim { return rim{bandsOf(area)} }

// holds reports whether a point lies on the rim.
func (r rim) holds(q Point) bool {
	const tolerance = 0.01 // mm
	for k := r.edges.band(q.Y - tolerance); k <= r.edges.band(q.Y+tolerance); k++ {
		for _, e := range r.edges.edges[k] {
			if squaredDistance(q, e.a, e.b) <= tolerance*tolerance {
				return true
			}
		}
	}
	return false
}

// inner returns the parts of another area's edge that do not lie on the rim.
func (r rim) inner(area polygon) []Line {
	var lines []Line
	var run []Point
	end := func() {
		if len(run) > 0 {
			lines = append(lines, Line{Points: run})
		}
		run = nil
	}
	for _, ring := range area {
		for i, a := range ring {
			b := ring.next(i)
			if r.holds(Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}) {
				end()
				continue
			}
			if run == nil {
				run = []Point{a}
			}
			run = append(run, b)
		}
		end()
	}
	return lines
}
