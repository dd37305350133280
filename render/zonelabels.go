package render

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// A zoneLabel is a zone with the places it may be labelled at.
type zoneLabel struct {
	letter, name Text // there may be no name
	figures      []Text
	ground       Ink     // on which it stands
	pieces       []piece // of the zone in the window, that with the most room first
	ends         []Point // of a leader to the zone, the best first
}

// labelZones labels every zone, in its ground if there is room, and else
// beside it with a leader. Large zones choose first. Labels are as set for the
// number of a zone; where one would go without its letter, all say less.
func (d *draft) labelZones(v view, set func(int) zoneLabel) ([]Element, error) {
	lettersAlone := func(i int) zoneLabel {
		l := set(i)
		l.name, l.figures = Text{}, nil
		return l
	}
	nameless := func(i int) zoneLabel {
		l := set(i)
		l.name = Text{}
		return l
	}
	g := d.newSeating(v)
	before, told := slices.Clone(d.labels.taken), len(d.unlabelled)
	var drawn []Element
	for _, saying := range []func(int) zoneLabel{set, nameless, lettersAlone} {
		d.unlabelled = d.unlabelled[:told]
		d.labels.taken = slices.DeleteFunc(slices.Clone(before), func(p takenPlate) bool { return !slices.Contains(d.labels.taken, p) })
		var err error
		if drawn, err = d.labelZonesAs(v, g, saying); err != nil || len(d.unlabelled) == told {
			return drawn, err
		}
	}
	return drawn, nil
}

func (d *draft) labelZonesAs(v view, g seating, set func(int) zoneLabel) ([]Element, error) {
	var inside []Element
	var cramped []zoneLabel
	for i, z := range d.plat.Zones {
		shown, err := v.shown(z.Region)
		if err != nil {
			return nil, err
		}
		l := set(i)
		for _, p := range shown.Pieces() {
			l.pieces = append(l.pieces, newPiece(v.area(p)))
		}
		if len(l.pieces) == 0 {
			continue
		}
		slices.SortStableFunc(l.pieces, func(a, b piece) int { return cmp.Compare(b.clear, a.clear) })
		placed := d.placeInside(l)
		if placed == nil {
			cramped = append(cramped, l)
		}
		inside = append(inside, placed...)
	}
	for i := range cramped {
		cramped[i].ends = d.endsOfLeader(cramped[i])
	}
	return append(d.labelCramped(cramped, g), inside...), nil
}

// areaOfZone is a label with the letter of a zone, its name and its area.
func (d *draft) areaOfZone(i int) zoneLabel {
	z := d.measured.Zones[i]
	l := zoneLabel{
		letter: zoneLetter(z.Letter),
		ground: turfTint,
		name:   Text{String: d.letters.of(z.Name), Face: Medium, Size: mapSize, Ink: black},
	}
	if !z.Apply {
		l.figures = append(l.figures, Text{String: noApplication, Face: Bold, Size: mapSize, Ink: warning.readableOn(turfTint)})
	}
	area := d.figures.Area(z.AreaM2, z.CI95M2) + " " + d.figures.areaUnit()
	l.figures = append(l.figures, Text{String: area, Size: mapSize, Ink: black})
	return l
}

func zoneLetter(letter string) Text {
	return Text{String: letter, Face: Bold, Size: letterSize, Ink: black}
}

// forms are the shapes of the label, the best first.
func (l zoneLabel) forms() []form {
	var forms []form
	for _, name := range l.names() {
		lines := slices.Concat(name, l.figures)
		forms = append(forms, stacked(append([]Text{l.letter}, lines...)...), beside(l.letter, lines...))
	}
	return forms
}

// names are the ways to set the name of a zone: on one line, unless it is long,
// or on two. What is too long even so is cut.
func (l zoneLabel) names() [][]Text {
	const longest = 38.0 // mm of a line
	if l.name.String == "" {
		return [][]Text{nil}
	}
	two := inTwo(l.name)
	for i := range two {
		two[i].String = shortened(two[i].String, l.name.Face, l.name.Size, longest)
	}
	if l.name.width() > longest {
		return [][]Text{two}
	}
	return [][]Text{{l.name}, two}
}

