package render

import "math"

// Pattern is a texture of plain lines that tells areas apart without colour.
// It is laid out from the corner of the sheet, so that neighbouring areas of
// one pattern continue each other.
type Pattern struct {
	Rulings []Ruling
	Tiles   []Tiling
	Weight  float64 // mm
	Round   bool    // ends of lines
}

// Ruling is a set of parallel lines.
type Ruling struct {
	Angle     float64 // degrees counter-clockwise from the right
	Spacing   float64 // mm
	Dash, Gap float64 // mm; without a gap the lines are unbroken
	Shift     float64 // mm by which dashes are ahead of those of the line before
}

// Tiling is a small mark set out in staggered rows. Marks that do not lie
// wholly in the area are left out.
type Tiling struct {
	Across, Up float64 // mm between marks of a row and between rows
	Offset     Point   // of the first mark
	Mark       []Line  // about the mark's own place
}

// Fill returns the pattern cut to an area.
func (t Pattern) Fill(area Polygon, ink Ink) Path {
	path := Path{Stroke: ink, Weight: t.Weight, Round: t.Round}
	if bounds := area.Bounds(); !bounds.Min.finite() || !bounds.Max.finite() {
		return path
	}
	for _, r := range t.Rulings {
		path.Lines = append(path.Lines, r.fill(area)...)
	}
	if len(t.Tiles) > 0 {
		inside := bandsOf(area)
		for _, s := range t.Tiles {
			path.Lines = append(path.Lines, s.fill(area.Bounds(), inside)...)
		}
	}
	return path
}

func (r Ruling) fill(area Polygon) []Line {
	sin, cos := math.Sincos(r.Angle * math.Pi / 180)
	level := make(Polygon, len(area))
	for i, corners := range area {
		level[i] = make(Ring, len(corners))
		for j, p := range corners {
			level[i][j] = p.rotated(-sin, cos)
		}
	}
	var lines []Line
	for _, row := range rowsOf(level, r.Spacing) {
		y := float64(row.index) * r.Spacing
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
func (r Ruling) dashes(k int, from, to float64, draw func(from, to float64)) {
	if r.Gap <= 0 || r.Dash <= 0 {
		if from < to {
			draw(from, to)
		}
		return
	}
	period := r.Dash + r.Gap
	phase := math.Mod(float64(k)*r.Shift, period)
	for n := math.Floor((from - phase) / period); n*period+phase < to; n++ {
		a, b := max(from, n*period+phase), min(to, n*period+phase+r.Dash)
		if a < b {
			draw(a, b)
		}
	}
}

func (s Tiling) fill(bounds Rect, inside bands) []Line {
	bounds.Min = Point{max(0, bounds.Min.X), max(0, bounds.Min.Y)}
	bounds.Max = Point{min(largestSheet, bounds.Max.X), min(largestSheet, bounds.Max.Y)}
	var lines []Line
	for k := math.Floor((bounds.Min.Y - s.Offset.Y) / s.Up); k*s.Up+s.Offset.Y <= bounds.Max.Y; k++ {
		at := Point{s.Offset.X + math.Mod(k, 2)*s.Across/2, s.Offset.Y + k*s.Up}
		at.X += math.Floor((bounds.Min.X-at.X)/s.Across) * s.Across
		for ; at.X <= bounds.Max.X; at.X += s.Across {
			if s.fits(at, inside) {
				lines = append(lines, s.markAt(at)...)
			}
		}
	}
	return lines
}

func (s Tiling) fits(at Point, inside bands) bool {
	for _, line := range s.Mark {
		for _, p := range line.Points {
			if !inside.holds(at.plus(p.X, p.Y)) {
				return false
			}
		}
	}
	return true
}

func (s Tiling) markAt(at Point) []Line {
	moved := make([]Line, len(s.Mark))
	for i, line := range s.Mark {
		moved[i] = Line{make([]Point, len(line.Points)), line.Closed}
		for j, p := range line.Points {
			moved[i].Points[j] = at.plus(p.X, p.Y)
		}
	}
	return moved
}
