package render

import "math"

// pattern is a texture of plain lines that tells areas apart without colour.
// It is laid out from the corner of the sheet, so that neighbouring areas of
// one pattern continue each other.
type pattern struct {
	rulings []ruling
	tiles   []scatter
	weight  float64 // mm
	round   bool    // ends of lines
}

// ruling is a set of parallel lines.
type ruling struct {
	angle     float64 // degrees counter-clockwise from the right
	spacing   float64 // mm
	dash, gap float64 // mm; without a gap the lines are unbroken
	shift     float64 // mm by which dashes are ahead of those of the line before
}

// scatter is a small mark set out in staggered rows. Marks that do not lie
// wholly in the area are left out.
type scatter struct {
	across, up float64 // mm between marks of a row and between rows
	offset     Point   // of the first mark
	mark       []Line  // about the mark's own place
}

// fill returns the pattern cut to an area.
func (t pattern) fill(area polygon, ink Ink) Path {
	path := Path{Stroke: ink, Weight: t.weight, Round: t.round}
	if bounds := area.bounds(); !bounds.min.finite() || !bounds.max.finite() {
		return path
	}
	for _, r := range t.rulings {
		path.Lines = append(path.Lines, r.fill(area)...)
	}
	if len(t.tiles) > 0 {
		inside := bandsOf(area)
		for _, s := range t.tiles {
			path.Lines = append(path.Lines, s.fill(area.bounds(), inside)...)
		}
	}
	return path
}

func (r ruling) fill(area polygon) []Line {
	sin, cos := math.Sincos(r.angle * math.Pi / 180)
	level := make(polygon, len(area))
	for i, corners := range area {
		level[i] = make(ring, len(corners))
		for j, p := range corners {
			level[i][j] = p.rotated(-sin, cos)
		}
	}
	var lines []Line
	for _, row := range rowsOf(level, r.spacing) {
		y := float64(row.index) * r.spacing
		draw := func(from, to float64) {
			a, b := Point{from, y}.rotated(sin, cos), Point{to, y}.rotated(sin, cos)
			lines = append(lines, Line{Points: []Point{a, b}})
		}
		row.stretches(func(from, to float64) {
			r.dashes(row.index, max(from, -sheetDiagonal), min(to, sheetDiagonal), draw)
		})
	}
	return lines
}

// dashes calls draw for each dash of line number k between two places on it.
func (r ruling) dashes(k int, from, to float64, draw func(from, to float64)) {
	if r.gap <= 0 || r.dash <= 0 {
		if from < to {
			draw(from, to)
		}
		return
	}
	period := r.dash + r.gap
	phase := math.Mod(float64(k)*r.shift, period)
	for n := math.Floor((from - phase) / period); n*period+phase < to; n++ {
		a, b := max(from, n*period+phase), min(to, n*period+phase+r.dash)
		if a < b {
			draw(a, b)
		}
	}
}

func (s scatter) fill(bounds rect, inside bands) []Line {
	bounds.min = Point{max(0, bounds.min.X), max(0, bounds.min.Y)}
	bounds.max = Point{min(largestSheet, bounds.max.X), min(largestSheet, bounds.max.Y)}
	var lines []Line
	for k := math.Floor((bounds.min.Y - s.offset.Y) / s.up); k*s.up+s.offset.Y <= bounds.max.Y; k++ {
		at := Point{s.offset.X + math.Mod(k, 2)*s.across/2, s.offset.Y + k*s.up}
		at.X += math.Floor((bounds.min.X-at.X)/s.across) * s.across
		for ; at.X <= bounds.max.X; at.X += s.across {
			if s.fits(at, inside) {
				lines = append(lines, s.markAt(at)...)
			}
		}
	}
	return lines
}

func (s scatter) fits(at Point, inside bands) bool {
	for _, line := range s.mark {
		for _, p := range line.Points {
			if !inside.holds(at.plus(p.X, p.Y)) {
				return false
			}
		}
	}
	return true
}

func (s scatter) markAt(at Point) []Line {
	moved := make([]Line, len(s.mark))
	for i, line := range s.mark {
		moved[i] = Line{make([]Point, len(line.Points)), line.Closed}
		for j, p := range line.Points {
			moved[i].Points[j] = at.plus(p.X, p.Y)
		}
	}
	return moved
}