// inTwo breaks a text into two lines of about one length, if it has words.
func inTwo(t Text) []Text {
	words := strings.Fields(t.String)
	best := []Text{t}
	for i := 1; i < len(words); i++ {
		first, second := t, t
		halves := balanced([]string{strings.Join(words[:i], " "), strings.Join(words[i:], " ")})
		first.String, second.String = halves[0], halves[1]
		if widest := max(first.width(), second.width()); widest < max(best[0].width(), best[len(best)-1].width()) {
			best = []Text{first, second}
		}
	}
	return best
}

// placeInside labels a zone in its piece with the most room where the whole
// label fits, and its other large pieces with the letter. It returns nil if no
// piece has room.
func (d *draft) placeInside(l zoneLabel) []Element {
	for i, p := range l.pieces {
		f := newField(p.area)
		for _, form := range l.forms() {
			at, ok := d.labels.roomIn(f, p.pole, form)
			if !ok {
				continue
			}
			drawn := d.put(form, at, 0, l.ground)
			for j, other := range l.pieces {
				if j != i {
					drawn = append(drawn, d.repeat(l, other)...)
				}
			}
			return drawn
		}
	}
	return nil
}

// endsOfLeader are where a leader to a cramped zone may end: where the zone has
// most room, or elsewhere along its middle, but beside a sign or a label that
// stands there.
func (d *draft) endsOfLeader(l zoneLabel) []Point {
	const apart, most = 1.5, 12 // mm
	var ends []Point
	for _, p := range l.pieces {
		f := newField(p.area)
		for _, at := range append([]Point{p.pole}, p.area.middles(apart)...) {
			dot := levelPlate(at, 2*l.dot(), 2*l.dot())
			crowded := slices.ContainsFunc(ends, func(e Point) bool { return squaredDistance(e, at, at) < apart*apart })
			if len(ends) < most && !crowded && d.labels.free(dot) && (at == p.pole || f.holds(dot)) {
				ends = append(ends, at)
			}
		}
	}
	if len(ends) == 0 {
		return []Point{l.pieces[0].pole}
	}
	return ends
}

// dot is the radius of the end of a leader to the zone: its plate lies in the
// zone, so that the ends of two leaders stay apart.
func (l zoneLabel) dot() float64 {
	return min(targetDot, max(leastDot, l.pieces[0].clear/math.Sqrt2))
}

// middles are the middles of cuts across an area, at a spacing along its longer
// side.
func (p polygon) middles(spacing float64) []Point {
	wide := p.bounds().width() > p.bounds().height()
	if wide {
		p = p.mirrored()
	}
	var middles []Point
	for _, row := range rowsOf(p, spacing) {
		y := float64(row.index) * spacing
		row.stretches(func(from, to float64) {
			at := Point{(from + to) / 2, y}
			if wide {
				at = at.mirrored()
			}
			middles = append(middles, at)
		})
	}
	return middles
}

// mirrored changes across and up.
func (p Point) mirrored() Point { return Point{p.Y, p.X} }

func (p polygon) mirrored() polygon {
	mirror := make(polygon, len(p))
	for i, ring := range p {
		for _, q := range ring {
			mirror[i] = append(mirror[i], q.mirrored())
		}
	}
	return mirror
}

// repeat puts the zone's letter into another piece of it.
func (d *draft) repeat(l zoneLabel, p piece) []Element {
	form := stacked(l.letter)
	if p.clear < form.width/2 {
		return nil
	}
	at, ok := d.labels.roomIn(newField(p.area), p.pole, form)
	if !ok {
		return nil
	}
	return d.put(form, at, 0, l.ground)
}

func (d *draft) put(f form, at Point, turn float64, ground Ink) []Element {
	d.labels.take(f.plate(at, turn))
	return f.on(ground, at, turn)
}

// roomIn finds the place nearest to a wanted one at which a label fits a field.
func (b *board) roomIn(f field, wanted Point, label form) (Point, bool) {
	for _, at := range f.places(wanted, label.width/2, label.height/2) {
		if p := label.plate(at, 0); f.holds(p) && b.free(p) {
			return at, true
		}
	}
	return Point{}, false
}
