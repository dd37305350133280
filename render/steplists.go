package render

import (
	"fmt"

	"example.org/turfplat/zones"
)

// A tickList is boxes to tick with gloves on. It is a block.
type tickList struct{ texts []string }

const (
	tickBox   = 6.5  // mm
	tickGap   = 1.4  // mm between boxes
	tickReach = 54.0 // mm of a column
)

func (s stepSheet) tickList() block { return tickList{s.step.Step.Ticks()} }

// set implements block.
func (l tickList) set(corner Point, width float64) (elements []Element, height float64) {
	elements, height = heading("Tick when done", stepSize, corner, width)
	count, rows := l.grid(width)
	room := width/float64(count) - tickBox - 2.5
	height += tickGap
	for i, text := range l.texts {
		at := corner.plus(float64(i/rows)*width/float64(count)+0.4, -height-float64(i%rows)*(tickBox+tickGap))
		box := rect{at.plus(0, -tickBox), at.plus(tickBox, 0)}
		lines := wrapped(text, Regular, stepSize, room)
		top := box.center().Y + float64(len(lines))*lineHeight(stepSize)/2
		set, _ := paragraph{text: text, size: stepSize, ink: black}.set(Point{box.max.X + 1.6, top}, room)
		elements = append(elements, Group{Title: text, Elements: append(
			[]Element{Path{Lines: box.polygon().lines(), Fill: white, Stroke: black, Weight: mediumLine}}, set...)})
	}
	return elements, height + float64(rows)*(tickBox+tickGap)
}

// grid is in how many columns and rows boxes stand.
func (l tickList) grid(width float64) (columns, rows int) {
	columns = max(1, int(width/tickReach))
	return columns, (len(l.texts) + columns - 1) / columns
}

// divide implements [divisible].
func (l tickList) divide(width, height float64, leastRows int) (first, rest block, ok bool) {
	columns, _ := l.grid(width)
	_, head := tickList{}.set(Point{}, width)
	fitting := min(int((height-head)/(tickBox+tickGap))*columns, len(l.texts)-leastRows)
	if fitting < leastRows {
		return nil, nil, false
	}
	return tickList{l.texts[:fitting]}, tickList{l.texts[fitting:]}, true
}

// A hazardList names what to watch for, with the sign that it has on the map.
// It is a block.
type hazardList struct{ texts []string }

// hazardList lists the hazards of the site. Not all there are is mapped.
func (s stepSheet) hazardList() block {
	count := make(map[string]int)
	var names []string
	for _, o := range s.plat.Site.Of(zones.Hazard) {
		if !s.shows(o) {
			continue
		}
		name := s.letters.of(o.Name)
		if name == "" {
			name = "Hazard, see map"
		}
		if count[name] == 0 {
			names = append(names, name)
		}
		count[name] += len(s.shownPoints(o))
	}
	var l hazardList
	for _, name := range names {
		if n := count[name]; n > 1 {
			name = fmt.Sprintf("%s (%d)", name, n)
		}
		l.texts = append(l.texts, name)
	}
	l.texts = append(l.texts, "Look for what is not mapped: sprinkler heads, valve boxes, pet fences, cables, roots, bees, wires overhead")
	return l
}

const hazardIndent = 7.0 // mm

func (l hazardList) height(i int, width float64) float64 {
	lines := wrapped(l.texts[i], Regular, stepSize, width-hazardIndent)
	return max(signHeight+0.8, float64(len(lines))*lineHeight(stepSize)+2*rowMargin)
}

// set implements block.
func (l hazardList) set(corner Point, width float64) (elements []Element, height float64) {
	elements, height = heading("Hazards", stepSize, corner, width)
	for i, text := range l.texts {
		h := l.height(i, width)
		lines := wrapped(text, Regular, stepSize, width-hazardIndent)
		middle := corner.Y - height - h/2
		set, _ := paragraph{text: text, size: stepSize, ink: black}.set(
			Point{corner.X + hazardIndent, middle + float64(len(lines))*lineHeight(stepSize)/2}, width-hazardIndent)
		elements = append(elements, hazardSign(Point{corner.X + hazardIndent/2, middle}, signHeight))
		elements = append(elements, set...)
		height += h
	}
	return elements, height
}

// divide implements [divisible].
func (l hazardList) divide(width, height float64, leastRows int) (first, rest block, ok bool) {
	_, used := hazardList{}.set(Point{}, width)
	fitting := 0
	for used += l.height(0, width); used <= height && fitting < len(l.texts)-1; used += l.height(fitting, width) {
		fitting++
	}
	fitting = min(fitting, len(l.texts)-leastRows)
	if fitting < leastRows {
		return nil, nil, false
	}
	return hazardList{l.texts[:fitting]}, hazardList{l.texts[fitting:]}, true
}
