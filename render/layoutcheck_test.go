package render

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// A layout is a finished sheet, taken apart into what must keep clear of each
// other. It is read off the elements and their groups alone, so that sheets of
// any subject are checked alike.
type layout struct {
	sheet   *Sheet
	window  rect // of the map; empty on a sheet without one
	texts   []laidText
	symbols []laidBox
	leaders []laidLine
	led     int // number of leaders
	blocks  []laidBox
	rules   []laidLine
	ground  []laidBox // what is drawn on the map, by subject
}

// A laidText is a text with the groups round it, the outermost first.
type laidText struct {
	Text
	groups []Group
}

// A laidBox is the ground of a symbol or of a block of the panel.
type laidBox struct {
	name string
	box  rect
}

// A laidLine is a straight line of a leader or the rule of a table.
type laidLine struct {
	a, b   Point
	leader int
}

// groundGroups are the ids of groups that are drawn on the ground of a map.
var groundGroups = []string{"context", "covers", "fixes", "zones", "check-on-site", "trees", "outline", "barriers", "lanes", "match-lines"}

// symbolGroups are the ids of groups that are symbols on a map.
var symbolGroups = []string{"start", "refill", "gate", "hazard"}

func layoutOf(s *Sheet) *layout {
	l := &layout{sheet: s}
	l.walk(s.Elements, nil)
	return l
}

func (l *layout) walk(elements []Element, in []Group) {
	for _, e := range elements {
		switch e := e.(type) {
		case Group:
			l.group(e, in)
			l.walk(e.Elements, append(slices.Clip(in), e))
		case Text:
			if e.String != "" {
				l.texts = append(l.texts, laidText{e, in})
			}
		case Path:
			l.path(e, in)
		}
	}
}

func (l *layout) group(g Group, in []Group) {
	switch {
	case g.ID == "frame":
		l.window = extent(g.Elements)
	case slices.Contains(symbolGroups, g.ID) && !within(in, "sample"):
		l.symbols = append(l.symbols, laidBox{g.Title, extent(g.Elements)})
	case g.ID == "sample":
		if box := extent(g.Elements); box.width() > 0 { // others are samples of texts
			l.symbols = append(l.symbols, laidBox{"the sample of " + g.Title, box})
		}
	case slices.Contains(groundGroups, g.ID):
		l.ground = append(l.ground, laidBox{g.Title, extent(g.Elements)})
	case g.ID == "leader":
		l.led++
	case g.ID == "block":
		l.blocks = append(l.blocks, laidBox{g.Title, extentWithTexts(g.Elements)})
	}
}

func (l *layout) path(p Path, in []Group) {
	leader, rule := within(in, "leader"), within(in, "block") && !within(in, "sample")
	if !leader && !rule || p.Stroke.none() {
		return
	}
	for _, line := range p.Lines {
		for i := 1; (p.Stroke == black || leader && p.Stroke == grey) && i < len(line.Points); i++ { // rims are white, hairlines pale
			at := laidLine{line.Points[i-1], line.Points[i], l.led}
			if leader {
				l.leaders = append(l.leaders, at)
			} else {
				l.rules = append(l.rules, at)
			}
		}
	}
}

func within(groups []Group, id string) bool {
	return slices.ContainsFunc(groups, func(g Group) bool { return g.ID == id })
}

// inked is the ground that a text covers, with the tails of its letters;
// figures have none.
func (t laidText) inked() plate {
	w, tail := t.width(), 0.0
	if strings.ContainsFunc(t.String, unicode.IsLetter) {
		tail = t.Face.descent(t.Size)
	}
	top := t.Face.capHeight(t.Size)
	if !t.Face.hasAll(t.String) {
		top, tail = t.reach()
	}
	middle := Point{w/2 - w*t.Anchor.share(), (top - tail) / 2}.turned(t.Turn)
	return turnedPlate(t.At.plus(middle.X, middle.Y), w, top+tail, t.Turn)
}

func (b rect) plate() plate { return plate{b.min, {b.max.X, b.min.Y}, b.max, {b.min.X, b.max.Y}} }

// extentWithTexts is the box round all paths and texts of the elements.
func extentWithTexts(elements []Element) rect {
	var all polygon
	if box := extent(elements); box.width() > 0 {
		all = append(all, ring{box.min, box.max})
	}
	visit(elements, func(e Element) {
		if t, ok := e.(Text); ok && t.String != "" {
			box := laidText{Text: t}.inked()
			all = append(all, box[:])
		}
	})
	return all.bounds()
}

// findings are all that is wrong with the layout, in words.
func (l *layout) findings() []string {
	var found []string
	for _, check := range []func() []string{
		l.textsOverTexts, l.textsOverSymbols, l.symbolsOverSymbols, l.linesOverTexts, l.leadersOverSymbols,
		l.clipped, l.groundOffTheMap, l.blocksOverBlocks, l.smallTexts, l.missingLetters,
	} {
		found = append(found, check()...)
	}
	return found
}

func (l *layout) textsOverTexts() (found []string) {
	for i, a := range l.texts {
		for _, b := range l.texts[:i] {
			if a.inked().meets(b.inked()) {
				found = append(found, fmt.Sprintf("%q lies on %q", a.String, b.String))
			}
		}
	}
	return found
}

func (l *layout) textsOverSymbols() (found []string) {
	for _, t := range l.texts {
		if slices.ContainsFunc(t.groups, func(g Group) bool { return slices.Contains(symbolGroups, g.ID) }) {
			continue // it is part of one
		}
		for _, s := range l.symbols {
			if t.inked().meets(s.box.plate()) && !within(t.groups, "sample") {
				found = append(found, fmt.Sprintf("%q lies on %s", t.String, s.name))
			}
		}
	}
	return found
}

