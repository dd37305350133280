package render

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/turf"
)

// Sizes of letters in points. A crew reads from 9 points on; the foot of the
// sheet is for the office.
const (
	mapSize    = 9.0
	letterSize = 15.0
	tableSize  = 9.0
	footSize   = 6.5

	letterColumn = 10.0 // mm
)

// detail says how far the tables go into single rows.
type detail struct {
	objects int
	zones   int
	told    telling
	later   int // blocks that go on to another sheet
}

// A telling is how much is told of a zone beyond its name.
type telling int

const (
	tellAll    telling = iota
	tellLess           // without exposure, which the map shows, and not that there is enough sun
	tellNeeded         // what whoever works there must heed
)

// turfTable leads from the outline, or the turf as traced, to the net turf.
func (d *draft) turfTable(objects int) table {
	f, m := d.figures, d.measured
	whole := d.tally.traced.AreaM2
	if m.Outline != nil {
		whole = m.Outline.AreaM2
	}
	t := table{size: tableSize, columns: []column{
		{head: "Turf and deductions", wrap: true}, {head: f.areaUnit(), anchor: End}, {head: "±", anchor: End}, {head: "Share", anchor: End},
	}}
	add := func(label string, a zones.AreaMeasure) {
		t.rows = append(t.rows, []string{label, f.Area(a.AreaM2, a.CI95M2), f.PlusMinus(a.CI95M2), share(a.AreaM2, whole)})
	}
	if m.Outline != nil {
		add("Outline", *m.Outline)
	}
	if m.TracedTurf.From == zones.Turf {
		if m.Unknown.AreaM2 > 0 {
			add("\tof it unknown", d.tally.unknown)
		}
		add("Traced turf", d.tally.traced)
		if m.TracedTurf.OutsideOutlineM2 > 0 {
			t.rows = append(t.rows, []string{"Outside the outline", f.Area(-m.TracedTurf.OutsideOutlineM2, d.tally.traced.CI95M2), "", ""})
		}
	}
	for i, k := range d.tally.kinds {
		t.rows = append(t.rows, k.rows(f, whole, d.tally.listed(i, objects))...)
	}
	net := d.tally.net
	t.totals = [][]string{{"Net turf", f.Area(net.AreaM2, net.CI95M2), f.PlusMinus(net.CI95M2), share(net.AreaM2, whole)}}
	return t
}

// listed is how many objects of a kind are listed if a number of rows may go
// to objects in all: kinds take turns, so that each shows its largest.
func (t tally) listed(kind, rows int) int {
	shown := make([]int, len(t.kinds))
	for given := true; given && rows > 0; {
		given = false
		for i, k := range t.kinds {
			if rows > 0 && shown[i] < len(k.objects) {
				shown[i]++
				rows--
				given = true
			}
		}
	}
	return shown[kind]
}

// zoneTable lists the zones; those that the detail leaves out are summed up.
func (d *draft) zoneTable(level detail) table {
	f, all := d.figures, d.measured.Zones
	t := table{size: tableSize, columns: []column{
		{head: "Zone", width: letterColumn}, {wrap: true}, {head: f.areaUnit(), anchor: End}, {head: "±", anchor: End},
	}}
	row := func(letter, text string, m2, ci95M2 float64) []string {
		return []string{letter, text, f.Area(m2, ci95M2), f.PlusMinus(ci95M2)}
	}
	kept := d.keptZones(level.zones, d.heededFirst)
	var area, variance float64
	for i, z := range all {
		if slices.Contains(kept, i) {
			t.rows = append(t.rows, row(z.Letter, d.zoneText(z, level.told), z.AreaM2, z.CI95M2))
			continue
		}
		area += z.AreaM2
		variance += z.CI95M2 * z.CI95M2
	}
	if left := len(all) - len(kept); left > 0 {
		t.rows = append(t.rows, row("", fmt.Sprintf("%d more: use larger paper", left), area, math.Sqrt(variance)))
	}
	if len(all) > 1 {
		t.totals = append(t.totals, row("", "All zones", d.tally.net.AreaM2, d.tally.net.CI95M2))
	}
	if d.bars() {
		t.totals = append(t.totals, row("", "To be treated", d.tally.treated.AreaM2, d.tally.treated.CI95M2))
	}
	return t
}

