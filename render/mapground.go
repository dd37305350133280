package render

import (
	"slices"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// closeBy is how far round the site signs and barriers are shown, in metres.
const closeBy = 2.0

var (
	neighbourGround   = black.tint(0.07)
	neighbourBuilding = black.tint(0.16)
	neighbourEdge     = black.tint(0.3)
)

// ground draws all that the window shows, bottom first, and the labels on it.
func (s siteMap) ground(v view) ([]Element, error) {
	covers, err := s.covers(v)
	if err != nil {
		return nil, err
	}
	context, err := s.context(v)
	if err != nil {
		return nil, err
	}
	laid, err := s.zones(v)
	if err != nil {
		return nil, err
	}
	band, err := s.doubtBand(v)
	if err != nil {
		return nil, err
	}
	trees, err := s.trees(v)
	if err != nil {
		return nil, err
	}
	if err := s.standSigns(v); err != nil {
		return nil, err
	}
	letters, err := s.labelZones(v.forLabels(), s.areaOfZone)
	if err != nil {
		return nil, err
	}
	marks := s.signs(v)
	labels, err := s.label(v.forLabels())
	if err != nil {
		return nil, err
	}
	var outline []Element
	if o := s.plat.Ground.Outline; !o.Empty() {
		outline = outlinePen(v.rim(o))
	}
	return []Element{
		Group{ID: "context", Title: "Beyond the outline", Elements: context},
		Group{ID: "covers", Title: "Covers of the ground", Elements: covers},
		Group{ID: "fixes", Title: "Fixes of the walks", Elements: s.fixes(v)},
		Group{ID: "zones", Title: "Zones", Elements: laid},
		Group{ID: "check-on-site", Title: "Check on site", Elements: band},
		Group{ID: "trees", Title: "Trees", Elements: trees},
		Group{ID: "outline", Title: "Outline of the site", Elements: outline},
		Group{ID: "barriers", Title: "Fences, walls, hedges and cutlines", Elements: s.barriers(v, zones.Cutline, zones.Wall, zones.Hedge, zones.Fence)},
		Group{ID: "signs", Title: "Signs", Elements: marks},
		Group{ID: "labels", Title: "Labels", Elements: append(letters, labels...)},
	}, nil
}

// covers draws the covers, and as blank what is not known.
func (d *draft) covers(v view) ([]Element, error) {
	var elements []Element
	draw := func(id string, l look, r geo.Region) error {
		shown, err := v.shown(r)
		if err != nil || shown.Empty() {
			return err
		}
		area := v.area(shown)
		elements = append(elements, Group{ID: id, Title: l.word, Elements: append(l.fill(area), l.outlined(area))})
		return nil
	}
	if err := draw("unknown", unknownLook, d.plat.Ground.Unknown); err != nil {
		return nil, err
	}
	for _, c := range slices.Backward(d.plat.Ground.Covers) {
		look := looks[c.Kind]
		if c.Kind == zones.Turf {
			look.pattern = pattern{} // zones have their own
		}
		if err := draw("cover-"+string(c.Kind), look, c.Region); err != nil {
			return nil, err
		}
	}
	return elements, nil
}

// otherCovers draws the covers that are no turf, each in a group of its own.
func (d *draft) otherCovers(v view, draw func(zones.Kind, polygon) []Element) ([]Element, error) {
	var elements []Element
	for _, c := range slices.Backward(d.plat.Ground.Covers) {
		if c.Kind == zones.Turf {
			continue
		}
		shown, err := v.shown(c.Region)
		if err != nil {
			return nil, err
		}
		elements = append(elements, Group{ID: "cover-" + string(c.Kind), Title: looks[c.Kind].word, Elements: draw(c.Kind, v.area(shown))})
	}
	return elements, nil
}

// zones draws zones by their exposure and where they part, and bars those on
// which nothing is applied.
func (d *draft) zones(v view) ([]Element, error) {
	turf := newRim(v.area(d.plat.Ground.Cover(zones.Turf)))
	var elements []Element
	for _, z := range d.plat.Zones {
		shown, err := v.shown(z.Region)
		if err != nil {
			return nil, err
		}
		area := v.area(shown)
		drawn := append([]Element{zonePattern(z, area)}, zoneEdge(turf.inner(area))...)
		if !z.Apply {
			drawn = append(drawn, barredOff(area)...)
		}
		elements = append(elements, Group{ID: "zone-" + z.Letter, Title: "Zone " + z.Letter + ", " + d.letters.of(z.Name), Elements: drawn})
	}
	return elements, nil
}

// neighbours are the covers beyond the outline, lowest first.
func (d *draft) neighbours(v view) (kinds []zones.Cover, err error) {
	outline := d.plat.Ground.Outline
	if outline.Empty() {
		return nil, nil
	}
	for _, kind := range slices.Backward(zones.CoverKinds) {
		var parts []geo.Region
		for _, o := range slices.Concat(d.plat.Site.Beyond, d.plat.Site.Objects) {
			if o.Cover != kind || !o.Ground.Bounds().Meets(v.seen.Bounds()) {
				continue
			}
			shown, err := v.shown(o.Ground)
			if err != nil {
				return nil, err
			}
			parts = append(parts, shown)
		}
		all, err := geo.Union(parts...)
		if err != nil {
			return nil, err
		}
		if all, err = geo.Difference(all, outline); err != nil {
			return nil, err
		}
		if !all.Empty() {
			kinds = append(kinds, zones.Cover{Kind: kind, Region: all})
		}
	}
	return kinds, nil
}

// hasNeighbours reports whether anything is drawn beyond the outline.
func (d *draft) hasNeighbours() bool {
	return slices.ContainsFunc(d.plat.Site.Beyond, func(o *zones.Object) bool {
		return o.Ground.Bounds().Meets(d.extent.Grown(closeBy))
	})
}

// context draws the neighbours in pale grey, so that a crew finds the site.
func (d *draft) context(v view) ([]Element, error) {
	neighbours, err := d.neighbours(v)
	if err != nil {
		return nil, err
	}
	var elements []Element
	for _, c := range neighbours {
		path := Path{Lines: v.area(c.Region).lines(), Stroke: neighbourEdge, Weight: hairLine}
		switch c.Kind {
		case zones.Building:
			path.Fill = neighbourBuilding
		case zones.Hardscape, zones.Water, zones.Pool:
			path.Fill = neighbourGround
		default:
			path.Stroke, path.Fill = Ink{}, black.tint(0.03)
		}
		elements = append(elements, path)
	}
	return elements, nil
}

// trees draws crowns true to scale; those of trees beyond the outline are pale.
func (d *draft) trees(v view) ([]Element, error) {
	var elements []Element
	for _, o := range d.plat.Site.Of(zones.Tree) {
		for _, p := range o.Points {
			at, diameter := v.at(p), max(2, v.scale.MM(o.Crown))
			if !v.window.inset(-diameter / 2).holds(at) {
				continue
			}
			tree := cutTo(v.window, []Element{tree(at, diameter, leafOf(o))})
			if !d.near.Contains(p) {
				tree = recoloured(tree, pale)
			}
			elements = append(elements, tree...)
		}
		if len(o.Points) > 0 {
			continue
		}
		shown, err := v.shown(o.Ground)
		if err != nil {
			return nil, err
		}
		inside, err := geo.Intersection(shown, d.near)
		if err != nil {
			return nil, err
		}
		outside, err := geo.Difference(shown, d.near)
		if err != nil {
			return nil, err
		}
		elements = append(elements, recoloured(canopy(v.area(outside)), pale)...)
		elements = append(elements, canopy(v.area(inside))...)
	}
	return elements, nil
}

func pale(Ink) Ink { return neighbourEdge }

// canopy draws crowns that were traced as an area or a row.
func canopy(area polygon) []Element {
	green := bluishGreen.shade(0.6)
	return []Element{crowns.fill(area, green), Path{Lines: area.lines(), Stroke: green, Weight: thinLine, Dash: []float64{1.6, 1}}}
}

// leafOf tells needled trees by what the file or the map data say of them.
func leafOf(o *zones.Object) leaf {
	leaf, _ := o.Feature.Properties.Text("leaf")
	tagged, _ := o.Feature.Properties.Tag("leaf_type")
	if strings.EqualFold(leaf, "evergreen") || strings.EqualFold(tagged, "needleleaved") {
		return needleLeaf
	}
	return broadLeaf
}

// barriers draws lines of some kinds, the lowest first: fences, walls, hedges,
// and cutlines where they part nothing.
func (d *draft) barriers(v view, kinds ...zones.Kind) []Element {
	var elements []Element
	for _, kind := range kinds {
		for _, o := range d.plat.Site.Of(kind) {
			lines := v.lines(o.Lines, d.near)
			if kind == zones.Cutline {
				lines = v.inWindow(d.uncut[o])
			}
			if len(lines) > 0 {
				elements = append(elements, Group{ID: o.ID, Title: d.letters.of(o.Label()), Elements: barriers[kind](lines)})
			}
		}
	}
	return elements
}