func (l *layout) symbolsOverSymbols() (found []string) {
	for i, a := range l.symbols {
		for _, b := range l.symbols[:i] {
			if a.box.inset(0.05).plate().meets(b.box.plate()) {
				found = append(found, fmt.Sprintf("%s lies on %s", a.name, b.name))
			}
		}
	}
	return found
}

// linesOverTexts finds leaders and rules that strike a text through.
func (l *layout) linesOverTexts() (found []string) {
	for _, t := range l.texts {
		box := t.inked()
		for kind, lines := range map[string][]laidLine{"leader": l.leaders, "rule": l.rules} {
			for _, line := range lines {
				if box.meets(plate{line.a, line.b, line.b, line.a}) {
					found = append(found, fmt.Sprintf("a %s runs through %q", kind, t.String))
				}
			}
		}
	}
	return found
}

func (l *layout) leadersOverSymbols() (found []string) {
	for i, line := range l.leaders {
		at := plate{line.a, line.b, line.b, line.a}
		for _, s := range l.symbols {
			if s.box.plate().meets(at) {
				found = append(found, "a leader runs through "+s.name)
			}
		}
		for _, other := range l.leaders[:i] {
			if other.leader != line.leader && at.meets(plate{other.a, other.b, other.b, other.a}) {
				found = append(found, fmt.Sprintf("leaders cross at %.0f, %.0f mm", line.b.X, line.b.Y))
			}
		}
	}
	return found
}

// clipped finds texts cut by the edge of what they belong to: the paper with
// its margin, the window of the map, the block of the panel.
func (l *layout) clipped() (found []string) {
	paper := rect{max: Point{l.sheet.Width, l.sheet.Height}}.inset(sheetMargin - 0.5)
	for _, t := range l.texts {
		box := t.inked()
		if !box.within(paper) {
			found = append(found, fmt.Sprintf("%q reaches into the margin", t.String))
		}
		if (within(t.groups, "labels") || box.meets(l.window.plate())) && !box.within(l.window) {
			found = append(found, fmt.Sprintf("%q is cut by the frame", t.String))
		}
		for _, g := range t.groups {
			if g.ID != "block" {
				continue
			}
			column := extent(g.Elements).grown(0.1) // its rules are as wide as it is
			if ruled := column.width() > 1; ruled && (box[0].X < column.min.X || box[1].X > column.max.X) {
				found = append(found, fmt.Sprintf("%q reaches out of the block %s", t.String, g.Title))
			}
			if t.Face == Bold && strings.HasSuffix(t.String, "…") {
				found = append(found, fmt.Sprintf("the head %q of the block %s is cut short", t.String, g.Title))
			}
		}
	}
	for _, s := range l.symbols {
		if s.box.plate().meets(l.window.plate()) && !s.box.plate().within(l.window) {
			found = append(found, s.name+" is cut by the frame")
		}
	}
	return found
}

// groundOffTheMap finds what is drawn beyond the window of the map.
func (l *layout) groundOffTheMap() (found []string) {
	for _, g := range l.ground {
		if b, w := g.box, l.window.grown(0.1); b.width() > 0 && (b.min.X < w.min.X || b.min.Y < w.min.Y || b.max.X > w.max.X || b.max.Y > w.max.Y) {
			found = append(found, fmt.Sprintf("%s: drawn from %.0f, %.0f to %.0f, %.0f mm, beyond the map", g.name, b.min.X, b.min.Y, b.max.X, b.max.Y))
		}
	}
	return found
}

func (b rect) grown(rim float64) rect { return b.inset(-rim) }

func (l *layout) blocksOverBlocks() (found []string) {
	for i, a := range l.blocks {
		if a.box.inset(0.05).plate().meets(l.window.plate()) {
			found = append(found, "block "+a.name+" lies on the map")
		}
		for _, b := range l.blocks[:i] {
			if a.box.inset(0.05).plate().meets(b.box.plate()) {
				found = append(found, fmt.Sprintf("block %s lies on block %s", a.name, b.name))
			}
		}
	}
	return found
}

// officeGroups are set small: people in an office read them, a crew need not.
var officeGroups = []string{"method"}

// leastSize is what a person in gloves and rain can read, in points (common
// practice, no source).
const leastSize = 9.0

func (l *layout) smallTexts() (found []string) {
	for _, t := range l.texts {
		office := slices.ContainsFunc(t.groups, func(g Group) bool { return slices.Contains(officeGroups, g.ID) })
		badge := slices.ContainsFunc(t.groups, func(g Group) bool { return slices.Contains(symbolGroups, g.ID) })
		if t.Size < leastSize && !office && !badge {
			found = append(found, fmt.Sprintf("%q is %.1f points tall", t.String, t.Size))
		}
	}
	return found
}

// missingLetters finds texts that would be drawn with boxes, and stand-ins
// that no note explains.
func (l *layout) missingLetters() (found []string) {
	for _, t := range l.texts {
		if missing := missing(t.String); len(missing) > 0 {
			found = append(found, fmt.Sprintf("%q holds %q, which the typefaces lack", t.String, missing))
		}
	}
	if len(l.sheet.Missing) > 0 && !slices.ContainsFunc(l.texts, func(t laidText) bool { return strings.Contains(t.String, "stands for") }) {
		found = append(found, fmt.Sprintf("no note tells that %q are missing", l.sheet.Missing))
	}
	return found
}

// labels are the texts on the map.
func (l *layout) labels() []laidText {
	return slices.DeleteFunc(slices.Clone(l.texts), func(t laidText) bool { return !within(t.groups, "labels") })
}
