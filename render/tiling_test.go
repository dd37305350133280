package render

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// campus is a property of 10 ha, 400 x 270 m, with nine buildings of 45 x 28 m.
func campus() *inventedSite {
	s := &inventedSite{place: orb.Point{-83, 40}, header: map[string]any{"id": "campus", "name": "North campus", "units": "us", "revision": 1}}
	s.area("outline", "lot", "", xy(0, 0, 390, 0, 400, 150, 330, 262, 0, 270), "sigma_m", 0.3)
	for i := range 9 {
		x, y := 30+105*float64(i%3), 40+80*float64(i/3)
		s.area("building", fmt.Sprintf("hall-%d", i), fmt.Sprintf("Hall %d", i+1), oblong(x, y, x+45, y+28), "height_m", 12)
		s.area("zone", fmt.Sprintf("quad-%d", i), fmt.Sprintf("Quad %d", i+1), oblong(x-30, y-40, x+75, y+40), "exposure", []string{"full", "part", "shade"}[i%3])
	}
	for i, y := range []float64{20, 98, 180} {
		s.line("hardscape", fmt.Sprintf("walk-%d", i), fmt.Sprintf("Walk %d", i+1), xy(0, y, 390, y), "width_m", 4)
	}
	for i := range 40 {
		s.point("tree", fmt.Sprintf("tree-%d", i), "", 8+9.4*float64(i), 12+math.Mod(97*float64(i), 240), "crown_m", 6+float64(i%7), "height_m", 11)
	}
	s.point("start", "start", "Start", 5, 60)
	s.point("hazard", "valve", "Valve box", 204, 131)
	s.line("hardscape", "street", "College Avenue", xy(-100, -12, 500, -12), "width_m", 10)
	return s
}

// tiledCases are the sheets of the campus, of the site map and of its sun.
func tiledCases(t *testing.T) map[string][]mapCase {
	t.Helper()
	if drawnTiles != nil {
		return drawnTiles
	}
	p, m := lit(t, campus().geoJSON(t), "campus")
	drawnTiles = make(map[string][]mapCase)
	for name, tt := range map[string]struct {
		draw    drawing
		options MapOptions
	}{
		"site":        {siteDraft, MapOptions{}},
		"site metric": {siteDraft, MapOptions{Units: zones.Metric, Mono: true}},
		"site asked":  {siteDraft, MapOptions{Paper: Tabloid, Scale: 360}},
		"sun":         {sunDraft, MapOptions{}},
	} {
		d, err := tt.draw(p, m, tt.options)
		if err != nil {
			t.Fatal(err)
		}
		sheets, err := d.sheets()
		if err != nil {
			t.Fatal(err)
		}
		for i, sheet := range Bound(sheets...) {
			drawnTiles[name] = append(drawnTiles[name], mapCase{fmt.Sprintf("%s, sheet %d", name, i+1), d, sheet})
		}
	}
	return drawnTiles
}

var drawnTiles map[string][]mapCase

// Windows cover the site, share what they should, and no fewer would do.
func TestAxisCoversTheSite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.Float64Range(-1000, 1000).Draw(t, "from")
		to := from + rapid.Float64Range(0.1, 2000).Draw(t, "length")
		shown := rapid.Float64Range(30, 500).Draw(t, "shown")
		shared := shown * rapid.Float64Range(0.01, 0.3).Draw(t, "shared")
		a := axisOf(from, to, shown, shared)
		n := len(a.middles)
		const rounding = 1e-6
		if a.middles[0]-shown/2 > from+rounding || a.middles[n-1]+shown/2 < to-rounding {
			t.Fatalf("%v do not reach from %g to %g", a.middles, from, to)
		}
		end := from
		for i := range n {
			low, high := a.edges(i)
			if low != end || high <= low || low < a.middles[i]-shown/2-rounding || high > a.middles[i]+shown/2+rounding {
				t.Fatalf("part %d from %g to %g, after %g, in a window about %g", i, low, high, end, a.middles[i])
			}
			if end = high; i > 0 && shown-(a.middles[i]-a.middles[i-1]) < shared-rounding {
				t.Fatalf("windows %d and %d share too little", i-1, i)
			}
		}
		if end != to {
			t.Fatalf("the parts end at %g", end)
		}
		if less := float64(n-1)*shown - float64(n-2)*shared; n > 1 && less >= to-from+rounding {
			t.Fatalf("%d windows for what %d could show", n, n-1)
		}
	})
}

