package render

import (
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

const signHeight = 4.2 // mm

var signs = []struct {
	kind zones.Kind
	word string
	draw func(at Point, height float64) Group
}{
	{zones.Start, "Start", startSign},
	{zones.Refill, "Refill", refillSign},
	{zones.Access, "Gate, way in", gateSign},
	{zones.Hazard, "Hazard", hazardSign},
}

// A sign stands for points of one kind that would lie on top of each other.
type sign struct {
	at    Point
	name  string // of the object if it is only one
	count int
}

// signs draws the points that a crew looks for, once zones are labelled.
func (d *draft) signs(v view) []Element {
	if d.lifted {
		d.labels.stand(d.placed, v)
	}
	var lines, drawn []Element
	for _, p := range slices.Backward(d.placed) {
		line, sign := p.drawn()
		lines, drawn = append(lines, line...), append(drawn, sign)
	}
	return append(lines, drawn...)
}

// drawn is the sign, with its line if it stands beside its point.
func (s placedSign) drawn() (line []Element, sign Group) {
	sign = signs[s.kind].draw(s.stand, signHeight)
	if s.name != "" {
		sign.Title = s.name
	}
	if s.led {
		line = []Element{leader(s.plate().nearest(s.at), s.at, targetDot)}
	}
	return line, sign
}

// signsOf joins the points of a kind that would lie on top of each other;
// those with a name of their own stay.
func (d *draft) signsOf(kind zones.Kind, v view) []sign {
	var joined []sign
	for _, o := range d.plat.Site.Of(kind) {
		for _, p := range d.shownPoints(o) {
			at := v.at(p)
			if !v.window.inset(signHeight).holds(at) {
				continue
			}
			same := slices.IndexFunc(joined, func(s sign) bool {
				return o.Name == "" && s.name == "" && levelPlate(at, 2*signHeight, 2*signHeight).holds(s.at)
			})
			if same >= 0 {
				joined[same].count++
				continue
			}
			joined = append(joined, sign{at, d.letters.of(o.Name), 1})
		}
	}
	return joined
}

// shownPoints are those of an object's points that lie on the site or close
// to it, on or close to the ground that is to be shown.
func (d *draft) shownPoints(o *zones.Object) []geo.XY {
	var shown []geo.XY
	around := d.extent.Grown(closeBy)
	for _, p := range o.Points {
		if d.near.Contains(p) && (geo.Bounds{Min: p, Max: p}).Meets(around) {
			shown = append(shown, p)
		}
	}
	return shown
}

// shows reports whether the map shows an object that covers no ground.
func (d *draft) shows(o *zones.Object) bool {
	if len(o.Points) > 0 {
		return len(d.shownPoints(o)) > 0
	}
	if len(o.Lines) == 0 {
		return o.Ground.Bounds().Meets(d.extent)
	}
	return slices.ContainsFunc(o.Lines, func(l geo.Line) bool {
		return slices.ContainsFunc(d.near.Inside(l), func(part geo.Line) bool { return part.Bounds().Meets(d.extent.Grown(closeBy)) })
	})
}