// bars reports whether there is turf on which nothing may be applied.
func (d *draft) bars() bool {
	return slices.ContainsFunc(d.plat.Zones, func(z zones.Zone) bool { return !z.Apply })
}

// keptZones are the numbers of the zones that are told where there is room for
// so many: the first in some order, else in that of their letters.
func (d *draft) keptZones(most int, compare func(a, b int) int) []int {
	numbers := make([]int, len(d.measured.Zones))
	for i := range numbers {
		numbers[i] = i
	}
	if most >= len(numbers) {
		return numbers
	}
	slices.SortStableFunc(numbers, compare)
	return numbers[:most]
}

// heededFirst puts zones first that whoever works there must know of.
func (d *draft) heededFirst(a, b int) int {
	heeded := func(i int) int {
		if z := d.measured.Zones[i]; !z.Apply || len(d.knownOf(z, tellNeeded)) > 0 {
			return 0
		}
		return 1
	}
	return cmp.Compare(heeded(a), heeded(b))
}

// zoneText names a zone and tells what is known of it, and whether it is to be
// left alone.
func (d *draft) zoneText(z zones.ZoneMeasure, told telling) string {
	known := d.knownOf(z, told)
	if !z.Apply {
		known = append(known, noApplication)
	}
	name := shortened(d.letters.of(z.Name), Regular, tableSize, longestInTable)
	if len(known) == 0 {
		return name
	}
	return name + ": " + strings.Join(known, ", ")
}

// knownOf is what is known of a zone beyond what its name tells.
func (d *draft) knownOf(z zones.ZoneMeasure, told telling) (known []string) {
	if words, ok := exposures[z.Exposure]; ok && !z.NameTellsExposure() && told < tellLess {
		known = append(known, words)
	}
	if species := d.letters.of(z.Species); species != "" && !z.NameTellsSpecies() && told < tellNeeded {
		known = append(known, shortened(species, Regular, tableSize, longestInTable))
	}
	if z.SunFit != "" && !z.NameTellsFit() && z.Apply && told.tellsFit(z.SunFit) {
		known = append(known, z.SunFit)
	}
	if z.SlopePercent > 0 {
		known = append(known, fmt.Sprintf("slope %.0f\u00a0%%", z.SlopePercent))
	}
	return known
}

// tellsFit reports whether it is told how the sun of a zone suits its grass.
func (t telling) tellsFit(fit string) bool {
	switch fit {
	case turf.Fails.String():
		return true
	case turf.Thrives.String():
		return t == tellAll
	}
	return t < tellNeeded
}

const (
	noApplication = "no\u00a0application"

	// twoLines is the room of a name in a line of a step, in millimetres.
	twoLines = 60.0

	// longestInTable is the room of a name in a table, in millimetres: some lines.
	longestInTable = 160.0
)

var exposures = map[string]string{"full": "full sun", "part": "part sun", "shade": "shade", "deep": "deep shade"}

// edgeTable gives the lengths that are edged and trimmed.
func (d *draft) edgeTable() table {
	f, e := d.figures, d.measured.Edges
	return table{size: tableSize,
		columns: []column{{head: "Edges of the turf"}, {head: f.lengthUnit(), anchor: End}},
		rows: [][]string{
			{"Edging along hardscape", f.Length(e.TurfHardscapeM)},
			{"Edging along beds", f.Length(e.TurfBedM)},
			{"Trimming at walls, fences, trunks", f.Length(e.TrimM)},
		}}
}
