package render

import (
	"math"
	"slices"

	"example.org/turfplat/zones"
)

// A legend explains what is drawn on a map, and no more. It is a block.
type legend struct {
	entries []legendEntry
	size    float64 // of letters, points; 0 is that of tables
}

// A legendEntry is a sample with its meaning.
type legendEntry struct {
	sample func(rect) []Element
	text   string
}

const (
	sampleWidth, sampleHeight = 8.6, 4.0
	entryHeight               = 5.4
)

// set implements block.
func (l legend) set(corner Point, width float64) (elements []Element, height float64) {
	size := l.size
	if size == 0 {
		size = tableSize
	}
	elements, head := heading("Key", size, corner, width)
	widest := 0.0
	for _, e := range l.entries {
		widest = max(widest, Regular.width(e.text, size))
	}
	const after = 1.6 // mm between a sample and its text
	count := max(1, int(width/(sampleWidth+after+widest+1.5)))
	rows := int(math.Ceil(float64(len(l.entries)) / float64(count)))
	for i, e := range l.entries {
		x := corner.X + cellMargin + float64(i/rows)*width/float64(count)
		y := corner.Y - head - 1 - float64(i%rows+1)*entryHeight
		box := rect{Point{x, y + (entryHeight-sampleHeight)/2}, Point{x + sampleWidth, y + (entryHeight+sampleHeight)/2}}
		text := Text{At: Point{box.max.X + after, box.center().Y - Regular.capHeight(size)/2}, String: e.text, Size: size, Ink: black}
		elements = append(elements, Group{ID: "sample", Title: e.text, Elements: e.sample(box)}, text)
	}
	return elements, head + 1 + float64(rows)*entryHeight
}

// legend lists what the map of the plat shows.
func (d *draft) legend() legend {
	var l legend
	add := func(there bool, text string, sample func(rect) []Element) {
		if there {
			l.entries = append(l.entries, legendEntry{sample, text})
		}
	}
	g := d.plat.Ground
	_, plain := shownExposures(d.plat.Zones)
	for _, kind := range slices.Backward(zones.CoverKinds) {
		if kind == zones.Turf {
			d.legendOfExposures(add)
		}
		add(!g.Cover(kind).Empty() && (kind != zones.Turf || plain), looks[kind].word, looks[kind].swatch())
	}
	add(!g.Unknown.Empty(), unknownLook.word, unknownLook.swatch())
	add(d.bars(), capitalized(noApplication), barredSwatch())
	add(len(d.plat.Zones) > 1, "Zone edge", lineSample(zoneEdge))
	add(!g.Outline.Empty(), "Site outline", lineSample(outlinePen))
	add(len(d.fixesDrawn()) > 0, "Fix of a walk", fixSample)
	d.legendOfTrees(add)
	d.legendOfBarriers(add, zones.Fence, zones.Wall, zones.Hedge)
	add(slices.ContainsFunc(d.plat.Site.Of(zones.Cutline), func(o *zones.Object) bool { return len(d.uncut[o]) > 0 }), "Cutline, parts nothing", lineSample(cutline))
	for _, s := range signs {
		add(d.has(s.kind, anyObject), s.word, func(box rect) []Element { return []Element{s.draw(box.center(), signHeight)} })
	}
	add(d.hasNeighbours(), "Neighbours", neighbourSample)
	return l
}

func neighbourSample(box rect) []Element {
	return []Element{Path{Lines: box.polygon().lines(), Fill: neighbourBuilding}}
}

// has reports whether the map shows a wanted object of a kind.
func (d *draft) has(kind zones.Kind, wanted func(*zones.Object) bool) bool {
	return slices.ContainsFunc(d.plat.Site.Of(kind), func(o *zones.Object) bool { return wanted(o) && d.shows(o) })
}

func anyObject(*zones.Object) bool { return true }

func (d *draft) legendOfTrees(add func(bool, string, func(rect) []Element)) {
	crown := func(leaf leaf) func(rect) []Element {
		return func(box rect) []Element { return []Element{tree(box.center(), sampleHeight+0.8, leaf)} }
	}
	add(d.has(zones.Tree, func(o *zones.Object) bool { return len(o.Points) > 0 && leafOf(o) == broadLeaf }), "Tree", crown(broadLeaf))
	add(d.has(zones.Tree, func(o *zones.Object) bool { return len(o.Points) > 0 && leafOf(o) == needleLeaf }), "Needled tree", crown(needleLeaf))
	add(d.has(zones.Tree, func(o *zones.Object) bool { return len(o.Points) == 0 }), "Tree crowns", func(box rect) []Element { return canopy(box.polygon()) })
}

var barrierWords = map[zones.Kind]string{zones.Fence: "Fence", zones.Wall: "Wall", zones.Hedge: "Hedge"}

func (d *draft) legendOfBarriers(add func(bool, string, func(rect) []Element), kinds ...zones.Kind) {
	for _, kind := range kinds {
		add(d.has(kind, anyObject), barrierWords[kind], lineSample(barriers[kind]))
	}
}

// swatch is a box in the look.
func (l look) swatch() func(rect) []Element {
	return l.pattern.swatch(l.tint, l.ink, l.edge, thinLine)
}

func barredSwatch() func(rect) []Element {
	return barred.swatch(turfTint, warning, warning, mediumLine)
}

// swatch returns a box filled with the pattern. Patterns are anchored to the
// sheet; a box as small as this shows as much of one as it can.
func (t pattern) swatch(tint, ink, edge Ink, weight float64) func(rect) []Element {
	const somewhere, steps, step, rim = 100, 8, 1.0, 0.6 // mm
	var best Path
	var origin Point
	for i := range steps {
		for j := range steps {
			corner := Point{somewhere + float64(i)*step, somewhere + float64(j)*step}
			middle := rect{corner, corner.plus(sampleWidth, sampleHeight)}.inset(rim)
			if filled := t.fill(middle.polygon(), ink); len(filled.Lines) > len(best.Lines) {
				best, origin = filled, corner
			}
		}
	}
	best = t.fill(rect{origin, origin.plus(sampleWidth, sampleHeight)}.polygon(), ink)
	return func(box rect) []Element {
		pattern := best
		pattern.Lines = moved(best.Lines, box.min.X-origin.X, box.min.Y-origin.Y)
		area := box.polygon().lines()
		return []Element{Path{Lines: area, Fill: tint}, pattern, Path{Lines: area, Stroke: edge, Weight: weight}}
	}
}

func moved(lines []Line, dx, dy float64) []Line {
	all := make([]Line, len(lines))
	for i, line := range lines {
		all[i] = Line{make([]Point, len(line.Points)), line.Closed}
		for j, p := range line.Points {
			all[i].Points[j] = p.plus(dx, dy)
		}
	}
	return all
}

func lineSample(pen func([]Line) []Element) func(rect) []Element {
	return func(box rect) []Element {
		y := box.center().Y
		return pen([]Line{{Points: []Point{{box.min.X, y}, {box.max.X, y}}}})
	}
}
