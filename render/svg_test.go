package render

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/turfplat/geo"
)

func TestSVGOfASmallSheet(t *testing.T) {
	s := NewSheet("Lot 7", "Lot <7>", Paper{"card", 100, 50})
	s.Subject = "A line & a patch"
	s.Add(Group{ID: "turf", Title: "Turf", Elements: []Element{
		Path{Lines: box(10, 10, 20).lines(), Fill: RGB(0xDDEEDD), Stroke: black, Weight: 0.35},
		Path{Lines: []Line{{Points: []Point{{0, 0}, {1.0004, 2.0006}}}}, Stroke: black, Weight: 0.18, Dash: []float64{1, 0.5}, Round: true},
	}})
	want := `<svg xmlns="http://www.w3.org/2000/svg" id="lot-7" width="100mm" height="50mm" viewBox="0 0 100 50" role="img" aria-labelledby="lot-7-title lot-7-desc" lang="en" xml:lang="en" font-family="go-lot-7, Go, Arial, 'Liberation Sans', Helvetica, 'DejaVu Sans Condensed', sans-serif" fill="none" stroke-linejoin="round">
<title id="lot-7-title">Lot &lt;7&gt;</title>
<desc id="lot-7-desc">A line &amp; a patch</desc>
<path fill="#ffffff" d="M0 0H100V50H0z"/>
<g id="lot-7-turf" role="group">
<title>Turf</title>
<path fill="#ddeedd" stroke="#000000" stroke-width="0.35" d="M10 40 30 40 30 20 10 20z"/>
<path stroke="#000000" stroke-width="0.18" stroke-dasharray="1 0.5" stroke-linecap="round" d="M0 50 1 47.999"/>
</g>
</svg>
`
	if got := string(written(t, SVG, s)); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestSVGIsWellFormedWhateverTheNames(t *testing.T) {
	hostile := `</g><script>alert("1")</script>&amp;'` + "\x00\x1b\u202e\xff]]>"
	s := specimen()
	s.ID, s.Title, s.Subject, s.Lang = hostile, hostile, hostile, `en" onload="x`
	label, _ := Legible(hostile)
	s.Add(Group{ID: hostile, Title: hostile, Elements: []Element{Text{String: label, Size: 9, Ink: black}}}, Group{ID: hostile})
	file := written(t, SVG, s)
	ids := map[string]bool{}
	decoder := xml.NewDecoder(bytes.NewReader(file))
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		element, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if element.Name.Local == "script" {
			t.Error("a name became a script")
		}
		for _, a := range element.Attr {
			if a.Name.Local == "id" && ids[a.Value] {
				t.Errorf("id %q occurs twice", a.Value)
			}
			ids[a.Value] = ids[a.Value] || a.Name.Local == "id"
			if strings.HasPrefix(a.Name.Local, "on") {
				t.Errorf("a name became the attribute %s", a.Name.Local)
			}
		}
	}
	tool(t, file, "xmllint", "--noout", "FILE")
}

func TestSVGKeepsToWhatOldReadersKnow(t *testing.T) {
	file := string(written(t, SVG, specimen()))
	for _, foreign := range []string{"rgba", "opacity", "NaN", "Inf", "e-0", "-0 ", "hsl(", "var("} {
		if strings.Contains(strings.Join(regexp.MustCompile(`<(path|text|g)[^>]*>`).FindAllString(file, -1), ""), foreign) {
			t.Errorf("the drawing contains %q", foreign)
		}
	}
	if !strings.Contains(file, ">Front lawn 9,870 ft² ± 120</text>") {
		t.Error("a label is not written as text")
	}
}

func TestSVGFontsArePinned(t *testing.T) {
	file := written(t, SVG, specimen())
	fonts := regexp.MustCompile(`base64,([^)]+)\)`).FindAllSubmatch(file, -1)
	if len(fonts) != len(cuts) {
		t.Fatalf("%d fonts for the %d faces of the specimen", len(fonts), len(cuts))
	}
	for _, m := range fonts {
		font, err := base64.StdEncoding.DecodeString(string(m[1]))
		if err != nil {
			t.Fatal(err)
		}
		checkPinned(t, font)
	}
}

// ruler is 100 ft of ground at 1 in = 20 ft: five inches of paper.
func ruler() *Sheet {
	s := NewSheet("ruler", "Ruler", Letter)
	from := Point{20, 100}
	s.Add(Path{Lines: []Line{{Points: []Point{from, from.plus(Scale(240).MM(100*geo.FootM), 0)}}}, Stroke: black, Weight: hairLine})
	return s
}

const rulerMM, rulerWithin = 127.0, 0.001

func TestSVGRuler(t *testing.T) {
	file := written(t, SVG, ruler())
	m := regexp.MustCompile(`d="M([\d.]+) [\d.]+ ([\d.]+) [\d.]+"`).FindSubmatch(file)
	if m == nil || !bytes.Contains(file, []byte(`width="215.9mm" height="279.4mm" viewBox="0 0 215.9 279.4"`)) {
		t.Fatalf("no ruler in\n%s", file)
	}
	if length := number(t, m[2]) - number(t, m[1]); math.Abs(length-rulerMM) > rulerWithin {
		t.Errorf("100 ft are drawn %g mm long", length)
	}
}

func number(t *testing.T, digits []byte) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(string(digits), 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
