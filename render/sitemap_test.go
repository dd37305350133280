package render

import (
	"flag"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
)

var sheetsDir = flag.String("sheets", "", "write the site maps of the tests into this folder, to be looked at")

// inventedNames are the names of the invented sites, in order.
func inventedNames() []string { return slices.Sorted(maps.Keys(inventedSites)) }

func inventedMap(t testing.TB, name string) (*draft, *Sheet) {
	t.Helper()
	return drafted(t, inventedSites[name].site(), inventedSites[name].options)
}

// realSites are the paths of site files beside the project.
func realSites(t testing.TB) []string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for ; filepath.Dir(dir) != dir; dir = filepath.Dir(dir) {
		if paths, _ := filepath.Glob(filepath.Join(dir, "shared/data/sites/*.geojson")); len(paths) > 0 {
			return paths
		}
	}
	t.Log("the real sites are not beside the project (shared/data): only invented ones are drawn")
	return nil
}

// A mapCase is a map that every layout must get right.
type mapCase struct {
	name  string
	draft *draft
	sheet *Sheet
}

// mapCases are the maps of all sites, invented and real, the invented ones on
// several papers, and with their sun as both sheets. They are drawn once.
func mapCases(t *testing.T) []mapCase {
	t.Helper()
	if drawnMaps != nil {
		return drawnMaps
	}
	for _, name := range inventedNames() {
		text := inventedSites[name].site().geoJSON(t)
		p, m := surveyed(t, text, name)
		for _, paper := range []Paper{{}, Letter, Tabloid, A4, A3} {
			o := inventedSites[name].options
			o.Paper = paper
			drawnMaps = append(drawnMaps, mapCaseOf(t, name+" "+paper.Name, siteDraft, p, m, o))
		}
		p, m = lit(t, text, name)
		for _, paper := range []Paper{Letter, A3} {
			drawnMaps = append(drawnMaps, litCases(t, name+" "+paper.Name, p, m, MapOptions{Paper: paper})...)
		}
	}
	for _, name := range laneNames() {
		for _, paper := range []Paper{Letter, A3} {
			drawnMaps = append(drawnMaps, laneSites[name].draw(t, name+" "+paper.Name, paper))
		}
	}
	for _, path := range realSites(t) {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		p, m := surveyed(t, string(text), path)
		drawnMaps = append(drawnMaps, mapCaseOf(t, filepath.Base(path), siteDraft, p, m, MapOptions{}))
		p, m = lit(t, string(text), path)
		drawnMaps = append(drawnMaps, litCases(t, filepath.Base(path), p, m, MapOptions{})...)
		for _, mode := range []lanes.Mode{lanes.Single, lanes.Tight} {
			drawnMaps = append(drawnMaps, mapCaseOf(t, filepath.Base(path)+" lanes "+string(mode), laneDrawing(t, spreadWork(t, 2.5, mode)), p, m, MapOptions{}))
		}
	}
	return drawnMaps
}

// litCases are the site map and the sun sheet of a site with its sun.
func litCases(t *testing.T, name string, p *zones.Plat, m zones.Measurement, o MapOptions) []mapCase {
	t.Helper()
	return []mapCase{mapCaseOf(t, name+" lit", siteDraft, p, m, o), mapCaseOf(t, name+" sun", sunDraft, p, m, o)}
}

var drawnMaps []mapCase

// A drawing makes a draft of a sheet.
type drawing func(*zones.Plat, zones.Measurement, MapOptions) (*draft, error)

func mapCaseOf(t *testing.T, name string, draw drawing, p *zones.Plat, m zones.Measurement, o MapOptions) mapCase {
	t.Helper()
	d, err := draw(p, m, o)
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := d.sheet()
	if err != nil {
		t.Fatal(err)
	}
	return mapCase{name, d, sheet}
}

func textsOf(elements []Element) (texts []Text) {
	visit(elements, func(e Element) {
		if t, ok := e.(Text); ok && t.String != "" {
			texts = append(texts, t)
		}
	})
	return texts
}

// group returns the elements of the group of an id.
func group(elements []Element, id string) []Element {
	for _, e := range elements {
		g, ok := e.(Group)
		if !ok {
			continue
		}
		if g.ID == id {
			return g.Elements
		}
		if found := group(g.Elements, id); found != nil {
			return found
		}
	}
	return nil
}