// The parts are the site, without gap or overlap.
func TestPartsAreTheSite(t *testing.T) {
	p, m := surveyed(t, campus().geoJSON(t), "campus")
	for _, turn := range []float64{0, 30} {
		d, err := siteDraft(p, m, MapOptions{})
		if err != nil {
			t.Fatal(err)
		}
		site, err := p.Ground.Property()
		if err != nil {
			t.Fatal(err)
		}
		tiling, err := d.tiledAs(lieOf(geo.Hull(shells(site)), turn), 0)
		if err != nil {
			t.Fatal(err)
		}
		if tiling.scale > smallestLegible || len(tiling.tiles) < 2 {
			t.Errorf("turned by %g degrees: %d sheets at %s", turn, len(tiling.tiles), tiling.scale)
		}
		sum := 0.0
		for _, one := range tiling.tiles {
			ground, err := geo.RegionOf([]geo.Ring{tiling.ground(one)})
			if err != nil {
				t.Fatal(err)
			}
			if ground, err = geo.Intersection(ground, site); err != nil {
				t.Fatal(err)
			}
			sum += float64(p.Site.Frame.Area(ground))
			v, err := tiling.view(one)
			if err != nil {
				t.Fatal(err)
			}
			if !v.showsAll(ground) && turn == 0 {
				t.Errorf("%v does not show its part", one)
			}
		}
		if whole := float64(p.Site.Frame.Area(site)); math.Abs(sum-whole) > 1e-6*whole {
			t.Errorf("turned by %g degrees: the parts are %g m2, the site is %g", turn, sum, whole)
		}
	}
}

// What reaches over the edge of a part ends there, a row of trees drawn as an
// area and a wide line too.
func TestGroundEndsAtTheMap(t *testing.T) {
	s := campus()
	s.area("tree", "limes", "", oblong(20, 150, 320, 158), "height_m", 11)
	s.line("hedge", "hedge", "Hedge", xy(10, 170, 330, 175), "width_m", 2)
	p, m := surveyed(t, s.geoJSON(t), "campus with limes")
	d, err := siteDraft(p, m, MapOptions{})
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := d.sheets()
	if err != nil || len(sheets) < 3 {
		t.Fatalf("%d sheets, %v", len(sheets), err)
	}
	for i, sheet := range sheets {
		for _, f := range layoutOf(sheet).groundOffTheMap() {
			t.Errorf("sheet %d: %s", i+1, f)
		}
	}
}

var joinsForm = regexp.MustCompile(`^joins sheet (\d+)$`)

// Match lines point to each other's sheets, and the key map to all.
func TestTilesPointToEachOther(t *testing.T) {
	for name, cases := range tiledCases(t) {
		points := make(map[int][]int)
		for i, c := range cases {
			for _, text := range textsOf(group(c.sheet.Elements, "match-lines")) {
				if m := joinsForm.FindStringSubmatch(text.String); m != nil {
					points[i+1] = append(points[i+1], int(number(t, []byte(m[1]))))
				}
			}
		}
		for from, all := range points {
			for _, to := range all {
				if to == from || !slices.Contains(points[to], from) {
					t.Errorf("%s: sheet %d joins sheet %d, which joins %v", name, from, to, points[to])
				}
			}
		}
		for i := 2; i <= len(cases); i++ {
			if len(points[i]) == 0 {
				t.Errorf("%s: sheet %d joins none", name, i)
			}
			if words := allWords(group(cases[0].sheet.Elements, "match-lines")); !strings.Contains(words+"\n", fmt.Sprintf("sheet %d\n", i)) {
				t.Errorf("%s: sheet %d is not on the key map: %q", name, i, words)
			}
		}
	}
}

func TestTiledSheets(t *testing.T) {
	for name, cases := range tiledCases(t) {
		ids := make(map[string]bool)
		for i, c := range cases {
			if ids[c.sheet.ID] {
				t.Errorf("%s: two sheets are called %s", name, c.sheet.ID)
			}
			ids[c.sheet.ID] = true
			if i > 0 && (c.sheet.Scale != cases[1].sheet.Scale || c.sheet.Scale >= cases[0].sheet.Scale || c.sheet.Scale > smallestLegible) {
				t.Errorf("%s is drawn at %s, the key map at %s", c.name, c.sheet.Scale, cases[0].sheet.Scale)
			}
			if !strings.Contains(c.sheet.Subject, "sheet by sheet") && i == 0 || !strings.Contains(c.sheet.Subject, fmt.Sprintf("part %d of %d", i, len(cases)-1)) && i > 0 {
				t.Errorf("%s tells %q", c.name, c.sheet.Subject)
			}
		}
	}
	if scale := tiledCases(t)["site asked"][1].sheet.Scale; scale != 360 {
		t.Errorf("drawn at %s where 1:360 was asked for", scale)
	}
}

