package zones

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestCrowns(t *testing.T) {
	for _, tt := range []struct {
		name, props string
		want        float64
	}{
		{"nothing known", `"kind":"tree"`, 8},
		{"stated", `"kind":"tree","crown_m":6.5`, 6.5},
		{"stated in feet", `"kind":"tree","crown_ft":20`, 6.096},
		{"tagged", `"natural":"tree","diameter_crown":"7 m"`, 7},
		{"from the trunk", `"natural":"tree","circumference":"1.2"`, 25 * 1.2 / 3.14159},
		{"trunk in centimetres is not believed", `"natural":"tree","circumference":"120"`, 8},
		{"needle tree", `"natural":"tree","leaf_type":"needleleaved"`, 5},
		{"fruit tree", `"natural":"tree","genus":"Prunus"`, 4},
	} {
		t.Run(tt.name, func(t *testing.T) {
			o := siteOf(t, collection(geometries["Point"](tt.props))).Objects[0]
			near(t, "crown", o.Crown, tt.want, 1e-9, 0)
		})
	}
}

// Shares of sun that pass, with where they were published; the others are
// proposals between them.
func TestFoliage(t *testing.T) {
	const (
		heisler = "Heisler 1986, Urban Ecology 9:337-359"
		gardner = "Gardner et al., J. Amer. Soc. Hort. Sci. (abstract, year not seen)"
		ours    = "proposed"
	)
	for _, tt := range []struct {
		props  string
		want   Foliage
		source string
	}{
		{`"kind":"tree","species":"sugar maple"`, Foliage{Deciduous, false, 0.20, 0.60}, heisler},
		{`"kind":"tree","species":"Acer rubrum"`, Foliage{Deciduous, false, 0.31, 0.75}, gardner},
		{`"kind":"tree","species":"Pyrus calleryana"`, Foliage{Deciduous, false, 0.25, 0.57}, gardner},
		{`"kind":"tree","species":"Zelkova serrata"`, Foliage{Deciduous, false, 0.39, 0.76}, gardner},
		{`"kind":"tree","species":"Gymnocladus dioicus"`, Foliage{Deciduous, false, 0.40, 0.85}, gardner},
		{`"kind":"tree","species":"Gleditsia triacanthos"`, Foliage{Deciduous, false, 0.44, 0.79}, gardner},
		{`"natural":"tree","genus":"Acer"`, Foliage{Deciduous, false, 0.15, 0.60}, ours},
		{`"kind":"tree","species":"Norway maple"`, Foliage{Deciduous, false, 0.15, 0.60}, ours},
		{`"natural":"tree","species":"Fraxinus excelsior (common ash)"`, Foliage{Deciduous, false, 0.35, 0.75}, ours},
		{`"natural":"tree","genus":"Pinus"`, Foliage{Evergreen, true, 0.35, 0.35}, ours},
		{`"natural":"tree","species":"Magnolia grandiflora"`, Foliage{Evergreen, false, 0.10, 0.10}, ours},
		{`"natural":"tree","species":"Magnolia stellata"`, Foliage{Deciduous, false, 0.15, 0.60}, ours},
		{`"natural":"tree","genus":"Larix"`, Foliage{Deciduous, true, 0.15, 0.60}, ours},
		{`"natural":"tree","genus":"Picea"`, Foliage{Evergreen, true, 0.15, 0.15}, ours},
		{`"natural":"tree","leaf_type":"needleleaved"`, Foliage{Evergreen, true, 0.15, 0.15}, ours},
		{`"natural":"tree","leaf_type":"needleleaved","leaf_cycle":"deciduous"`, Foliage{Deciduous, true, 0.15, 0.60}, ours},
		{`"natural":"tree","leaf_type":"broadleaved","leaf_cycle":"evergreen"`, Foliage{Evergreen, false, 0.10, 0.10}, ours},
		{`"kind":"tree","leaf":"evergreen"`, Foliage{Evergreen, true, 0.15, 0.15}, ours},
		{`"kind":"tree","leaf":"deciduous"`, Foliage{Deciduous, false, 0.15, 0.60}, ours},
		{`"kind":"tree","species":"oak","leaf":"evergreen"`, Foliage{Evergreen, false, 0.15, 0.15}, ours},
		{`"kind":"tree"`, Foliage{Deciduous, false, 0.15, 0.60}, ours},
		{`"natural":"tree","genus":"Tilia"`, Foliage{Deciduous, false, 0.15, 0.60}, ours},
		{`"kind":"tree","transmittance":0.3`, Foliage{Deciduous, false, 0.3, 0.60}, "stated"},
		{`"kind":"tree","transmittance":0.7`, Foliage{Deciduous, false, 0.7, 0.7}, "stated"},
		{`"kind":"tree","leaf":"evergreen","transmittance":0.3`, Foliage{Evergreen, true, 0.3, 0.3}, "stated"},
	} {
		o := siteOf(t, collection(geometries["Point"](tt.props))).Objects[0]
		if o.Stature.Foliage != tt.want {
			t.Errorf("%s: %v, want %v (%s)", tt.props, o.Stature.Foliage, tt.want, tt.source)
		}
	}
}

// The shares published run from 5 to 44 % in leaf and from 50 to 85 % bare
// (Heisler 1986; Gardner et al.; NC State Extension, Selecting and Managing
// Lawn Grasses for Shade).
func TestCrownTableIsWithinWhatIsPublished(t *testing.T) {
	named := make(map[string]bool)
	for i, row := range crownRows {
		f := row.foliage
		if f.InLeaf < 0.05 || f.InLeaf > 0.44 || f.Leaf == Deciduous && (f.Bare < 0.5 || f.Bare > 0.85) || f.Leaf == Evergreen && f.Bare != f.InLeaf {
			t.Errorf("line %d: %v", i+2, f)
		}
		for _, name := range row.names {
			if named[name] {
				t.Errorf("line %d: %q stands twice", i+2, name)
			}
			named[name] = true
		}
	}
}

// Crowns hang over the ground and under their tops.
func TestCrownBase(t *testing.T) {
	check(t, 100, func(t *rapid.T) {
		h := rapid.Float64Range(0.1, 100).Draw(t, "height")
		if b := crownBase(h); !(b > 0 && b < h) || h >= 3 && b < 2 {
			t.Errorf("a tree of %g m has its crown from %g m", h, b)
		}
	})
}

func TestBadTablesAreNotRead(t *testing.T) {
	for _, table := range []string{
		"kind,tags,height_m,thick_m,opaque,note\nlawn,,1,,,",
		"kind,tags,height_m,thick_m,opaque,note\nwall,,high,,,",
		"kind,tags,height_m,thick_m,opaque,note\nwall,a,1,,,",
		"kind,tags\nwall",
	} {
		mustPanic(t, table, func() { mustReadRows("t", table, readHeight, columnsOf(table)...) })
	}
	for _, table := range []string{
		"names,leaf_type,leaf_cycle,leaf,shape,height_m,crown_m,in_leaf,bare,source\noak,,,deciduous,ellipsoid,10,8,,0.5,",
		"a\nb,c",
	} {
		mustPanic(t, table, func() { mustReadRows("t", table, readCrown, columnsOf(table)...) })
	}
}

func mustPanic(t *testing.T, table string, read func()) {
	t.Helper()
	defer func() {
		if recover() == nil {
			t.Errorf("bad table %q was read", table)
		}
	}()
	read()
}

// columnsOf names the columns of a table.
func columnsOf(table string) []string {
	head, _, _ := strings.Cut(table, "\n")
	return strings.Split(head, ",")
}
