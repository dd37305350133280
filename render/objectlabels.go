package render

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// label puts all labels but those of zones on the map; the weightier come
// first, and where there is no room they are left out.
func (d *draft) label(v view) ([]Element, error) {
	elements := d.labelSigns(v)
	for _, label := range []func(view) ([]Element, error){d.labelNamed, d.labelCovers, d.labelStreets, d.labelTrees} {
		more, err := label(v)
		if err != nil {
			return nil, err
		}
		elements = append(elements, more...)
	}
	return elements, nil
}

const longestLabel = 45.0 // mm

// mapText is a label of one line, or of two if it is long.
func (d *draft) mapText(text string, face Face, ink Ink) form {
	lines := []Text{{String: text, Face: face, Size: mapSize, Ink: ink}}
	if lines[0].width() > longestLabel {
		lines = inTwo(lines[0])
	}
	for i := range lines {
		lines[i].String = shortened(lines[i].String, face, mapSize, longestLabel)
	}
	return stacked(lines...)
}

// labelSigns names the signs that have a name of their own beside them, and
// counts those that stand for several: a group for each kind of sign.
func (d *draft) labelSigns(v view) []Element {
	var groups []Element
	for kind, look := range signs {
		if names := d.namesOfSigns(kind, v); len(names) > 0 {
			groups = append(groups, Group{ID: "names-" + string(look.kind), Title: "Names, " + look.word, Elements: names})
		}
	}
	return groups
}

func (d *draft) namesOfSigns(kind int, v view) []Element {
	var elements []Element
	for i, sign := range d.placed {
		label, named := d.signLabel(sign)
		if sign.kind != kind || !named {
			continue
		}
		at, found := sign.named, sign.held
		if d.giveBackName(i); !found {
			at, found = besidePoint(sign.stand, signHeight*0.75, label, v, d.labels.free)
		}
		if found {
			elements = append(elements, d.put(label, at, 0, white)...)
		}
	}
	return elements
}

// signLabel is the name of a sign, or how many it stands for; it has none if it
// is one of a kind without a name of its own.
func (d *draft) signLabel(s placedSign) (label form, named bool) {
	if s.count > 1 {
		return d.mapText("×"+strconv.Itoa(s.count), Bold, black), true
	}
	named = s.name != "" && !strings.EqualFold(s.name, signs[s.kind].word)
	return d.mapText(s.name, Regular, black), named
}