// lettersPlate is the ground that the letters of a text cover, without tails.
func lettersPlate(t Text) plate {
	w, h := t.width(), t.Face.capHeight(t.Size)
	middle := Point{w/2 - w*t.Anchor.share(), h / 2}.turned(t.Turn)
	return turnedPlate(t.At.plus(middle.X, middle.Y), w, h, t.Turn)
}

// A map that is not crowded tells name and area of each zone, and all its
// figures twice: on the map and in the table.
func TestOrchardHouseIsToldInFull(t *testing.T) {
	d, sheet := drafted(t, orchardHouse(), MapOptions{Paper: Tabloid, Scale: 360})
	text := strings.Join(strings.Fields(tool(t, written(t, writePDF, sheet), "pdftotext", "-raw", "FILE", "-")), " ")
	f := d.figures
	wanted := map[string]int{
		"1 in = 30 ft (1:360)": 2, "Orchard House": 1, "Site map": 1, "orchard-house": 1, d.measured.Cell: 1,
		"41.30022° N, 96.19979° W": 1, "811": 1, "no application": 2, "No application": 1, "slope 12": 1, "Valve box": 1,
		"Side gate, 4 ft": 1, "WGS 84": 1, "95 %": 1, "WGS": 1, "verify on site": 1,
	}
	for _, z := range d.measured.Zones {
		wanted[z.Name] = 2
		wanted[f.Area(z.AreaM2, z.CI95M2)] = 2
	}
	for _, name := range []string{"House", "Garage", "Drive", "Patio", "Pool", "Pond", "Putting green", "Gravel", "Island bed"} {
		wanted[name] = 2
	}
	for words, times := range wanted {
		if n := strings.Count(text, words); n < times {
			t.Errorf("%q is found %d times, want %d at least, in\n%s", words, n, times, text)
		}
	}
	if !strings.Contains(sheet.Subject, f.areaInWords(d.tally.net.AreaM2, d.tally.net.CI95M2)) {
		t.Errorf("the subject %q does not tell the net turf", sheet.Subject)
	}
}

// Where the tables leave room there are lines to write on.
func TestRoomForNotes(t *testing.T) {
	_, sheet := drafted(t, paddock(), MapOptions{Paper: A3})
	if notes := textsOf(group(sheet.Elements, "notes")); len(notes) == 0 || notes[0].String != "Notes" {
		t.Errorf("the notes hold %v", notes)
	}
}

// Names come out whole and in the order in which they are read, whichever way
// they run; where they run left, readers put spaces and ends of lines between
// words and signs in their own way.
func TestEveryZoneIsFoundInThePDF(t *testing.T) {
	for _, site := range inventedNames() {
		d, sheet := drafted(t, inventedSites[site].site(), MapOptions{Paper: A3})
		text := tool(t, written(t, writePDF, sheet), "pdftotext", "-raw", "FILE", "-")
		letters := func(s string) string { return strings.ReplaceAll(plain(s), " ", "") }
		for _, z := range d.measured.Zones {
			name := d.letters.of(z.Name)
			if leftward := isolates([]rune(name)[0]); !strings.Contains(text, name) && !(leftward && strings.Contains(letters(text), letters(name))) {
				t.Errorf("%s: zone %q is not found in\n%s", site, z.Name, text)
			}
			if area := d.figures.Area(z.AreaM2, z.CI95M2); !strings.Contains(text, area) {
				t.Errorf("%s: area %s of zone %s is not found", site, area, z.Letter)
			}
		}
	}
}

// lot is a lot of 100 ft by 30 m.
func lot() *inventedSite {
	s := &inventedSite{place: orb.Point{-80, 35}, header: map[string]any{"id": "lot"}}
	s.area("outline", "lot", "", oblong(0, 0, 100*geo.FootM, 30))
	return s
}

// The outline of a lot of known size measures on paper what the scale says,
// in the SVG and in the PDF.
func TestSiteMapRuler(t *testing.T) {
	const within = 0.1 // mm
	for _, o := range []MapOptions{{}, {Units: zones.Metric}, {Paper: A3, Scale: 200}, {Scale: 1000}} {
		_, sheet := drafted(t, lot(), o)
		east, north := sheet.Scale.MM(100*geo.FootM), sheet.Scale.MM(30)
		if o.Scale != 0 && sheet.Scale != o.Scale {
			t.Errorf("the scale is %s, want %s", sheet.Scale, o.Scale)
		}
		check := func(form string, corners [][2]float64) {
			width, height := 0.0, 0.0
			for _, a := range corners {
				for _, b := range corners {
					width, height = max(width, a[0]-b[0]), max(height, a[1]-b[1])
				}
			}
			if len(corners) != 4 || math.Abs(width-east) > within || math.Abs(height-north) > within {
				t.Errorf("%s at %s: the lot measures %.3f x %.3f mm between %d corners, want %.3f x %.3f", form, sheet.Scale, width, height, len(corners), east, north)
			}
		}
		check("svg", svgOutline(t, written(t, SVG, sheet), sheet.ID))
		check("pdf", pdfOutline(t, written(t, writePDF, sheet)))
	}
}

