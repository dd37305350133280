package render

import (
	"bytes"

	"os"
	"path/filepath"
	"testing"
	"time"
)

// Pages that share their ground look as they do alone.
func TestSharedGroundLooksTheSame(t *testing.T) {
	p, m, season := alderLane(t)
	sheets, err := Packet(p, m, planned(t, p, m, season, time.Date(2026, 5, 18, 0, 0, 0, 0, time.UTC)), PacketOptions{})
	if err != nil {
		t.Fatal(err)
	}
	sheets = Bound(sheets...)
	if n := len(sharedBy(sheets).groups); n == 0 {
		t.Fatal("the sheets of a packet share nothing")
	}
	together := pagesOf(t, sheets...)
	if len(together) != len(sheets) {
		t.Fatalf("%d pages of %d sheets", len(together), len(sheets))
	}
	for i, s := range sheets {
		alone := pagesOf(t, s)
		if !bytes.Equal(alone[0], together[i]) {
			t.Errorf("%s looks different among others", s.ID)
		}
	}
}

// pagesOf are pictures of the pages of a PDF.
func pagesOf(t *testing.T, sheets ...*Sheet) (pages [][]byte) {
	t.Helper()
	file, err := PDF(sheets...)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	tool(t, file, "pdftoppm", "-r", "50", "-png", "FILE", filepath.Join(dir, "page"))
	found, err := filepath.Glob(filepath.Join(dir, "page*.png"))
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range found { // in order
		page, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, page)
	}
	return pages
}

// Only ground that is the same in every point, and has no letters, is shared.
func TestSharedBy(t *testing.T) {
	disc := func(id string, x float64, more ...Element) Group {
		var lines []Line
		for i := range 4 {
			lines = append(lines, disc(Point{x, float64(20 * i)}, 5).lines()...)
		}
		return Group{ID: id, Elements: append([]Element{Path{Lines: lines, Fill: black}}, more...)}
	}
	sheet := func(groups ...Group) *Sheet {
		s := NewSheet("s", "Sheet", Letter)
		for _, g := range groups {
			s.Add(g)
		}
		return s
	}
	letter := Text{String: "S", Size: 9, Ink: black}
	for _, tt := range []struct {
		name   string
		sheets []*Sheet
		want   int
	}{
		{"alike", []*Sheet{sheet(disc("a", 10)), sheet(disc("a", 10))}, 1},
		{"on one sheet", []*Sheet{sheet(disc("a", 10)), sheet(disc("b", 10))}, 0},
		{"moved", []*Sheet{sheet(disc("a", 10)), sheet(disc("a", 10.001))}, 0},
		{"with a letter", []*Sheet{sheet(disc("a", 10, letter)), sheet(disc("a", 10, letter))}, 0},
		{"two of three", []*Sheet{sheet(disc("a", 10), disc("b", 10)), sheet(disc("a", 20), disc("b", 10)), sheet(disc("a", 20))}, 2},
	} {
		if got := len(sharedBy(tt.sheets).groups); got != tt.want {
			t.Errorf("%s: %d groups are shared, want %d", tt.name, got, tt.want)
		}
		file, err := PDF(tt.sheets...)
		if err != nil {
			t.Fatal(err)
		}
		if got := bytes.Count(file, []byte("/Subtype/Form")); got != tt.want {
			t.Errorf("%s: %d forms, want %d", tt.name, got, tt.want)
		}
		tool(t, file, "qpdf", "--check", "FILE")
	}
}
