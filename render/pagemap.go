package render

import (
	"fmt"
	"math"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// Measures of the map of a page, in millimetres. Letters are as on the sheets,
// so the smaller the drawing the larger they are on a screen.
const (
	pageWidth, pageHeight = 150.0, 150.0
	mostPage              = 400.0 // a larger one is too much for a phone to draw
	pageMargin            = 5.0
)

// pageScale shows the whole site on a screen; a large site is drawn no smaller
// than sheets draw it, and has to be zoomed.
func (d *draft) pageScale() Scale {
	fit := func(width, height float64) Scale {
		e := d.extent
		return Scale(math.Ceil(1000 * max(e.Width()/(width-2*pageMargin), e.Height()/(height-2*pageMargin))))
	}
	return max(1, min(fit(pageWidth, pageHeight), max(smallestLegible, fit(mostPage, mostPage))))
}

// mapSheet draws the map of the page, north up: the ground, and over it what
// each section shows, of which the page lets one be seen at a time.
func (w *webPage) mapSheet() (*Sheet, view, error) {
	d, scale := w.draft, w.pageScale()
	e := d.upright.extent
	size := Point{scale.MM(e.Width()) + 2*pageMargin, scale.MM(e.Height()) + 2*pageMargin}
	size = Point{math.Ceil(max(size.X, 2*pageMargin+signHeight)), math.Ceil(max(size.Y, 2*pageMargin+signHeight))}
	v, err := newView(rect{max: size}, scale, d.upright, geo.XY{X: (e.Min.X + e.Max.X) / 2, Y: (e.Min.Y + e.Max.Y) / 2})
	if err != nil {
		return nil, v, err
	}
	d.lie = d.upright
	s := NewSheet("map", d.letters.of(d.measured.Name)+", map", Paper{Name: "page", Width: size.X, Height: size.Y})
	s.Site, s.Subject, s.Scale = d.letters.of(d.measured.Name), d.subject.inWords(), scale
	s.ground = &ground{v.window, v, d.plat.Site.Frame}
	elements, err := w.mapElements(v)
	if err != nil {
		return nil, v, err
	}
	s.Add(elements...)
	s.Missing, s.Unlabelled = d.letters.missing, w.unlabelled
	if d.options.Mono {
		s.Elements = monochrome(s.Elements)
	}
	return s, v, nil
}

func (w *webPage) mapElements(v view) ([]Element, error) {
	d := w.draft
	under, over, err := w.mapsOfSections(v)
	if err != nil {
		return nil, err
	}
	lower := []mapLayer{
		{"context", "Beyond the outline", d.context},
		{"covers", "Covers of the ground", d.covers},
		{"zones", "Zones", d.zones},
		{"hours", "Hours of direct sun", w.hours},
	}
	upper := []mapLayer{
		{"trees", "Trees", d.trees},
		{"outline", "Outline of the site", d.outline},
		{"barriers", "Fences, walls, hedges and cutlines", func(v view) ([]Element, error) {
			return d.barriers(v, zones.Cutline, zones.Wall, zones.Hedge, zones.Fence), nil
		}},
		{"fixes", "Fixes of the walks", func(v view) ([]Element, error) { return d.fixes(v), nil }},
		{"touch", "Zones, to be asked", w.touch},
	}
	elements, err := drawLayers(lower, v)
	if err != nil {
		return nil, err
	}
	drawn, err := drawLayers(upper, v)
	return append(append(append(elements, under...), drawn...), over...), err
}

// mapsOfSections draws what each section shows, in groups that are named after
// its number.
func (w *webPage) mapsOfSections(v view) (under, over []Element, err error) {
	for i, s := range w.sections {
		name := sectionGroup(i)
		low, high, err := s.ground(v)
		if err != nil {
			return nil, nil, err
		}
		if i == 0 {
			w.unlabelled = w.draft.unlabelled
		}
		under = append(under, Group{ID: name + "-under", Elements: renamed(low, name)})
		over = append(over, Group{ID: name + "-over", Elements: renamed(high, name)})
	}
	return under, over, nil
}

// sectionGroup names the groups of a section.
func sectionGroup(number int) string { return fmt.Sprintf("part%d", number) }

// renamed puts a name before the ids of all groups.
func renamed(elements []Element, name string) []Element {
	all := make([]Element, len(elements))
	for i, e := range elements {
		if g, ok := e.(Group); ok {
			if g.ID != "" {
				g.ID = name + "-" + g.ID
			}
			g.Elements = renamed(g.Elements, name)
			e = g
		}
		all[i] = e
	}
	return all
}

// hours draws the hours of sun over the zones, if they are shown.
func (w *webPage) hours(v view) ([]Element, error) {
	for _, s := range w.sections {
		if s.sun != nil {
			return s.sun(v)
		}
	}
	return nil, nil
}

// touch is the ground of each zone, for the browser to be asked: the page makes
// it clear.
func (w *webPage) touch(v view) ([]Element, error) {
	var elements []Element
	for i, z := range w.plat.Zones {
		shown, err := v.shown(z.Region)
		if err != nil {
			return nil, err
		}
		elements = append(elements, Group{ID: zoneGroup(i), Elements: []Element{Path{Lines: v.area(shown).lines(), Fill: white}}})
	}
	return elements, nil
}

func zoneGroup(number int) string { return fmt.Sprintf("touch-%d", number) }

// clearBoard makes room for the signs and labels of another section.
func (d *draft) clearBoard(v view) error {
	d.lie, d.labels = d.upright, board{}
	d.placed, d.lifted, d.unlabelled = nil, false, nil
	return d.standSigns(v)
}

// labelled are the signs of a section, in a group a kind, and its labels.
func (d *draft) labelled(labels []Element) []Element {
	var all []Element
	for kind, look := range signs {
		var of []Element
		for _, p := range d.placed {
			if p.kind == kind {
				line, sign := p.drawn()
				of = append(append(of, line...), sign)
			}
		}
		if len(of) > 0 {
			all = append(all, Group{ID: "signs-" + string(look.kind), Title: look.word, Elements: of})
		}
	}
	return append(all, Group{ID: "labels", Title: "Labels", Elements: labels})
}

// onPage draws the labels of the site map.
func (s siteMap) onPage(v view) (under, over []Element, err error) {
	if err := s.clearBoard(v); err != nil {
		return nil, nil, err
	}
	letters, err := s.labelZones(v, s.areaOfZone)
	if err != nil {
		return nil, nil, err
	}
	s.signs(v)
	labels, err := s.label(v)
	return nil, s.labelled(append(letters, labels...)), err
}

// onPage draws the labels of the sheet of the sun, which has no signs.
func (s sunMap) onPage(v view) (under, over []Element, err error) {
	if err := s.clearBoard(v); err != nil {
		return nil, nil, err
	}
	s.placed, s.labels = nil, board{}
	labels, err := s.labelAllOfSun(v)
	return nil, s.labelled(labels), err
}

// onPage draws the zones of a step, and over them its lanes, signs and labels.
func (s stepSheet) onPage(v view) (under, over []Element, err error) {
	if err := s.clearBoard(v); err != nil {
		return nil, nil, err
	}
	if under, err = s.stepZones(v); err != nil {
		return nil, nil, err
	}
	if s.lanes == nil {
		_, labels, err := s.labelStep(v)
		return under, s.labelled(labels), err
	}
	hand, err := s.byHand(v)
	if err != nil {
		return nil, nil, err
	}
	walked, _, labels, err := s.lanesAndLabels(v)
	for _, pass := range s.passes[1:] {
		if err != nil {
			break
		}
		var further []Element
		pass.group = passGroup(pass.passNo())
		further, err = pass.ground(v)
		walked = append(walked, further...)
	}
	return append(under, hand...), append(walked, s.labelled(labels)...), err
}

// onPage draws lanes over the whole site.
func (l laneMap) onPage(v view) (under, over []Element, err error) {
	if err := l.clearBoard(v); err != nil {
		return nil, nil, err
	}
	_, labels, err := l.labelLanes(v)
	if err != nil {
		return nil, nil, err
	}
	if over, err = l.lanes.ground(v); err != nil {
		return nil, nil, err
	}
	if under, err = l.paleTurf(v); err != nil {
		return nil, nil, err
	}
	other, err := l.lanes.otherGround(v)
	return append(under, other...), append(over, l.labelled(labels)...), err
}

// paleTurf is turf without patterns, on which lanes are seen.
func (d *draft) paleTurf(v view) ([]Element, error) {
	plain := looks[zones.Turf]
	plain.pattern = pattern{}
	turf, err := d.paleCover(v, "turf", plain, d.plat.Ground.Cover(zones.Turf))
	if err != nil {
		return nil, err
	}
	edges, err := d.paleZoneEdges(v)
	return append(turf, edges...), err
}

// hoursAndContours draws the steps of the hours, what of them is to be checked,
// and the limits between them.
func (s sunMap) hoursAndContours(v view) ([]Element, error) {
	return drawLayers([]mapLayer{
		{"hours-steps", "Steps of hours", s.hours},
		{"hours-check", "Check on site", s.doubtBand},
		{"hours-zones", "Edges of zones", s.zoneEdges},
		{"hours-contours", "Contours of hours", s.contourLines},
	}, v)
}