// Every outline measures on paper what the scale says, on every sheet of every
// site, turned or not.
func TestOutlinesAreTrueToScale(t *testing.T) {
	const within = 0.1 // mm
	measured, turned := 0, 0
	for _, c := range mapCases(t) {
		outlines := c.draft.plat.Ground.Outline.Polygons()
		if len(outlines) != 1 || len(outlines[0].Holes) > 0 || !c.sheet.ground.view.showsAll(c.draft.plat.Ground.Outline) {
			continue
		}
		files := map[string][][2]float64{"svg": svgOutline(t, written(t, SVG, c.sheet), c.sheet.ID)}
		if strings.Contains(c.name, "letter") {
			files["pdf"] = pdfOutline(t, written(t, writePDF, c.sheet))
		}
		if measured++; c.sheet.ground.view.lie.turn != 0 {
			turned++
		}
		var want [][2]float64
		for _, p := range outlines[0].Shell {
			want = append(want, [2]float64{c.sheet.Scale.MM(p.X), c.sheet.Scale.MM(p.Y)})
		}
		across, round := girth(want)
		for form, corners := range files {
			if a, r := girth(corners); math.Abs(a-across) > within || math.Abs(r-round) > 2*within {
				t.Errorf("%s as %s: %.3f mm across and %.3f round, want %.3f and %.3f", c.name, form, a, r, across, round)
			}
		}
	}
	if measured < 20 || turned < 3 {
		t.Errorf("only %d maps are measured, %d of them turned", measured, turned)
	}
}

// girth is the greatest distance between corners, and the way round all.
func girth(corners [][2]float64) (across, round float64) {
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		round += math.Hypot(a[0]-b[0], a[1]-b[1])
		for _, b := range corners {
			across = max(across, math.Hypot(a[0]-b[0], a[1]-b[1]))
		}
	}
	return across, round
}

var pair = regexp.MustCompile(`([\d.]+) ([\d.]+)`)

func svgOutline(t *testing.T, file []byte, sheet string) [][2]float64 {
	t.Helper()
	m := regexp.MustCompile(`(?s)id="` + sheet + `-outline".*?<path [^>]*stroke-dasharray="[^>]* d="M([\d. ]+)z"`).FindSubmatch(file)
	if m == nil {
		t.Fatalf("no outline in\n%s", file)
	}
	return pairs(t, m[1], 1)
}

// pdfOutline finds the path that is stroked with the dashes of the outline.
func pdfOutline(t *testing.T, file []byte) [][2]float64 {
	t.Helper()
	page := pdfStreams(t, file)[0]
	scale := regexp.MustCompile(`^([\d.]+) 0 0 `).FindSubmatch(page)
	m := regexp.MustCompile(`\[5 1\.1 \.8 1\.1 \.8 1\.1\] 0 d((?: [\d.]+ [\d.]+ [ml])+) [hs]`).FindSubmatch(page)
	if scale == nil || m == nil {
		t.Fatalf("no outline in\n%.4000s", page)
	}
	return pairs(t, m[1], number(t, scale[1])*mmPerPoint)
}

func pairs(t *testing.T, text []byte, unit float64) (corners [][2]float64) {
	for _, m := range pair.FindAllSubmatch(text, -1) {
		corners = append(corners, [2]float64{number(t, m[1]) * unit, number(t, m[2]) * unit})
	}
	return corners
}

func TestSiteMapsAreValid(t *testing.T) {
	for _, name := range inventedNames() {
		_, sheet := inventedMap(t, name)
		checkFiles(t, name, sheet)
	}
}

