package render

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// A tally is what comes off the turf, kind by kind.
type tally struct {
	kinds                         []kindTally
	traced, unknown, net, treated zones.AreaMeasure
}

// A kindTally is what the objects of one kind take off the turf.
type kindTally struct {
	look    look
	measure zones.AreaMeasure
	count   int          // of objects
	objects []ownMeasure // those with a name, the largest first
}

// An ownMeasure is what objects of one name take off the turf.
type ownMeasure struct {
	name    string
	count   int
	measure zones.AreaMeasure
}

// tallyOf sums up the deductions of a plat.
func tallyOf(p *zones.Plat, letters *lettering) (tally, error) {
	g := p.Ground
	t := tally{traced: p.Measure(g.Traced.All), unknown: p.Measure(g.Unknown), net: p.Measure(g.Cover(zones.Turf))}
	var err error
	if t.treated, err = measureAll(p, treated(p.Zones)); err != nil {
		return tally{}, err
	}
	parcels, err := p.Site.ParcelsOffTurf()
	if err != nil {
		return tally{}, err
	}
	for _, kind := range zones.CoverKinds {
		var all []geo.Region
		named := make(map[string][]geo.Region)
		for _, parcel := range parcels {
			if parcel.Object.Cover != kind || parcel.Region.Empty() {
				continue
			}
			all = append(all, parcel.Region)
			if name := letters.of(nameInTable(parcel.Object)); name != "" {
				named[name] = append(named[name], parcel.Region)
			}
		}
		if len(all) == 0 {
			continue
		}
		k := kindTally{look: looks[kind], count: len(all)}
		if k.measure, err = measureAll(p, all); err != nil {
			return tally{}, err
		}
		if k.objects, err = ownMeasures(p, named); err != nil {
			return tally{}, err
		}
		t.kinds = append(t.kinds, k)
	}
	return t, nil
}

func treated(laid []zones.Zone) []geo.Region {
	var regions []geo.Region
	for _, z := range laid {
		if z.Apply {
			regions = append(regions, z.Region)
		}
	}
	return regions
}

// nameInTable is what an object is called in a list: its name, else the id
// that a person gave it. Those of map data and places in a file are for
// machines.
func nameInTable(o *zones.Object) string {
	if o.Name == "" && strings.ContainsAny(o.ID, ":/[") {
		return ""
	}
	return o.Label()
}

func measureAll(p *zones.Plat, regions []geo.Region) (zones.AreaMeasure, error) {
	whole, err := geo.Union(regions...)
	return p.Measure(whole), err
}

// ownMeasures measures the objects of each name, the largest first.
func ownMeasures(p *zones.Plat, named map[string][]geo.Region) ([]ownMeasure, error) {
	own := make([]ownMeasure, 0, len(named))
	for name, regions := range named {
		m, err := measureAll(p, regions)
		if err != nil {
			return nil, err
		}
		own = append(own, ownMeasure{name, len(regions), m})
	}
	slices.SortFunc(own, func(a, b ownMeasure) int {
		return cmp.Or(cmp.Compare(b.measure.AreaM2, a.measure.AreaM2), cmp.Compare(a.name, b.name))
	})
	return own, nil
}

// objectRows is how many rows it takes to list every object.
func (t tally) objectRows() int {
	n := 0
	for _, k := range t.kinds {
		n += len(k.objects) + 1
	}
	return n
}

// rows lists the kind, and under it its largest objects, most of them at most;
// the rest is grouped.
func (k kindTally) rows(f figures, whole float64, most int) [][]string {
	row := func(label string, m zones.AreaMeasure) []string {
		return []string{label, f.Area(-m.AreaM2, m.CI95M2), f.PlusMinus(m.CI95M2), share(m.AreaM2, whole)}
	}
	if k.count == 1 && len(k.objects) == 1 {
		label := k.objects[0].name
		if most > 0 && !strings.EqualFold(label, k.look.word) {
			return [][]string{row(k.look.word+": "+label, k.measure)}
		}
		return [][]string{row(k.look.word, k.measure)}
	}
	rows := [][]string{row(capitalized(counted(k.count, k.look)), k.measure)}
	shown := min(most, len(k.objects))
	left := k.count
	var listed float64
	for _, o := range k.objects[:shown] {
		label := o.name
		if o.count > 1 {
			label = fmt.Sprintf("%s (%d pieces)", label, o.count)
		}
		rows = append(rows, []string{"\t" + label, f.Area(-o.measure.AreaM2, o.measure.CI95M2), f.PlusMinus(o.measure.CI95M2), ""})
		left -= o.count
		listed += o.measure.AreaM2
	}
	if shown > 0 && left > 0 {
		rows = append(rows, []string{fmt.Sprintf("\t%d more %s", left, k.look.noun(left)), f.Area(listed-k.measure.AreaM2, k.measure.CI95M2), "", ""})
	}
	return rows
}

// counted gives a number of objects of a kind in words.
func counted(n int, l look) string {
	if n == 1 {
		return l.word
	}
	return fmt.Sprintf("%s (%d)", l.plural, n)
}

func (l look) noun(n int) string {
	if n == 1 {
		return strings.ToLower(l.word)
	}
	return l.plural
}
