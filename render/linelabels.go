package render

import (
	"math"
	"strconv"
)

// labelLine puts a label on a line, along it, where it runs straightest near
// its middle, and again on the rest of a long line. A line too short for it
// gets none.
func (d *draft) labelLine(line Line, f form, v view) []Element {
	const step, between = 2.0, 90.0 // mm
	whole := line.length()
	if whole < 1.5*f.width {
		return nil
	}
	var elements []Element
	parts := max(1, math.Floor(whole/between))
	for part := range int(parts) {
		from, to := whole*float64(part)/parts, whole*float64(part+1)/parts
		middle := (from + to) / 2
		for off := 0.0; off <= (to-from-f.width)/2; off += step {
			drawn := d.labelAlong(line, middle+off, 0, f, v)
			if drawn == nil {
				drawn = d.labelAlong(line, middle-off, 0, f, v)
			}
			if drawn != nil {
				elements = append(elements, drawn...)
				break
			}
		}
	}
	return elements
}

// labelAlong puts a label at a way along a line and some way to the left of it,
// if the line is straight there and there is room.
func (d *draft) labelAlong(line Line, way, left float64, f form, v view) []Element {
	const bend = 0.6 // mm that the line may leave the chord under the label
	from, at, to := line.at(way-f.width/2), line.at(way), line.at(way+f.width/2)
	if math.Sqrt(squaredDistance(at, from, to)) > bend {
		return nil
	}
	turn := math.Atan2(to.Y-from.Y, to.X-from.X) * 180 / math.Pi
	aside := Point{0, left}.turned(turn)
	at = at.plus(aside.X, aside.Y)
	turn = upright(turn)
	box := f.plate(at, turn)
	if !box.within(v.window.inset(windowInset)) || !d.labels.free(box) {
		return nil
	}
	return d.put(f, at, turn, white)
}

// upright turns text that would stand on its head round, in degrees.
func upright(turn float64) float64 {
	switch {
	case turn > 90:
		return turn - 180
	case turn <= -90:
		return turn + 180
	}
	return turn
}

// length is that of an open line, in millimetres.
func (line Line) length() float64 {
	sum := 0.0
	for i := 1; i < len(line.Points); i++ {
		sum += math.Hypot(line.Points[i].X-line.Points[i-1].X, line.Points[i].Y-line.Points[i-1].Y)
	}
	return sum
}

// at is the place a way along a line that is open and as long.
func (line Line) at(way float64) Point {
	for i := 1; i < len(line.Points); i++ {
		a, b := line.Points[i-1], line.Points[i]
		piece := math.Hypot(b.X-a.X, b.Y-a.Y)
		if way <= piece && piece > 0 {
			t := max(0, way/piece)
			return Point{a.X + (b.X-a.X)*t, a.Y + (b.Y-a.Y)*t}
		}
		way -= piece
	}
	return line.Points[len(line.Points)-1]
}

// hoursLabel writes the hours of a contour.
func hoursLabel(hours float64) string { return strconv.FormatFloat(hours, 'f', -1, 64) + " h" }
