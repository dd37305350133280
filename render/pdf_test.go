package render

import (
	"bytes"
	"math"
	"regexp"
	"strings"
	"testing"
	"unicode"
)

func writePDF(s *Sheet) ([]byte, error) { return PDF(s) }

// pdfStreams returns the unpacked streams of a document written here.
func pdfStreams(t *testing.T, file []byte) (streams [][]byte) {
	t.Helper()
	document, err := takeApart(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, object := range document.objects {
		if object.stream != nil {
			stream, err := unpacked(object.stream)
			if err != nil {
				t.Fatal(err)
			}
			streams = append(streams, stream)
		}
	}
	return streams
}

func TestPDFRuler(t *testing.T) {
	file := written(t, writePDF, ruler())
	if !bytes.Contains(file, []byte("/MediaBox[0 0 612 792]")) {
		t.Error("the page is not letter paper")
	}
	page := pdfStreams(t, file)[0]
	m := regexp.MustCompile(`^([\d.]+) 0 0 [\d.]+ 0 0 cm .* ([\d.]+) [\d.]+ m ([\d.]+) [\d.]+ l S$`).FindSubmatch(page)
	if m == nil {
		t.Fatalf("no ruler in %s", page)
	}
	points := (number(t, m[3]) - number(t, m[2])) * number(t, m[1])
	if mm := points * mmPerPoint; math.Abs(mm-rulerMM) > rulerWithin {
		t.Errorf("100 ft are drawn %g mm long", mm)
	}
}

func TestPDFBearsNoDate(t *testing.T) {
	file := written(t, writePDF, specimen())
	for _, stamp := range []string{"CreationDate", "ModDate", "(D:", "tdewolff"} {
		if bytes.Contains(file, []byte(stamp)) {
			t.Errorf("the file contains %q", stamp)
		}
	}
	fonts := 0
	for _, stream := range pdfStreams(t, file) {
		if bytes.HasPrefix(stream, []byte{0, 1, 0, 0}) {
			fonts++
			checkPinned(t, stream)
		}
	}
	if fonts != len(cuts) {
		t.Errorf("%d fonts for the %d faces of the specimen", fonts, len(cuts))
	}
}

func TestPDFIsValid(t *testing.T) {
	s := specimen()
	s.Title, s.Subject = `Lot (7) \ "A"`+"\x00\u202e", "Jardín 草"
	other := NewSheet("two", "Two", A3)
	other.Add(Text{At: Point{10, 10}, String: "Second page", Size: 9, Ink: black})
	file, err := PDF(s, other, NewSheet("three", "Three", A4))
	if err != nil {
		t.Fatal(err)
	}
	if out := tool(t, file, "qpdf", "--check", "FILE"); !strings.Contains(out, "No syntax or stream encoding errors") {
		t.Error(out)
	}
	info := tool(t, file, "pdfinfo", "FILE")
	for _, want := range []string{`Lot (7) \ "A"`, "Jardín 草", "Pages:           3", "Producer:        turfplat"} {
		if !strings.Contains(info, want) {
			t.Errorf("pdfinfo does not show %q:\n%s", want, info)
		}
	}
	if out := tool(t, file, "qpdf", "--show-object=1", "FILE"); !strings.Contains(out, "/Lang") || strings.Contains(out, "turfplat") {
		t.Errorf("catalog is %s", out)
	}
}

func TestPDFTextIsFound(t *testing.T) {
	file := written(t, writePDF, specimen())
	text := tool(t, file, "pdftotext", "-raw", "FILE", "-")
	for _, want := range []string{"office field fi fl", "Front lawn 9,870 ft² ± 120", "Línea", "Øst", "Газон", "1 in = 20 ft (1:240)", "10,280", "חצר", "الحديقة"} {
		if n := strings.Count(text, want); n != 1 {
			t.Errorf("%q is found %d times in\n%s", want, n, text)
		}
	}
	for _, line := range strings.Split(tool(t, file, "pdffonts", "FILE"), "\n")[2:] {
		if line != "" && !regexp.MustCompile(`Identity-H +yes yes yes`).MatchString(line) {
			t.Errorf("font is not embedded in part: %s", line)
		}
	}
}

// Every letter of either typeface comes out of the document as itself; marks do
// so with the letters that they are on.
func TestPDFLettersAreThemselves(t *testing.T) {
	s := NewSheet("letters", "Letters", A3)
	var want []string
	line := ""
	flush := func() {
		s.Add(Text{At: Point{10, 410 - 6*float64(len(want))}, String: line, Size: 9, Ink: black})
		want, line = append(want, line), ""
	}
	for r := rune('!'); r < 0x590; r++ {
		if _, missing := Legible(string(r)); len(missing) > 0 || plain(string(r)) != string(r) || r == '\u00a0' {
			continue
		}
		if second := Regular.font().GlyphIndex(r) == 0; second && (unicode.Is(unicode.M, r) || r >= '˥' && r <= '˩') { // bars of tones are tied
			continue
		}
		if line += string(r); len([]rune(line)) == 40 {
			flush()
		}
	}
	flush()
	text := tool(t, written(t, writePDF, s), "pdftotext", "-raw", "FILE", "-")
	for _, letters := range want {
		if !strings.Contains(text, letters) {
			t.Errorf("%q does not come out of\n%s", letters, text)
		}
	}
}

func TestPDFTextWidth(t *testing.T) {
	s := NewSheet("width", "Width", A4)
	const word = "Front-lawn-9,870-ft²"
	s.Add(Text{At: Point{30, 100}, String: word, Face: Bold, Size: 24, Ink: black})
	out := tool(t, written(t, writePDF, s), "pdftotext", "-bbox", "FILE", "-")
	m := regexp.MustCompile(`<word xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)"`).FindStringSubmatch(out)
	if m == nil {
		t.Fatalf("no word in\n%s", out)
	}
	got := (number(t, []byte(m[2])) - number(t, []byte(m[1]))) * mmPerPoint
	if want := Bold.width(word, 24); math.Abs(got-want) > 0.05 { // PDF widths are whole thousandths of an em
		t.Errorf("the word is %g mm wide, measured %g", got, want)
	}
}

func TestPDFOfNothing(t *testing.T) {
	if _, err := PDF(); err == nil {
		t.Error("a document without pages is written")
	}
}

func FuzzTakeApart(f *testing.F) {
	file, err := PDF(ruler())
	if err != nil {
		f.Fatal(err)
	}
	f.Add(file)
	f.Add(bytes.Replace(file, []byte("/Length "), []byte("/Length 9"), 1))
	f.Add([]byte("1 0 obj\nx\nendobj\n\nxref\n0000000000 00000 n "))
	f.Fuzz(func(t *testing.T, raw []byte) {
		document, err := takeApart(raw)
		if err == nil && len(document.objects) < pagesObject {
			t.Errorf("%d objects make no document", len(document.objects))
		}
	})
}
