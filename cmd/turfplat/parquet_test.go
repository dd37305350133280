package main

import (
	"bytes"
	"encoding/json"
	"math"
	"reflect"
	"runtime"
	"slices"
	"testing"

	"github.com/parquet-go/parquet-go"
	"github.com/paulmach/orb"
	"github.com/paulmach/orb/encoding/wkb"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// parquetFeed writes the feed of a file as columns and reads it back.
func parquetFeed(t *testing.T, args ...string) ([]parquetRow, *parquet.File, []byte) {
	t.Helper()
	text := succeeds(t, append([]string{"feed", "--format", "parquet"}, args...)...)
	file, err := parquet.OpenFile(bytes.NewReader(text), int64(len(text)))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := parquet.Read[parquetRow](bytes.NewReader(text), int64(len(text)))
	if err != nil {
		t.Fatal(err)
	}
	return rows, file, text
}

// TestParquetIsTheFeed: the columns hold what the rows of the JSON feed do, in
// its order, and the ground of each has its area.
func TestParquetIsTheFeed(t *testing.T) {
	const sample = "../../samples/alder-lane.geojson"
	rows, file, _ := parquetFeed(t, sample)
	var feed struct{ Rows []zones.FeedRow }
	if err := json.Unmarshal(succeeds(t, "feed", "--format", "json", sample), &feed); err != nil {
		t.Fatal(err)
	}
	if len(rows) != len(feed.Rows) {
		t.Fatalf("%d rows, the feed has %d", len(rows), len(feed.Rows))
	}
	var columns []string
	for _, c := range file.Root().Columns() {
		columns = append(columns, c.Name())
	}
	if want := append(slices.Clone(zones.FeedColumns), "geometry", "bbox"); !slices.Equal(columns, want) {
		t.Errorf("columns %v, want %v", columns, want)
	}
	for i, r := range rows {
		if want := feed.Rows[i]; zones.FeedRow(r.feedColumns) != want {
			t.Errorf("row %d is %+v, want %+v", i, r.feedColumns, want)
		}
		g, err := wkb.Unmarshal(r.Geometry)
		if err != nil {
			t.Fatal(err)
		}
		if b := g.Bound(); *r.Box != (box{b.Min.Lon(), b.Min.Lat(), b.Max.Lon(), b.Max.Lat()}) {
			t.Errorf("row %d: box %v, geometry %v", i, *r.Box, b)
		}
		const snapping = 2e-6 // m2, of places read into a frame again
		if got := areaOf(t, g); math.Abs(got-r.AreaM2) > snapping {
			t.Errorf("row %d (%s %s): geometry of %.9f m2, area %.9f", i, r.Class, r.ZoneID, got, r.AreaM2)
		}
	}
}

// areaOf is the area of a geometry in degrees, m2. Shells go round against the
// clock and holes with it, or the test fails.
func areaOf(t *testing.T, g orb.Geometry) (area float64) {
	t.Helper()
	polygons, ok := g.(orb.MultiPolygon)
	if !ok {
		polygons = orb.MultiPolygon{g.(orb.Polygon)}
	}
	for _, p := range polygons {
		for i, ring := range p {
			if hole := i > 0; (ring.Orientation() == orb.CW) != hole {
				t.Errorf("ring %d is wound the wrong way", i)
			}
		}
		frame := geo.NewFrame(p.Bound().Center())
		region, err := geo.RegionOf(frame.Rings(p))
		if err != nil {
			t.Fatal(err)
		}
		area += float64(frame.Area(region))
	}
	return area
}

// TestParquetTellsItsGeometry: the file says what GeoParquet 1.1 asks for.
func TestParquetTellsItsGeometry(t *testing.T) {
	rows, file, _ := parquetFeed(t, "../../samples/alder-lane.geojson")
	text, ok := file.Lookup("geo")
	if !ok {
		t.Fatal("there is no metadata named geo")
	}
	var got map[string]any
	if err := json.Unmarshal([]byte(text), &got); err != nil {
		t.Fatal(err)
	}
	all := *rows[0].Box
	for _, r := range rows {
		all = all.with(*r.Box)
	}
	want := map[string]any{
		"version": "1.1.0", "primary_column": "geometry",
		"columns": map[string]any{"geometry": map[string]any{
			"encoding": "WKB", "geometry_types": []any{"MultiPolygon", "Polygon"}, "orientation": "counterclockwise",
			"bbox": []any{all.XMin, all.YMin, all.XMax, all.YMax},
			"covering": map[string]any{"bbox": map[string]any{
				"xmin": []any{"bbox", "xmin"}, "ymin": []any{"bbox", "ymin"}, "xmax": []any{"bbox", "xmax"}, "ymax": []any{"bbox", "ymax"},
			}},
		}},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %v\nwant %v", got, want)
	}
}

// TestParquetBytes: the same sites give the same bytes, on one core as on many.
func TestParquetBytes(t *testing.T) {
	args := []string{"--lines", "../../samples/alder-lane.geojson", "../../samples/alder-lane.geojson"}
	_, _, first := parquetFeed(t, args...)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if _, _, second := parquetFeed(t, args...); !bytes.Equal(first, second) {
		t.Error("bytes differ")
	}
}

// TestParquetGroups: rows are written in groups as they come, so that a file
// of any length needs no more memory than one of them.
func TestParquetGroups(t *testing.T) {
	var file bytes.Buffer
	p := newParquetRows(&file)
	shape := &ground{kind: "Polygon", wkb: make([]byte, 1<<20)}
	for i := range 3*groupBytes/(1<<20) + 1 {
		before := file.Len()
		if err := p.write([]shapedRow{{zones.FeedRow{SiteID: "a", Revision: i}, shape}}); err != nil {
			t.Fatal(err)
		}
		if full := (i+1)%32 == 0; full && file.Len() == before {
			t.Errorf("nothing was written of %d MiB", i+1)
		}
	}
	if err := p.finish(); err != nil {
		t.Fatal(err)
	}
	read, err := parquet.OpenFile(bytes.NewReader(file.Bytes()), int64(file.Len()))
	if err != nil {
		t.Fatal(err)
	}
	if got := len(read.RowGroups()); got != 4 {
		t.Errorf("%d groups of rows, want 4", got)
	}
}