// Tiles keep the laws of labels: none on another, none over the frame or the
// paper's margin, none beyond a match line, and each zone has its letter.
func TestLabelsOfTiles(t *testing.T) {
	for name, cases := range tiledCases(t) {
		lettered := make(map[string]bool)
		for i, c := range cases {
			texts := textsOf(c.sheet.Elements)
			paper := rect{max: Point{c.sheet.Width, c.sheet.Height}}.inset(sheetMargin - 0.5)
			for i, a := range texts {
				if !lettersPlate(a).within(paper) {
					t.Errorf("%s: %q reaches into the margin", c.name, a.String)
				}
				for _, b := range texts[:i] {
					if lettersPlate(a).meets(lettersPlate(b)) {
						t.Errorf("%s: %q lies on %q", c.name, a.String, b.String)
					}
				}
			}
			for _, text := range textsOf(group(c.sheet.Elements, "match-lines")) {
				if !lettersPlate(text).within(c.sheet.ground.window) {
					t.Errorf("%s: %q reaches over the frame", c.name, text.String)
				}
			}
			for _, text := range textsOf(group(c.sheet.Elements, "labels")) {
				if !lettersPlate(text).within(c.sheet.ground.view.forLabels().window) {
					t.Errorf("%s: %q reaches beyond its part", c.name, text.String)
				}
				if i > 0 && text.Face == Bold && text.Size >= 14 {
					lettered[text.String] = true
				}
			}
		}
		for _, z := range cases[0].draft.plat.Zones {
			if !lettered[z.Letter] {
				t.Errorf("%s: zone %s is lettered on no part", name, z.Letter)
			}
		}
	}
}

// All that is drawn of the ground stays in the window, but for the width of
// pens.
func TestGroundStaysInTheWindow(t *testing.T) {
	const pens = 1.5 // mm
	for _, cases := range tiledCases(t) {
		for _, c := range cases {
			window := c.sheet.ground.window.inset(-pens)
			for _, e := range c.sheet.Elements {
				if g, ok := e.(Group); !ok || slices.Contains([]string{"title-block", "scale", "tables", "caution", "method"}, g.ID) {
					continue
				}
				visit([]Element{e}, func(e Element) {
					path, ok := e.(Path)
					if ok && !window.holdsAll(path.Lines) {
						t.Errorf("%s: a path of weight %g reaches over the frame", c.name, path.Weight)
					}
				})
			}
		}
	}
}

// Sides of buildings of known size measure on every part what the scale says,
// where it shows all of them.
func TestTilesAreTrueToScale(t *testing.T) {
	const within = 0.1 // mm
	for name, cases := range tiledCases(t) {
		measured := 0
		for _, c := range cases {
			width, height := c.sheet.Scale.MM(45), c.sheet.Scale.MM(28)
			widths, heights, ends := 0, 0, 0
			for _, ring := range svgRings(t, written(t, SVG, c.sheet)) {
				box := polygon{ring}.bounds()
				if box.height() < height/4 {
					continue // a walk
				}
				if math.Abs(box.width()-width) < within {
					widths++
				}
				if math.Abs(box.height()-height) < within {
					heights++
				}
				if box.width() > width+within || box.height() > height+within {
					t.Errorf("%s: a building measures %g x %g mm", c.name, box.width(), box.height())
				}
			}
			for _, o := range c.draft.plat.Site.Of(zones.Building) {
				b := o.Ground.Bounds()
				low, high := c.sheet.ground.view.at(b.Min), c.sheet.ground.view.at(b.Max)
				if w := c.sheet.ground.window; w.holds(low) && w.holds(high) {
					ends++
				}
			}
			if widths > 0 || heights > 0 {
				measured++
			}
			if widths < ends || heights < ends {
				t.Errorf("%s: %d widths and %d heights of %d whole buildings measure what they should", c.name, widths, heights, ends)
			}
		}
		if measured < len(cases)*3/4 {
			t.Errorf("%s: a building is measured on %d of %d sheets only", name, measured, len(cases))
		}
	}
}

var (
	buildingForm = regexp.MustCompile(`(?s)<g[^>]*>\s*<title>Other ground</title>.*?</g>|<g id="[^"]*cover-building"[^>]*>.*?</g>`)
	closedForm   = regexp.MustCompile(`M([\d. -]+)z`)
)