// besidePoint finds one of eight places round a point at which a label lies on
// the map, and on free ground.
func besidePoint(p Point, clear float64, f form, v view, free func(plate) bool) (Point, bool) {
	for _, side := range []Point{{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
		at := p.plus(side.X*(clear+labelGap+f.width/2+0.3), side.Y*(clear*0.8+labelGap+f.height/2))
		if box := f.plate(at, 0); box.within(v.window.inset(1)) && free(box) {
			return at, true
		}
	}
	return Point{}, false
}

// A named is the ground of all objects of one kind and name.
type named struct {
	kind   zones.Kind
	name   string
	along  bool // traced as a line, so that its name runs along it
	region geo.Region
}

// joined joins the ground of objects of one kind and name.
func joined(parts []named) ([]named, error) {
	slices.SortStableFunc(parts, func(a, b named) int {
		return cmp.Or(cmp.Compare(slices.Index(zones.CoverKinds, a.kind), slices.Index(zones.CoverKinds, b.kind)), cmp.Compare(a.name, b.name))
	})
	var whole []named
	for i := 0; i < len(parts); {
		one := parts[i]
		var regions []geo.Region
		for ; i < len(parts) && parts[i].kind == one.kind && parts[i].name == one.name; i++ {
			regions = append(regions, parts[i].region)
			one.along = one.along || parts[i].along
		}
		var err error
		if one.region, err = geo.Union(regions...); err != nil {
			return nil, err
		}
		whole = append(whole, one)
	}
	return whole, nil
}

// labelNamed labels the covers of the site that have a name, in their ground
// or on it.
func (d *draft) labelNamed(v view) ([]Element, error) { return d.labelNames(v, true, lookOf) }

// labelNamedWithin labels those that have room for their name.
func (d *draft) labelNamedWithin(v view) ([]Element, error) { return d.labelNames(v, false, lookOf) }

func lookOf(k zones.Kind) look { return looks[k] }

// labelNames labels covers as they look on a sheet.
func (d *draft) labelNames(v view, spill bool, look func(zones.Kind) look) ([]Element, error) {
	var parts []named
	parcels, err := d.plat.Site.Parcels()
	if err != nil {
		return nil, err
	}
	for _, p := range parcels {
		if name := d.letters.of(p.Object.Name); name != "" {
			along := len(p.Object.Lines) > 0
			region := p.Region
			if along { // other ground lies across it in many places, but its name is that of the whole
				region = p.Object.Ground
			}
			parts = append(parts, named{p.Object.Cover, name, along, region})
		}
	}
	return d.labelAll(parts, v, placing{spill: spill, keep: d.onSite(v)}, func(n named) (form, Ink) {
		return d.mapText(n.name, Regular, black), look(n.kind).tint
	})
}

// onSite tells which plates lie wholly on the site.
func (d *draft) onSite(v view) func(plate) bool {
	if d.plat.Ground.Outline.Empty() {
		return func(plate) bool { return true }
	}
	return newField(v.area(d.plat.Ground.Outline)).holds
}

// labelAll labels each ground of one name once, in the piece of it that has
// most room; those with much room come first.
func (d *draft) labelAll(parts []named, v view, how placing, set func(named) (form, Ink)) ([]Element, error) {
	whole, err := joined(parts)
	if err != nil {
		return nil, err
	}
	type roomy struct {
		named
		piece
	}
	var all []roomy
	for _, n := range whole {
		p, ok, err := largestPiece(v, n.region)
		if err != nil {
			return nil, err
		}
		if ok && p.clear >= leastSpill {
			all = append(all, roomy{n, p})
		}
	}
	slices.SortStableFunc(all, func(a, b roomy) int { return cmp.Compare(b.clear, a.clear) })
	var elements []Element
	for _, r := range all[:min(len(all), mostNames)] {
		f, ground := set(r.named)
		how.along = r.along
		if at, turn, found := d.placeOn(r.piece, f, v, how); found {
			elements = append(elements, d.put(f, at, turn, ground)...)
		}
	}
	return elements, nil
}

// mostNames is more names than a legible map can hold.
const mostNames = 300

// labelCovers puts the word of its kind on each piece of cover where nothing
// is written yet, and once on unknown ground.
func (d *draft) labelCovers(v view) ([]Element, error) {
	var elements []Element
	write := func(l look, p piece) {
		f := newField(p.area)
		if slices.ContainsFunc(d.labels.taken, func(t takenPlate) bool { return f.inside.holds(t.center()) }) {
			return
		}
		label := d.mapText(l.word, Regular, black)
		if at, turn, ok := d.placeOn(p, label, v, placing{keep: d.onSite(v)}); ok {
			elements = append(elements, d.put(label, at, turn, l.tint)...)
		}
	}
	for _, c := range d.plat.Ground.Covers {
		shown, err := v.shown(c.Region)
		if err != nil {
			return nil, err
		}
		if c.Kind == zones.Turf {
			continue
		}
		for _, region := range shown.Pieces() {
			write(looks[c.Kind], newPiece(v.area(region)))
		}
	}
	unknown, ok, err := largestPiece(v, d.plat.Ground.Unknown)
	if ok {
		write(unknownLook, unknown)
	}
	return elements, err
}

// labelStreets names the covers beyond the outline, so that a crew finds its
// way.
func (d *draft) labelStreets(v view) ([]Element, error) {
	known := make(map[string]bool)
	for _, o := range d.plat.Site.Objects {
		known[o.Name] = true
	}
	var parts []named
	for _, o := range d.plat.Site.Beyond {
		name := d.letters.of(o.Name)
		if name == "" || known[o.Name] || !o.Ground.Bounds().Meets(v.seen.Bounds()) {
			continue
		}
		shown, err := v.shown(o.Ground)
		if err != nil {
			return nil, err
		}
		if shown, err = geo.Difference(shown, d.plat.Ground.Outline); err != nil {
			return nil, err
		}
		parts = append(parts, named{o.Cover, name, len(o.Lines) > 0, shown})
	}
	site := newField(v.area(d.plat.Ground.Outline))
	offSite := func(box plate) bool { return !site.meets(box) }
	return d.labelAll(parts, v, placing{spill: true, keep: offSite, must: true}, func(n named) (form, Ink) {
		return d.mapText(n.name, Italic, grey), white
	})
}

// labelTrees names trees below their trunks, where there is room in the crown.
func (d *draft) labelTrees(v view) ([]Element, error) {
	var elements []Element
	for _, o := range d.plat.Site.Of(zones.Tree) {
		name := d.letters.of(o.Name)
		if name == "" {
			continue
		}
		for _, p := range o.Points {
			f := d.mapText(name, Italic, accent)
			if crown := v.scale.MM(o.Crown); f.width > crown {
				continue
			}
			at := v.at(p).plus(0, -f.height/2-1)
			if box := f.plate(at, 0); box.within(v.window.inset(1)) && d.labels.free(box) {
				elements = append(elements, d.put(f, at, 0, turfTint)...)
			}
		}
	}
	return elements, nil
}
