package zones

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo"
)

func TestQuotedArea(t *testing.T) {
	for _, tt := range []struct{ ft2, want float64 }{
		{0, 0}, {1e-9, 0}, {0.4, 100}, {99.9, 100}, {100, 100}, {100.01, 200},
		{2500, 2500}, {2500.0000001, 2500}, {2500.001, 2600}, {2501, 2600}, {2499.9999999, 2500},
	} {
		if got := quoted(tt.ft2); got != tt.want || math.Signbit(got) {
			t.Errorf("quoted(%v) = %v, want %v", tt.ft2, got, tt.want)
		}
	}
}

func TestBearable(t *testing.T) {
	for _, tt := range []struct{ value, ci95, want float64 }{
		{1234.56, 0, 1235}, {1234.56, 0.3, 1235}, {1234.56, 4.99, 1235}, {1234.56, 5, 1235}, {1233.2, 7, 1235},
		{1234.56, 10, 1230}, {1234.56, 49, 1230}, {1234.56, 50, 1250}, {1234.56, 99, 1250}, {1234.56, 100, 1200},
		{1234.56, 499, 1200}, {1234.56, 500, 1000}, {1234.56, 1000, 1000}, {1234.56, 5000, 0}, {0, 10, 0}, {-1234.56, 10, -1230},
		{1234.56, math.Inf(1), 0}, {1234.56, math.NaN(), 1235},
	} {
		if got := Bearable(tt.value, tt.ci95); got != tt.want {
			t.Errorf("Bearable(%v, %v) = %v, want %v", tt.value, tt.ci95, got, tt.want)
		}
	}
}

func TestFeedRows(t *testing.T) {
	s := sketch{
		polygon(kind(Outline, "lot", `"source":"taped"`), rectangle(0, 0, 30, 20)),
		covering(Building, "house", rectangle(5, 5, 15, 15)),
		polygon(`"natural":"shrubbery","id":"bed"`, rectangle(20, 5, 25, 15)),
		polygon(kind(ZoneKind, "front", `"name":"Front","species":"tall fescue","exposure":"full"`), rectangle(-1, -1, 31, 4)),
	}
	p := platOf(t, s.file(home, `"site":{"id":"a1","revision":4}`))
	m := p.Measurement()
	rows := p.FeedRows(m, "turfplat test")

	var named []string
	for _, r := range rows {
		named = append(named, strings.TrimSpace(r.ZoneID+" "+r.Class+" "+r.Method))
		if r.SiteID != "a1" || r.Revision != 4 || r.InputSHA256 != p.Site.Digest() || r.Software != "turfplat test" || r.Schema != FeedSchema {
			t.Errorf("row %+v", r)
		}
		near(t, "bed", r.BedAreaFt2, 50/geo.FootM/geo.FootM, 1e-8, 0)
		near(t, "area in ft2", r.AreaFt2, r.AreaM2/geo.FootM/geo.FootM, 1e-12, 0)
		near(t, "area in acres", r.AreaAcre, r.AreaFt2/43560, 1e-12, 0)
		near(t, "interval", r.CI95Ft2, interval95*r.SigmaM2/geo.FootM/geo.FootM, 1e-12, 0)
		near(t, "quoted area", r.AreaQuoteFt2, quoted(r.AreaFt2), 0, 0)
		if cells := r.Cells(); len(cells) != len(FeedColumns) {
			t.Errorf("%d cells in %d columns", len(cells), len(FeedColumns))
		}
	}
	want := []string{"zone/rest turf imported+taped+traced", "zone/front turf imported+taped+traced", "building traced", "bed imported", "turf imported+taped+traced"}
	if !slices.Equal(named, want) {
		t.Errorf("rows %q, want %q", named, want)
	}
	front := rows[1]
	near(t, "front", front.AreaM2, 120, 1e-7, 0)
	near(t, "perimeter of the front", front.PerimeterM, 68, 1e-8, 0)
	if front.Name != "Front" || front.Species != "tall fescue" || front.Exposure != "full" || front.AreaQuoteFt2 != 1300 || front.EdgingM != 0 {
		t.Errorf("front %+v", front)
	}
	near(t, "edging of all turf", rows[4].EdgingM, 30, 1e-7, 0)
}

func TestFeedCells(t *testing.T) {
	r := FeedRow{SiteID: "a", ZoneID: "b", Class: "turf", Name: "n", Species: "s", Exposure: "full", AreaM2: 0.1, AreaFt2: 1e21, AreaQuoteFt2: 100, AreaAcre: 2.5,
		PerimeterM: 3, EdgingM: 4, BedAreaFt2: 5, Method: "traced", SigmaM2: 6, CI95Ft2: 7, Revision: 8, InputSHA256: "9", Software: "t", Schema: FeedSchema, Apply: true, TreatedFt2: 1.5, Warnings: "turf_residual"}
	want := []string{"a", "b", "turf", "n", "s", "full", "0.1", "1000000000000000000000", "100", "2.5", "3", "4", "5", "traced", "6", "7", "8", "9", "t", FeedSchema, "true", "1.5", "turf_residual"}
	if got := r.Cells(); !slices.Equal(got, want) {
		t.Errorf("cells %q, want %q", got, want)
	}
}

// Ground where nothing is applied stands in the feed with its area, and with
// nothing to treat.
func TestFeedTellsTreatedTurf(t *testing.T) {
	s := sketch{
		covering(Turf, "lawn", rectangle(0, 0, 30, 20)),
		covering(Bed, "bed", rectangle(40, 0, 50, 10)),
		polygon(kind(Keepout, "well"), rectangle(0, 0, 10, 10)),
		polygon(kind(ZoneKind, "bank", `"apply":false`), rectangle(20, 0, 30, 10)),
		polygon(kind(ZoneKind, "front"), rectangle(0, 10, 30, 15)),
	}
	p := platOf(t, s.file(home, `"site":{}`))
	squareFeet := func(m2 float64) float64 { return m2 / geo.FootM / geo.FootM }
	want := map[string]struct {
		apply bool
		area  float64
	}{
		"zone/front": {true, squareFeet(150)}, "zone/rest": {true, squareFeet(250)}, "zone/well": {false, 0}, "zone/bank": {false, 0},
		"bed": {false, 0}, "turf": {true, squareFeet(400)},
	}
	rows := p.FeedRows(p.Measurement(), "")
	if len(rows) != len(want) {
		t.Errorf("%d rows, want %d", len(rows), len(want))
	}
	for _, r := range rows {
		name := cmp.Or(r.ZoneID, r.Class)
		w, known := want[name]
		if !known || r.Apply != w.apply {
			t.Errorf("%s: apply is %v, want %v (known: %v)", name, r.Apply, w.apply, known)
		}
		near(t, name, r.TreatedFt2, w.area, 1e-6, 0)
	}
}

// The columns of the feed are the JSON names of a row, in order.
func TestFeedColumnsAreTheNamesInJSON(t *testing.T) {
	text := asJSON(t, FeedRow{})
	at := 0
	for _, c := range FeedColumns {
		next := strings.Index(text[at:], `"`+c+`":`)
		if next < 0 {
			t.Fatalf("column %s is not in its place in %s", c, text)
		}
		at += next + 1
	}
	if n := strings.Count(text, `":`); n != len(FeedColumns) {
		t.Errorf("%d names, %d columns", n, len(FeedColumns))
	}
}
