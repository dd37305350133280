package zones

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// small limits keep the fuzzer from spending its time on large sites.
var small = ingest.Limits{Bytes: 1 << 16, Depth: 20, Features: 40, Positions: 400, Problems: 20}

// seeds are sites of all sorts, sound and hostile.
func seeds() [][]byte {
	files := [][]byte{
		sketch{lot, house, covering(Turf, "lawn", rectangle(10, -5, 35, 10))}.file(home, `"site":{"id":"a","units":"metric"}`),
		sketch{lot, covering(Bed, "bed", bowTie(5, 5, 4)), covering(Pool, "pool", bowTie(25, 15, 9))}.file(home, ""),
		sketch{lawn, covering(Keepout, "wet", rectangle(15, 5, 25, 15)), cutline("a", xy(5, -1), xy(5, 11)), cutline("b", xy(-1, 4), xy(5, 4))}.file(home, ""),
		sketch{lawn, cutline("c", xy(5, -1), xy(5, 8), xy(10, 8), xy(10, 4), xy(1, 4))}.file(home, ""),
		collection(geometries["Polygon"](`"kind":"turf","sigma_m":1e308`), geometries["LineString"](`"kind":"water","width_m":1e-300`)),
		collection(geometries["Polygon"](`"landuse":"grass"`), geometries["LineString"](`"tags":{"highway":"track","width":"9'9\"","lanes":"3"}`), geometries["MultiPoint"](`"natural":"shrub"`)),
		collection(geometries["Polygon"](`"kind":"outline"`), feature(`"kind":"fence"`, "LineString", "[[86.9,-44.95],[86.90001,-44.95],[0,90]]")),
		collection(geometries["Polygon"](`"kind":"outline"`), feature(`"kind":"hardscape","width_m":1000`, "LineString", "[[-93.1,44.95],[-93.1,44.95001],[86.9,-44.95]]")),
		collection(feature(`"kind":"turf"`, "Polygon", "[[[179.9999,10],[-179.9999,10],[-179.9999,10.0001],[179.9999,10]]]")),
		collection(feature(`"kind":"turf"`, "Polygon", "[[[-180,-90],[180,-90],[180,90],[-180,90],[-180,-90]]]")),
		collection(feature(`"kind":"turf"`, "Polygon", "[[[0,90],[90,89.9999],[180,89.9999],[-90,89.9999],[0,90]]]")),
		collection(feature(`"kind":"outline"`, "Polygon", "[[[0,0],[1e-9,0],[1e-9,1e-9],[0,0]]]"), geometries["Polygon"](`"kind":"turf"`)),
	}
	drawn := rapid.Custom(drawProperty)
	for i := range 10 {
		files = append(files, drawn.Example(i).file(home, ""))
	}
	return files
}

func FuzzSite(f *testing.F) {
	for _, file := range seeds() {
		f.Add(file)
	}
	f.Fuzz(func(t *testing.T, file []byte) {
		for c := range ingest.GeoJSON(bytes.NewReader(file), "fuzz", small) {
			s := NewSite(c, Reading{Key: builtInKey})
			p := Survey(s)
			if (p == nil) != s.Refused() {
				t.Fatalf("surveyed %t, refused %t", p != nil, s.Refused())
			}
			if p == nil {
				continue
			}
			m := p.Measurement()
			checkIdentities(t, m)
			asJSON(t, m)
			p.FeedRows(m, "fuzz")
			if err := p.SiteFile().WriteGeoJSON(new(bytes.Buffer)); err != nil {
				t.Errorf("site file: %v", err)
			}
		}
	})
}

func FuzzReadMapKey(f *testing.F) {
	f.Add(mapKeyCSV)
	f.Add("tags,shape,kind,width_m,lane_m,radius_m,note\na=b|*c,line,hardscape,3,,,\n")
	f.Add("tags,shape,kind,width_m,lane_m,radius_m,note\n\"a=b,area,turf,,,,\n")
	f.Fuzz(func(t *testing.T, table string) {
		key, err := ReadMapKey(strings.NewReader(table))
		if (err == nil) == (key == nil) {
			t.Fatalf("key %v with error %v", key, err)
		}
		if err != nil {
			return
		}
		for _, s := range []shape{point, line, area} {
			if row, ok := key.find(tagged("landuse=grass", "highway=service"), s); ok && row.kind.IsCover() && s == line && row.width <= 0 {
				t.Errorf("row %v covers ground along a line and has no width", row)
			}
		}
	})
}

// block is an invented property of n objects: lawns in rows, each with a house,
// a drive, beds and a tree.
func block(n int) sketch {
	s := sketch{covering(Outline, "block", rectangle(-10, -10, 410, float64(n)*4+60))}
	for i := 0; len(s) < n; i++ {
		x, y := float64(i%8)*50, float64(i/8)*50
		id := func(name string) string { return fmt.Sprintf("%s-%d", name, i) }
		for _, it := range []item{
			covering(Building, id("house"), rectangle(x+10, y+15, x+25, y+27)),
			lineString(kind(Hardscape, id("drive"), `"width_m":3`), xy(x+12, y+15), xy(x+13, y-10)),
			covering(Bed, id("bed"), regular(20, x+30, y+20, 6)),
			covering(Bed, id("border"), geo.Ring{xy(x+8, y+27), xy(x+27, y+27), xy(x+26, y+29), xy(x+15, y+28.5)}),
			pointAt(kind(Tree, id("tree")), x+35, y+30),
			covering(ZoneKind, id("back"), rectangle(x, y+27, x+45, y+40)),
			lineString(kind(Fence, id("fence")), xy(x, y+40), xy(x+45, y+40)),
		} {
			if len(s) < n {
				s = append(s, it)
			}
		}
	}
	return s
}

func BenchmarkSurvey(b *testing.B) {
	for _, n := range []int{10, 50, 200} {
		file := block(n).file(home, "")
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			for b.Loop() {
				platOf(b, file)
			}
		})
		b.Run(fmt.Sprintf("n=%d/measured", n), func(b *testing.B) {
			p := platOf(b, file)
			for b.Loop() {
				p.Measurement()
			}
		})
	}
}
