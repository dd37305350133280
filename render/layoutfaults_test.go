package render

import (
	"strings"
	"testing"
)

// The check of layouts finds what is wrong: each fault is planted on a sheet
// that has no other.
func TestLayoutFaultsAreFound(t *testing.T) {
	text := func(x, y float64, s string) Text { return Text{At: Point{x, y}, String: s, Size: 9, Ink: black} }
	labels := func(e ...Element) Group { return Group{ID: "labels", Elements: e} }
	block := func(title string, y float64, e ...Element) Group {
		rules := Path{Lines: []Line{{Points: []Point{{20, y}, {80, y}}}, {Points: []Point{{20, y + 20}, {80, y + 20}}}}, Stroke: black, Weight: thinLine}
		return Group{ID: "block", Title: title, Elements: append(e, rules)}
	}
	signsOf := func(at ...Point) Group {
		g := Group{ID: "signs"}
		for _, p := range at {
			g.Elements = append(g.Elements, hazardSign(p, signHeight))
		}
		return g
	}
	frame := Group{ID: "frame", Elements: []Element{Path{Lines: rect{Point{20, 100}, Point{180, 250}}.polygon().lines(), Stroke: black}}}
	for finding, planted := range map[string][]Element{
		`"one" lies on "two"`:                       {labels(text(50, 150, "two"), text(52, 151, "one"))},
		`"one" lies on Hazard`:                      {signsOf(Point{60, 150}), labels(text(58, 150, "one"))},
		`Hazard lies on Hazard`:                     {signsOf(Point{60, 150}, Point{61, 150})},
		`a leader runs through "one"`:               {labels(text(50, 150, "one"), leader(Point{40, 151}, Point{70, 151}, 0.4))},
		`a leader runs through Hazard`:              {signsOf(Point{60, 150}), labels(leader(Point{40, 150}, Point{70, 150}, 0.4))},
		`leaders cross`:                             {labels(leader(Point{40, 150}, Point{70, 150}, 0.4), leader(Point{50, 140}, Point{50, 160}, 0.4))},
		`a rule runs through "one"`:                 {block("T", 40, text(30, 39, "one"))},
		`"one" is cut by the frame`:                 {labels(text(178, 150, "one"))},
		`Hazard is cut by the frame`:                {signsOf(Point{180, 150})},
		`"one" reaches into the margin`:             {text(3, 60, "one")},
		`"one" reaches out of the block T`:          {block("T", 40, text(78, 45, "one"))},
		`the head "on…" of the block T is cut`:      {block("T", 40, Text{At: Point{30, 45}, String: "on…", Face: Bold, Size: 9, Ink: black})},
		`block T lies on the map`:                   {block("T", 90)},
		`block U lies on block T`:                   {block("T", 40), block("U", 50)},
		`"one" is 8.0 points tall`:                  {Text{At: Point{30, 60}, String: "one", Size: 8, Ink: black}},
		`"庭" holds ['庭'], which the typefaces lack`: {text(30, 60, "庭")},
	} {
		s := NewSheet("planted", "Planted", A4)
		s.Add(frame)
		s.Add(planted...)
		if found := layoutOf(s).findings(); len(found) != 1 || !strings.Contains(found[0], finding) {
			t.Errorf("found %q, want %q", found, finding)
		}
	}
}

// Totals that are wrong, rows that do not add up and zones without a letter are
// found once a figure or a letter on the sheet is changed.
func TestWrongFiguresAreFound(t *testing.T) {
	p, m := surveyed(t, orchardHouse().geoJSON(t), "orchard-house")
	c := mapCaseOf(t, "orchard-house", siteDraft, p, m, MapOptions{})
	f := c.draft.figures
	net, house, zone := c.draft.tally.net, c.draft.tally.kinds[0].measure, m.Zones[0]
	for _, tt := range []struct{ old, planted, finding string }{
		{f.Area(net.AreaM2, net.CI95M2), "1,000", "Net turf is 1000"},
		{f.Area(net.AreaM2, net.CI95M2), "1,000", "All zones is 1000"},
		{f.Area(zone.AreaM2, zone.CI95M2), "77", `the rows of "Zone" add up`},
		{f.Area(-house.AreaM2, house.CI95M2), "−9,000", `the rows of "Turf and deductions" add up`},
		{zone.Letter, "?", "zone " + zone.Letter + " has a letter of 0 points"},
	} {
		planted := c
		sheet := *c.sheet
		sheet.Elements = reworded(sheet.Elements, tt.old, tt.planted)
		planted.sheet = &sheet
		found := strings.Join(append(planted.wrongSums(), planted.zonesWithoutLetter()...), "\n")
		if !strings.Contains(found, tt.finding) {
			t.Errorf("%q for %q: found %q, want %q", tt.planted, tt.old, found, tt.finding)
		}
	}
}

// reworded returns the elements with a text changed wherever it stands.
func reworded(elements []Element, from, to string) []Element {
	all := make([]Element, len(elements))
	for i, e := range elements {
		switch e := e.(type) {
		case Group:
			e.Elements = reworded(e.Elements, from, to)
			all[i] = e
		case Text:
			if e.String == from {
				e.String = to
			}
			all[i] = e
		default:
			all[i] = e
		}
	}
	return all
}