// svgRings are the closed lines of buildings in a drawing.
func svgRings(t *testing.T, file []byte) (rings []ring) {
	t.Helper()
	for _, drawn := range buildingForm.FindAll(file, -1) {
		for _, m := range closedForm.FindAllSubmatch(drawn, -1) {
			var ring ring
			for _, p := range pairs(t, m[1], 1) {
				ring = append(ring, Point{p[0], p[1]})
			}
			rings = append(rings, ring)
		}
	}
	return rings
}

func TestGDALReadsTiles(t *testing.T) {
	cases := tiledCases(t)["site"]
	for _, c := range []mapCase{cases[0], cases[1], cases[3], cases[len(cases)-1]} {
		checkWithGDAL(t, c, 0.2)
	}
}

// A site goes into parts where these are much larger than the whole, or have the
// letters of more zones; a scale that is asked for is kept.
func TestPartsMustBeWorthTheirSheets(t *testing.T) {
	grounds := func(width, height float64, strips int) *inventedSite {
		s := &inventedSite{place: orb.Point{-83, 40}, header: map[string]any{"id": "grounds", "name": "Grounds", "units": "us"}}
		s.area("turf", "lawn", "", oblong(0, 0, width, height))
		for i := range strips {
			x, y := 2+3.1*float64(i%60), 50+8*float64(i/60)
			s.area("zone", fmt.Sprintf("strip-%d", i), fmt.Sprintf("Strip %d", i+1), oblong(x, y, x+3, y+5))
		}
		return s
	}
	for _, tt := range []struct {
		name    string
		site    *inventedSite
		options MapOptions
		scales  []Scale // of the first sheet and of those that follow
	}{
		{"legible", grounds(180, 120, 0), MapOptions{}, []Scale{960}},
		{"one step from legible", grounds(220, 150, 0), MapOptions{}, []Scale{1200}},
		{"the same in metric units", grounds(185, 125, 0), MapOptions{Units: zones.Metric}, []Scale{1000}},
		{"far from legible", grounds(330, 220, 0), MapOptions{}, []Scale{1800, 960, 960, 960, 960}},
		{"letters that only the parts have", grounds(210, 140, 72), MapOptions{}, []Scale{1200, 960, 960}},
		{"on one sheet, as asked", grounds(330, 220, 0), MapOptions{Scale: 2400}, []Scale{2400}},
		{"in parts, as asked", grounds(220, 150, 0), MapOptions{Scale: 960}, []Scale{1200, 960, 960}},
	} {
		p, m := surveyed(t, tt.site.geoJSON(t), tt.name)
		sheets, err := SiteMaps(p, m, tt.options)
		if err != nil {
			t.Fatalf("%s: %v", tt.name, err)
		}
		var scales []Scale
		for _, s := range sheets {
			scales = append(scales, s.Scale)
		}
		if !slices.Equal(scales, tt.scales) {
			t.Errorf("%s: drawn at %v, want %v", tt.name, scales, tt.scales)
		}
	}
}

// Lawns far apart take the sheets that show them, and those too far apart one.
func TestScatteredSite(t *testing.T) {
	for _, tt := range []struct {
		apart  float64 // m
		sheets int
	}{{700, 4}, {30_000, 1}} {
		s := &inventedSite{place: orb.Point{-83, 40}, header: map[string]any{"id": "scattered"}}
		s.area("turf", "home", "", oblong(0, 0, 40, 30))
		s.area("turf", "away", "", oblong(tt.apart, tt.apart, tt.apart+40, tt.apart+30))
		s.area("turf", "third", "", oblong(0, tt.apart, 40, tt.apart+30))
		p, m := surveyed(t, s.geoJSON(t), "scattered")
		sheets, err := SiteMaps(p, m, MapOptions{})
		if err != nil || len(sheets) != tt.sheets {
			t.Errorf("%g m apart they take %d sheets, %v", tt.apart, len(sheets), err)
		}
	}
}

func TestSiteOnTooManySheets(t *testing.T) {
	p, m := surveyed(t, campus().geoJSON(t), "campus")
	if _, err := SiteMaps(p, m, MapOptions{Scale: 20}); err == nil || !strings.Contains(err.Error(), "takes more than 99 sheets of letter paper at 1:20") {
		t.Errorf("error %v", err)
	}
	sheet, err := SiteMap(p, m, MapOptions{})
	if err != nil || sheet.Scale <= smallestLegible {
		t.Errorf("on one sheet at %v, %v", sheet.Scale, err)
	}
}