func TestMonoIsGrey(t *testing.T) {
	d, _ := inventedMap(t, "orchard-house")
	_, sheet := drafted(t, orchardHouse(), MapOptions{Mono: true})
	inks := func(k Ink) {
		if k.R != k.G || k.G != k.B {
			t.Errorf("ink %s is not grey", k)
		}
	}
	visit(sheet.Elements, func(e Element) {
		switch e := e.(type) {
		case Path:
			inks(e.Fill)
			inks(e.Stroke)
		case Text:
			inks(e.Ink)
			inks(e.Clear)
		}
	})
	if d.options.Mono {
		t.Error("the map is mono without being asked")
	}
}

// Text can be read on all that it may stand on.
func TestMapTextsCanBeRead(t *testing.T) {
	grounds := map[string]Ink{"paper": white, "turf": turfTint}
	for kind, l := range looks {
		grounds[string(kind)] = l.tint
	}
	barred := warning.readableOn(turfTint)
	for name, ground := range grounds {
		for ink, k := range map[string]Ink{"black": black, "grey": grey, "accent": accent, "barred": barred} {
			if ink != "black" && name != "paper" && name != "turf" {
				continue
			}
			if c := contrast(k, ground); c < readableContrast {
				t.Errorf("%s on %s has a contrast of %.2f", ink, name, c)
			}
			if c := contrast(k.grey(), ground.grey()); c < readableContrast {
				t.Errorf("%s on %s in grey has a contrast of %.2f", ink, name, c)
			}
		}
	}
}

func TestLooksDiffer(t *testing.T) {
	area := box(0, 0, 60)
	drawn := map[string]zones.Kind{}
	for kind, l := range looks {
		path := l.pattern.fill(area, black)
		if len(path.Lines) == 0 {
			t.Errorf("%s has no pattern", kind)
		}
		key := fmt.Sprint(path.Lines[:3], path.Weight)
		if other, same := drawn[key]; same {
			t.Errorf("%s and %s have one pattern", kind, other)
		}
		drawn[key] = kind
	}
	for _, kind := range zones.CoverKinds {
		if looks[kind].word == "" {
			t.Errorf("%s has no look", kind)
		}
	}
}

func TestMissingLettersAreTold(t *testing.T) {
	_, sheet := inventedMap(t, "mill")
	for _, r := range "庭園" {
		if !slices.Contains(sheet.Missing, r) {
			t.Errorf("%c is not told as missing", r)
		}
	}
	if slices.Contains(sheet.Missing, 'ü') || slices.Contains(sheet.Missing, 'С') {
		t.Errorf("missing are %q", string(sheet.Missing))
	}
}

func TestSiteThatDoesNotFit(t *testing.T) {
	p, m := surveyed(t, mill().geoJSON(t), "mill.geojson")
	for _, tt := range []struct {
		options MapOptions
		want    string
	}{
		{MapOptions{Scale: 100}, "does not fit a4 paper at 1:100"},
		{MapOptions{Paper: Letter, Units: zones.US, Scale: 240}, "does not fit letter paper at 1 in = 20 ft (1:240)"},
		{MapOptions{Paper: Paper{"card", 148, 105}}, "does not fit card paper"},
	} {
		if _, err := SiteMap(p, m, tt.options); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%+v: %v, want %q", tt.options, err, tt.want)
		}
	}
}

func BenchmarkSiteMap(b *testing.B) {
	for _, name := range inventedNames() {
		p, m := surveyed(b, inventedSites[name].site().geoJSON(b), name)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := SiteMap(p, m, inventedSites[name].options); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// Names of any kind neither break a map nor lie on one another.
func TestMapOfOddNames(t *testing.T) {
	s := orchardHouse()
	for i, f := range s.features {
		f.props["name"] = []string{"\x00\u202e", strings.Repeat("W", 100_000), "<b>&amp;", "\u0301\u0301 é", "…", strings.Repeat("a b ", 2000), "😀"}[i%7]
	}
	s.header["name"] = strings.Repeat("Wörld ", 1000)
	s.header["id"] = strings.Repeat("x", 1000)
	_, sheet := drafted(t, s, MapOptions{})
	for ending, write := range writers {
		file := written(t, write, sheet)
		if ending == "svg" {
			tool(t, file, "xmllint", "--noout", "FILE")
		}
	}
	texts := textsOf(sheet.Elements)
	for i, a := range texts {
		for _, b := range texts[:i] {
			if lettersPlate(a).meets(lettersPlate(b)) {
				t.Errorf("%.20q lies on %.20q", a.String, b.String)
			}
		}
	}
}
