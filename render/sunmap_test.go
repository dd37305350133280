package render

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/samples"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/sun"
)

// courtyardSun is the sun sheet of the courtyard house.
func courtyardSun(t testing.TB, o MapOptions) *Sheet {
	t.Helper()
	p, m := lit(t, courtyard().geoJSON(t), "courtyard.geojson")
	return sunSheet(t, p, m, o)
}

// sunSheet is the sheet of the sun of a property that takes but one map.
func sunSheet(t testing.TB, p *zones.Plat, m zones.Measurement, o MapOptions) *Sheet {
	t.Helper()
	sheets, err := SunSheets(p, m, o)
	if err != nil {
		t.Fatal(err)
	}
	return sheets[0]
}

// What the picture shows stands in words as well: on the sheet, and in what an
// SVG says of itself.
func TestSunSheetTellsItInWords(t *testing.T) {
	p, m := lit(t, courtyard().geoJSON(t), "courtyard.geojson")
	sheet := sunSheet(t, p, m, MapOptions{})
	text := strings.Join(strings.Fields(tool(t, written(t, writePDF, sheet), "pdftotext", "-raw", "FILE", "-")), " ")
	wanted := []string{
		"Sun and shade", "Full sun, 6 h and more", "Part sun, 4 to 6 h", "Shade, 2 to 4 h", "Deep shade, under 2 h",
		"15 April to 15 October", "from 5° above the horizon", "heights assumed: 1 of 2 trees", "reckoned from storeys", "all out from",
		"taken as level", "0.5 m wide", "1:400", "House 9.0 m", "14 m", "≈ 12 m", "≈ 1.5 m", "6 h", "4 h", "2 h", "check", "clear sky",
	}
	for i, z := range p.Zones {
		wanted = append(wanted, fmt.Sprintf("%s %s %.1f %s", z.Letter, m.Zones[i].Name, z.Sun.Hours, share(z.Sun.Doubtful, 1)))
	}
	for _, words := range wanted {
		if !strings.Contains(text, words) {
			t.Errorf("%q is not found in\n%s", words, text)
		}
	}
	svg := string(written(t, SVG, sheet))
	for _, words := range []string{"<title id=\"sun-title\">Courtyard house, sun and shade</title>", "full sun 5", "deep shade ", "hours a day on the whole.</desc>", "<title>Deep shade, under 2 h</title>"} {
		if !strings.Contains(svg, words) {
			t.Errorf("%q is not found in the SVG", words)
		}
	}
	tool(t, []byte(svg), "xmllint", "--noout", "FILE")
	if *sheetsDir != "" {
		if err := os.WriteFile(filepath.Join(*sheetsDir, "courtyard-sun.svg"), []byte(svg), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// The steps of the hours are the turf, without gap or overlap, and each cell
// well inside a step has the hours of it.
func TestStepsAreTheTurf(t *testing.T) {
	p, m := lit(t, courtyard().geoJSON(t), "courtyard.geojson")
	d, err := sunDraft(p, m, MapOptions{})
	if err != nil {
		t.Fatal(err)
	}
	s := d.subject.(sunMap)
	sum := 0.0
	for _, step := range s.steps {
		sum += float64(step.area)
		inner, err := step.region.Buffer(-1)
		if err != nil {
			t.Fatal(err)
		}
		right, wrong := 0, 0
		for cell, hours := range s.sun.Hours.Values {
			if math.IsNaN(hours) || !inner.Contains(s.sun.Hours.Center(cell)) {
				continue
			}
			if s.sun.Limits.Exposure(hours) == step.exposure {
				right++
			} else {
				wrong++
			}
		}
		if right == 0 || wrong > 0 {
			t.Errorf("%s: %d cells well inside it are of its hours, %d are not", step.exposure, right, wrong)
		}
	}
	if turf := m.Covers[zones.Turf].AreaM2; math.Abs(sum-turf) > 1e-6*turf {
		t.Errorf("the steps are %g m2, the turf is %g", sum, turf)
	}
	if len(s.steps) != len(sun.Exposures) {
		t.Errorf("%d steps: the courtyard is to have all", len(s.steps))
	}
}

// Each contour is labelled with its own hours, on itself.
func TestContoursAreLabelled(t *testing.T) {
	labelled := 0
	for _, c := range mapCases(t) {
		s, isSun := c.draft.subject.(sunMap)
		if !isSun {
			continue
		}
		a, err := c.draft.arrange()
		if err != nil {
			t.Fatal(err)
		}
		v, err := a.view()
		if err != nil {
			t.Fatal(err)
		}
		labels := textsOf(group(c.sheet.Elements, "labels"))
		for _, contour := range s.contours {
			var lines polygon // closed there and back
			for _, l := range v.lines(contour.Lines, s.plat.Ground.Cover(zones.Turf)) {
				lines = append(lines, thereAndBack(l.Points))
			}
			for _, label := range labels {
				if label.Face != Bold || label.String != hoursLabel(contour.Hours) {
					continue
				}
				labelled++
				if off := lines.edgeDistance(lettersPlate(label).center()); off > 1 {
					t.Errorf("%s: %q stands %.1f mm off its contour", c.name, label.String, off)
				}
			}
		}
	}
	if labelled < 20 {
		t.Errorf("only %d contours are labelled on all sheets", labelled)
	}
}

// thereAndBack is a ring along a line and back on it.
func thereAndBack(line []Point) ring {
	back := slices.Clone(line)
	slices.Reverse(back)
	return append(slices.Clone(line), back...)
}

// On a map that is not crowded every contour has its label.
func TestCourtyardContoursHaveLabels(t *testing.T) {
	labels := textsOf(group(courtyardSun(t, MapOptions{}).Elements, "labels"))
	for _, want := range []string{"6 h", "4 h", "2 h"} {
		if !slices.ContainsFunc(labels, func(l Text) bool { return l.String == want && l.Face == Bold }) {
			t.Errorf("no contour is labelled %q", want)
		}
	}
}

func TestSunSheetWithoutSun(t *testing.T) {
	p, m := surveyed(t, courtyard().geoJSON(t), "courtyard.geojson")
	if _, err := SunSheets(p, m, MapOptions{}); err == nil || !strings.Contains(err.Error(), "site courtyard has no hours of sun to draw") {
		t.Errorf("error %v", err)
	}
}

func TestStatedExposureIsQuestioned(t *testing.T) {
	s := courtyard()
	s.area("zone", "all", "All", oblong(-1, -1, 45, 37), "exposure", "deep")
	p, m := lit(t, s.geoJSON(t), "courtyard.geojson")
	sheet := sunSheet(t, p, m, MapOptions{})
	var cells []string
	for _, text := range textsOf(group(sheet.Elements, "tables")) {
		cells = append(cells, text.String)
	}
	if told := strings.Join(cells, " "); !strings.Contains(told, "All: deep shade; by its hours full sun") {
		t.Errorf("told %s", told)
	}
}

func BenchmarkSunSheets(b *testing.B) {
	p, m := lit(b, courtyard().geoJSON(b), "courtyard.geojson")
	for b.Loop() {
		if _, err := SunSheets(p, m, MapOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}

// Where the tables find no room beside the map, the zones that get too little
// sun are told there all the same, and all of them on the sheet that follows.
func TestSunGoesOnToAnotherSheet(t *testing.T) {
	p, m := lit(t, string(samples.AlderLane), samples.AlderLaneName)
	d, err := sunDraft(p, m, MapOptions{})
	if err != nil {
		t.Fatal(err)
	}
	s := d.subject.(sunMap)
	levels := s.levels()
	last := levels[len(levels)-1]
	shown := s.hoursTable(last).rows
	least := slices.MinFunc(p.Zones, func(a, b zones.Zone) int { return cmp.Compare(a.Sun.Hours, b.Sun.Hours) })
	if len(shown) != last.zones+1 || shown[0][0] != least.Letter || !strings.HasSuffix(shown[1][1], "more: next sheet") {
		t.Errorf("beside the map stand %q, the least sun has %s", shown, least.Letter)
	}
	later := s.later(last)
	if rows := later[0].(table).rows; len(later) != 2 || len(rows) != len(p.Zones) {
		t.Errorf("%d rows of %d zones go on", len(rows), len(p.Zones))
	}
	for _, level := range levels {
		if told := len(s.blocks(level)) + len(s.later(level)); told < 3 {
			t.Errorf("%+v tells %d blocks", level, told)
		}
	}
}
