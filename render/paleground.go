package render

import (
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// Ground that is there to find one's way by, under what a sheet is about, is
// drawn pale.

// paleZoneEdge is where zones part, lighter than on the site map.
func paleZoneEdge(lines []Line) []Element {
	return []Element{Path{Lines: lines, Stroke: accent, Weight: thinLine, Dash: []float64{2.4, 0.8}}}
}

// paled is a look with a thin pattern, in a tint of its ink.
func (l look) paled() look {
	const strength = 0.45
	l.ink, l.pattern.weight = l.ink.tint(strength), hairLine
	l.edge, l.weight = l.edge.tint(0.7), thinLine
	return l
}

// paleCovers draws covers that are no turf in pale looks, and turf plain.
func (d *draft) paleCovers(v view) ([]Element, error) {
	elements, err := d.paleCover(v, "unknown", unknownLook, d.plat.Ground.Unknown)
	if err != nil {
		return nil, err
	}
	for _, c := range slices.Backward(d.plat.Ground.Covers) {
		look := looks[c.Kind].paled()
		if c.Kind == zones.Turf {
			look = looks[zones.Turf]
			look.pattern = pattern{}
		}
		drawn, err := d.paleCover(v, "cover-"+string(c.Kind), look, c.Region)
		if err != nil {
			return nil, err
		}
		elements = append(elements, drawn...)
	}
	return elements, nil
}

func (d *draft) paleCover(v view, id string, l look, r geo.Region) ([]Element, error) {
	shown, err := v.shown(r)
	if err != nil || shown.Empty() {
		return nil, err
	}
	area := v.area(shown)
	return []Element{Group{ID: id, Title: l.word, Elements: append(l.fill(area), l.outlined(area))}}, nil
}

func (d *draft) legendOfPaleCovers(add func(bool, string, func(rect) []Element)) {
	for _, kind := range slices.Backward(zones.CoverKinds) {
		add(kind != zones.Turf && !d.plat.Ground.Cover(kind).Empty(), looks[kind].word, looks[kind].paled().swatch())
	}
}

// paleZoneEdges draws where zones part.
func (d *draft) paleZoneEdges(v view) ([]Element, error) {
	lines, err := d.zoneEdgeLines(v)
	return paleZoneEdge(lines), err
}

// zoneEdgeLines are where zones part from each other.
func (d *draft) zoneEdgeLines(v view) ([]Line, error) {
	turf := newRim(v.area(d.plat.Ground.Cover(zones.Turf)))
	var lines []Line
	for _, z := range d.plat.Zones {
		shown, err := v.shown(z.Region)
		if err != nil {
			return nil, err
		}
		lines = append(lines, turf.inner(v.area(shown))...)
	}
	return lines, nil
}

// paleTrees draws crowns and trunks so that lines over them stay clear.
func (d *draft) paleTrees(v view) ([]Element, error) {
	drawn, err := d.trees(v)
	return recoloured(drawn, func(k Ink) Ink { return k.tint(0.5) }), err
}
