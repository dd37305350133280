package render

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
)

// bundle is the site map and the sun sheet of the courtyard house, bound.
func bundle(t *testing.T) []*Sheet {
	t.Helper()
	p, m := lit(t, courtyard().geoJSON(t), "courtyard.geojson")
	site, err := SiteMap(p, m, MapOptions{})
	if err != nil {
		t.Fatal(err)
	}
	return Bound(site, courtyardSun(t, MapOptions{}))
}

func allWords(elements []Element) string {
	var words []string
	for _, text := range textsOf(elements) {
		words = append(words, text.String)
	}
	return strings.Join(words, "\n")
}

func TestBoundSheetsTellTheirNumber(t *testing.T) {
	sheets := bundle(t)
	for i, s := range sheets {
		if words, want := allWords(s.Elements), fmt.Sprintf("\nsheet %d of 2\n", i+1); strings.Count(words, want) != 1 {
			t.Errorf("%s does not tell %q", s.ID, want)
		}
	}
	again := Bound(courtyardSun(t, MapOptions{}))
	if words := allWords(again[0].Elements); strings.Contains(words, "sheet 1") {
		t.Error("a sheet alone tells a number")
	}
	points := NewSheet("points", "Points", A4)
	points.Add(Group{ID: "way", Elements: []Element{numbered{
		text: Text{At: Point{20, 20}, Size: 9, Ink: black}, sheet: again[0],
		words: func(number, _ int) string { return fmt.Sprintf("joins sheet %d", number) },
	}}})
	if words := allWords(Bound(points, again[0])[0].Elements); words != "joins sheet 2" {
		t.Errorf("told %q", words)
	}
	if words := allWords(Bound(points, sheets[0])[0].Elements); words != "" {
		t.Errorf("told %q of a sheet that is not there", words)
	}
	if words := allWords(points.Elements); words != "" {
		t.Errorf("the sheet itself has come to tell %q", words)
	}
}

// A document of several sheets has bookmarks, page labels, the name of the site
// for its title, and the language of its sheets.
func TestPDFOfSeveralSheets(t *testing.T) {
	file, err := PDF(bundle(t)...)
	if err != nil {
		t.Fatal(err)
	}
	var told struct {
		Outlines []struct {
			Title string `json:"title"`
			Page  int    `json:"destpageposfrom1"`
		} `json:"outlines"`
		PageLabels []struct {
			Index int            `json:"index"`
			Label map[string]any `json:"label"`
		} `json:"pagelabels"`
	}
	out := tool(t, file, "qpdf", "--json=2", "--json-key=outlines", "--json-key=pagelabels", "FILE")
	if err := json.Unmarshal([]byte(out), &told); err != nil {
		t.Fatal(err)
	}
	if got, want := fmt.Sprint(told.Outlines), "[{Site map 1} {Sun and shade 2}]"; got != want {
		t.Errorf("bookmarks %s, want %s", got, want)
	}
	if got, want := fmt.Sprint(told.PageLabels), "[{0 map[/S:/D /St:1]}]"; got != want {
		t.Errorf("page labels %s, want %s", got, want)
	}
	info := tool(t, file, "pdfinfo", "FILE")
	for _, want := range []string{"Title:           Courtyard house\n", "Pages:           2"} {
		if !strings.Contains(info, want) {
			t.Errorf("%q is not in\n%s", want, info)
		}
	}
	catalog := tool(t, file, "qpdf", "--show-object=1", "FILE")
	for _, want := range []string{"/Lang <feff0065006e>", "/PageMode /UseOutlines", "/PrintScaling /None", "/ExtensionLevel 3"} {
		if !strings.Contains(catalog, want) {
			t.Errorf("%q is not in %s", want, catalog)
		}
	}
	if out := tool(t, file, "qpdf", "--check", "FILE"); !strings.Contains(out, "No syntax or stream encoding errors") {
		t.Error(out)
	}
	again, err := PDF(bundle(t)...)
	if err != nil || !bytes.Equal(file, again) {
		t.Errorf("the second file differs from the first, %v", err)
	}
}

// Text comes out of a document as the sheet is read: title, map, scale, tables,
// foot.
func TestPDFReadingOrder(t *testing.T) {
	_, house := inventedMap(t, "orchard-house")
	for _, tt := range []struct {
		sheet *Sheet
		order []string
	}{
		{house, []string{"Orchard House", "Scale\n", "Valve box", "true on Letter paper", "Turf and deductions", "Net turf", "Edges of the turf", "Key", "Caution", "Method"}},
		{courtyardSun(t, MapOptions{}), []string{"Sun and shade", "Courtyard house", "14 m", "true on A4 paper", "Key", "All turf", "Hours rest on", "Caution", "Method"}},
	} {
		text := tool(t, written(t, writePDF, tt.sheet), "pdftotext", "-raw", "FILE", "-")
		rest := text
		for _, words := range tt.order {
			at := strings.Index(rest, words)
			if at < 0 {
				t.Errorf("%s: %q is not found in its place in\n%s", tt.sheet.ID, words, text)
				break
			}
			rest = rest[at+len(words):]
		}
	}
}
