package render

import (
	"time"

	"example.org/turfplat/zones/program"
)

// A seasonStrip is the steps of a season in rows, with their windows as bars
// along the months. It is a block.
type seasonStrip struct {
	rows     []stripRow
	from, to time.Time // whole months
	today    time.Time // zero if it is not known
}

type stripRow struct {
	number, name, window, letters string
	status                        program.Status
	from, to                      time.Time // zero if there is no window
}

// span takes in the months of all windows.
func (s *seasonStrip) span() {
	for _, r := range s.rows {
		if r.from.IsZero() {
			continue
		}
		from, to := monthOf(r.from), monthOf(r.to).AddDate(0, 1, 0)
		if s.from.IsZero() || from.Before(s.from) {
			s.from = from
		}
		if to.After(s.to) {
			s.to = to
		}
	}
}

func monthOf(t time.Time) time.Time { return time.Date(t.Year(), t.Month(), 1, 0, 0, 0, 0, time.UTC) }

// Measures of the strip in millimetres.
const (
	stripRowHeight = 6.0
	stripBar       = 3.4
	stripNumber    = 8.0
	stripName      = 58.0
	stripStatus    = 19.0
	stripDates     = 31.0
	stripZones     = 24.0
)

// set implements block.
func (s seasonStrip) set(corner Point, width float64) (elements []Element, height float64) {
	chart := rect{Point{corner.X + stripNumber + stripName + stripStatus + stripDates + stripZones, 0}, Point{corner.X + width, corner.Y}}
	elements, height = s.heads(corner, width, chart)
	top := corner.Y - height
	for i, r := range s.rows {
		elements = append(elements, Group{Title: r.number + ". " + r.name, Elements: s.row(r, Point{corner.X, top - float64(i)*stripRowHeight}, chart)})
		elements = append(elements, ruled(Point{corner.X, top - float64(i+1)*stripRowHeight}, width, grey.tint(0.5), hairLine))
	}
	height += float64(len(s.rows)) * stripRowHeight
	chart.min.Y = corner.Y - height
	elements = append(s.months(chart, top), elements...)
	elements = append(elements, ruled(corner.plus(0, -height), width, black, heavyLine))
	if !s.today.IsZero() && !s.today.Before(s.from) && s.today.Before(s.to) {
		x := s.at(s.today, chart)
		elements = append(elements, Path{Lines: []Line{{Points: []Point{{x, top}, {x, chart.min.Y}}}}, Stroke: black, Weight: mediumLine, Dash: []float64{1.6, 0.8}})
	}
	return elements, height
}

// heads names the columns and the months.
func (s seasonStrip) heads(corner Point, width float64, chart rect) (elements []Element, height float64) {
	height = lineHeight(stepSize) + 2*rowMargin
	y := baseLine(corner.Y-rowMargin, 0, Bold, stepSize)
	x := corner.X
	for _, c := range []struct {
		head string
		wide float64
	}{{"", stripNumber}, {"Step", stripName}, {"Status", stripStatus}, {"Dates", stripDates}, {"Zones", stripZones}} {
		elements = append(elements, Text{At: Point{x + cellMargin, y}, String: c.head, Face: Bold, Size: stepSize, Ink: black})
		x += c.wide
	}
	for m := s.from; m.Before(s.to); m = m.AddDate(0, 1, 0) {
		from, to := s.at(m, chart), s.at(m.AddDate(0, 1, 0), chart)
		name := m.Format("Jan")
		if Bold.width(name, stepSize) > to-from-1 {
			name = name[:1]
		}
		elements = append(elements, Text{At: Point{(from + to) / 2, y}, String: name, Face: Bold, Size: stepSize, Ink: black, Anchor: Middle})
	}
	return append(elements, ruled(corner, width, black, heavyLine), ruled(corner.plus(0, -height), width, black, thinLine)), height
}

// months parts the chart by months.
func (s seasonStrip) months(chart rect, top float64) []Element {
	var lines []Line
	for m := s.from; m.Before(s.to); m = m.AddDate(0, 1, 0) {
		x := s.at(m, chart)
		lines = append(lines, Line{Points: []Point{{x, top}, {x, chart.min.Y}}})
	}
	return []Element{Path{Lines: lines, Stroke: grey.tint(0.5), Weight: hairLine}}
}

// at is where a day begins in the chart.
func (s seasonStrip) at(t time.Time, chart rect) float64 {
	whole := s.to.Sub(s.from).Hours()
	return chart.min.X + chart.width()*t.Sub(s.from).Hours()/whole
}

func (s seasonStrip) row(r stripRow, corner Point, chart rect) []Element {
	y := corner.Y - stripRowHeight/2 - Regular.capHeight(stepSize)/2
	x := corner.X
	var elements []Element
	write := func(text string, face Face, wide float64) {
		elements = append(elements, Text{At: Point{x + cellMargin, y}, String: shortened(text, face, stepSize, wide-2*cellMargin), Face: face, Size: stepSize, Ink: black})
		x += wide
	}
	status := Regular
	if r.status == program.Ready || r.status == program.Blocked {
		status = Bold
	}
	write(r.number, Regular, stripNumber)
	write(r.name, Medium, stripName)
	write(string(r.status), status, stripStatus)
	write(r.window, Regular, stripDates)
	write(r.letters, Regular, stripZones)
	if r.from.IsZero() {
		return elements
	}
	middle := corner.Y - stripRowHeight/2
	bar := rect{Point{s.at(r.from, chart), middle - stripBar/2}, Point{s.at(r.to.AddDate(0, 0, 1), chart), middle + stripBar/2}}.polygon()
	return append(elements, stripBars(r.status, bar)...)
}

// stripBars tells the statuses apart without colour: ready is black, waiting is
// white, blocked is crossed out, left out a broken outline.
func stripBars(status program.Status, bar polygon) []Element {
	frame := Path{Lines: bar.lines(), Fill: white, Stroke: black, Weight: mediumLine}
	switch status {
	case program.Ready:
		frame.Fill = black
	case program.Blocked:
		return []Element{frame, crossHatch.fill(bar, black)}
	case program.Skipped:
		frame.Dash = []float64{1, 0.8}
	}
	return []Element{frame}
}

// divide implements [divisible].
func (s seasonStrip) divide(width, height float64, leastRows int) (first, rest block, ok bool) {
	_, heads := s.heads(Point{}, width, rect{})
	fitting := min(int((height-heads)/stripRowHeight), len(s.rows)-leastRows)
	if fitting < leastRows {
		return nil, nil, false
	}
	upper, lower := s, s
	upper.rows, lower.rows = s.rows[:fitting], s.rows[fitting:]
	return upper, lower, true
}
