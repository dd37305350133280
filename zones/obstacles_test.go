package zones

import (
	"bytes"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/sun"
)

// obstaclesOf writes obstacles as a person would list them.
func obstaclesOf(s *Site) []string {
	var list []string
	area := func(p sun.Prism) float64 { return float64(s.Frame.Area(p.Plan)) }
	for _, o := range s.Obstacles() {
		line := o.ID
		switch shape := o.Shape.(type) {
		case sun.Prism:
			line += fmt.Sprintf(" prism of %.1f m2 from %.1f to %.1f m", area(shape), shape.Base, shape.Top)
		case sun.Roof:
			line += fmt.Sprintf(" roof %d of %.1f m2 from %.1f by %.1f to %.1f m", shape.Form, area(sun.Prism{Plan: shape.Plan}), shape.Base, shape.Eave, shape.Ridge)
			if shape.Bearing != nil {
				line += fmt.Sprintf(" at %.0f", float64(*shape.Bearing))
			}
		case sun.Crown:
			line += fmt.Sprintf(" crown %d of %.1f m from %.1f to %.1f m", shape.Form, shape.Radius, shape.Base, shape.Top)
		case sun.Screen:
			line += fmt.Sprintf(" screen of %.1f m, %.1f m high, %.1f m wide", float64(s.Frame.LineLength(shape.Line)), shape.Height, shape.Width)
		}
		if o.Pass != (sun.Pass{}) {
			line += fmt.Sprintf(" passing %.2f, %.2f bare", o.Pass.InLeaf, o.Pass.Bare)
		}
		list = append(list, line)
	}
	return list
}

// figuresOf are the measures of an obstacle, the first telling its form. The
// site file gives heights to the millimetre.
func figuresOf(s *Site, o sun.Obstacle) []float64 {
	switch shape := o.Shape.(type) {
	case sun.Prism:
		return []float64{0, float64(s.Frame.Area(shape.Plan)), shape.Base, shape.Top}
	case sun.Roof:
		bearing := -1.0
		if shape.Bearing != nil {
			bearing = float64(*shape.Bearing)
		}
		return []float64{1, float64(s.Frame.Area(shape.Plan)), shape.Base, shape.Eave, shape.Ridge, float64(shape.Form), bearing}
	case sun.Crown:
		return []float64{2, shape.Radius, shape.Base, shape.Top, float64(shape.Form)}
	case sun.Screen:
		return []float64{3, float64(s.Frame.LineLength(shape.Line)), shape.Height, shape.Width}
	}
	return nil
}

func TestObstacles(t *testing.T) {
	house := rectangle(0, 0, 12, 8)
	for _, tt := range []struct {
		name   string
		sketch sketch
		want   []string
	}{
		{"house", sketch{polygon(kind(Building, "h", `"height_m":6`), house)}, []string{"h prism of 96.0 m2 from 0.0 to 6.0 m"}},
		{"courtyard", sketch{polygon(kind(Building, "h"), house, rectangle(4, 2, 8, 6))}, []string{"h prism of 80.0 m2 from 0.0 to 5.0 m"}},
		{"gable", sketch{polygon(`"id":"h","building":"house","roof:shape":"gabled"`, house)}, []string{"h roof 0 of 96.0 m2 from 0.0 by 4.0 to 6.5 m"}},
		{"gable across", sketch{polygon(`"id":"h","building":"house","roof:shape":"gabled","roof:orientation":"across"`, house)},
			[]string{"h roof 0 of 96.0 m2 from 0.0 by 4.0 to 6.5 m at 180"}},
		{"hip facing south", sketch{polygon(`"id":"h","building":"house","roof:shape":"hipped","roof:direction":"S"`, house)},
			[]string{"h roof 1 of 96.0 m2 from 0.0 by 4.0 to 6.5 m at 270"}},
		{"lean-to", sketch{polygon(`"id":"h","building":"shed","roof:shape":"skillion","roof:height":"1","roof:direction":"S"`, house)},
			[]string{"h roof 3 of 96.0 m2 from 0.0 by 1.8 to 2.8 m at 180"}},
		{"roof of no known shape", sketch{polygon(`"id":"h","building":"yes","height":"9","roof:height":"3","roof:shape":"round"`, house)},
			[]string{"h prism of 96.0 m2 from 0.0 to 7.5 m"}},
		{"carport", sketch{polygon(`"id":"c","building":"carport"`, house)}, []string{"c prism of 96.0 m2 from 2.5 to 2.8 m"}},
		{"passage", sketch{polygon(`"id":"p","building:part":"yes","height":"9","min_height":"3"`, house)}, []string{"p prism of 96.0 m2 from 3.0 to 9.0 m"}},
		{"parts", sketch{
			polygon(`"id":"h","building":"yes","height":"20"`, house),
			polygon(`"id":"low","building:part":"yes","height":"3"`, rectangle(0, 0, 6, 8)),
			polygon(`"id":"high","building:part":"yes","height":"20"`, rectangle(6, 0, 12, 8)),
		}, []string{"low prism of 48.0 m2 from 0.0 to 3.0 m", "high prism of 48.0 m2 from 0.0 to 20.0 m"}},
		{"a part that is one of two", sketch{
			polygon(`"id":"h","building":"yes","height":"6"`, house),
			polygon(`"id":"low","building:part":"yes","height":"3"`, rectangle(0, 0, 6, 8)),
		}, []string{"h prism of 48.0 m2 from 0.0 to 6.0 m", "low prism of 48.0 m2 from 0.0 to 3.0 m"}},
		{"a part of the neighbour", sketch{
			polygon(`"id":"h","building":"yes","height":"6"`, house),
			polygon(`"id":"n","building:part":"yes","height":"3"`, rectangle(11, 0, 16, 8)),
		}, []string{"h prism of 96.0 m2 from 0.0 to 6.0 m", "n prism of 40.0 m2 from 0.0 to 3.0 m"}},
		{"trees", sketch{pointAt(kind(Tree, "a", `"crown_m":9`, `"height_m":14`), 5, 5), pointAt(`"id":"b","natural":"tree","genus":"Picea"`, 9, 5)},
			[]string{"a crown 0 of 4.5 m from 3.5 to 14.0 m passing 0.15, 0.60 bare", "b crown 1 of 2.5 m from 3.0 to 12.0 m passing 0.15, 0.15 bare"}},
		{"wood", sketch{polygon(`"id":"w","natural":"wood"`, house), pointAt(`"id":"in","natural":"tree"`, 5, 5), pointAt(`"id":"tall","natural":"tree","height":"25"`, 6, 5)},
			[]string{"w prism of 96.0 m2 from 3.0 to 12.0 m passing 0.15, 0.60 bare", "tall crown 0 of 4.0 m from 6.2 to 25.0 m passing 0.15, 0.60 bare"}},
		{"row of trees", sketch{lineString(`"id":"r","natural":"tree_row"`, xy(0, 0), xy(20, 0))},
			[]string{"r prism of 120.0 m2 from 2.2 to 9.0 m passing 0.15, 0.60 bare"}},
		{"shrubs", sketch{pointAt(`"id":"s","natural":"shrub"`, 5, 5)}, []string{"s prism of 1.1 m2 from 0.0 to 1.2 m passing 0.15, 0.60 bare"}},
		{"barriers", sketch{
			lineString(`"id":"h","barrier":"hedge"`, xy(0, 0), xy(10, 0)),
			lineString(kind(Fence, "f", `"height_m":1.8`), xy(0, 0), xy(0, 10)),
			lineString(kind(Fence, "mesh", `"height_m":1.8`, `"transmittance":0.8`), xy(0, 0), xy(0, 10)),
			lineString(kind(Wall, "w", `"width_m":0.2`), xy(0, 0), xy(0, 10)),
		}, []string{"h screen of 10.0 m, 1.5 m high, 1.0 m wide", "f screen of 10.0 m, 1.8 m high, 0.0 m wide",
			"mesh screen of 10.0 m, 1.8 m high, 0.0 m wide passing 0.80, 0.80 bare", "w screen of 10.0 m, 1.5 m high, 0.2 m wide"}},
		{"what throws none", sketch{covering(Bed, "b", house), covering(Turf, "t", house), lineString(`"barrier":"retaining_wall"`, xy(0, 0), xy(0, 10)), polygon(kind(Building, "h", `"height_m":0`), house),
			polygon(`"id":"h","building:part":"yes","height":"3","min_height":"3"`, house)}, nil},
		{"beyond the outline", sketch{covering(Outline, "lot", rectangle(20, 0, 40, 20)), covering(Building, "h", house), pointAt(kind(Tree, "t"), 5, 15)},
			[]string{"t crown 0 of 4.0 m from 2.5 to 10.0 m passing 0.15, 0.60 bare", "h prism of 96.0 m2 from 0.0 to 5.0 m"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := obstaclesOf(siteOf(t, tt.sketch.file(home, ""))); !slices.Equal(got, tt.want) {
				t.Errorf("obstacles\n%q\nwant\n%q", got, tt.want)
			}
		})
	}
}

func TestHeightAccount(t *testing.T) {
	house := rectangle(0, 0, 12, 8)
	s := siteOf(t, sketch{
		covering(Outline, "lot", rectangle(-5, -5, 40, 20)),
		polygon(kind(Building, "a", `"height_m":6`), house),
		polygon(`"id":"b","building":"yes","building:levels":"2"`, house),
		covering(Building, "c", house),
		covering(Building, "beyond", rectangle(50, 0, 60, 10)),
		pointAt(kind(Tree, "t"), 5, 15),
		lineString(kind(Fence, "f", `"height_m":1.8`), xy(0, 0), xy(0, 10)),
		covering(Bed, "flowers", rectangle(20, 0, 22, 2)),
	}.file(home, ""))
	want := []string{"heights reckoned from storeys, 3 m each: 1 of 4 buildings", "heights assumed: 2 of 4 buildings, 1 of 1 tree"}
	if got := s.HeightAccount(); !slices.Equal(got, want) {
		t.Errorf("account %q, want %q", got, want)
	}
}

// checkCompiledThrowsTheSameShade compiles a site file, reads it back and
// compares the obstacles of both, and what is told of their heights.
func checkCompiledThrowsTheSameShade(t failer, c *ingest.Collection) {
	t.Helper()
	made := Compile(c, nil, Reading{Key: builtInKey})
	var file bytes.Buffer
	if err := made.File.WriteGeoJSON(&file); err != nil {
		t.Fatalf("site file: %v", err)
	}
	again := siteOf(t, file.Bytes())
	got, want := again.Obstacles(), made.Site.Obstacles()
	if len(got) != len(want) {
		t.Fatalf("obstacles\n%q\nof the site file, want\n%q", obstaclesOf(again), obstaclesOf(made.Site))
	}
	for i := range want {
		g, w := figuresOf(again, got[i]), figuresOf(made.Site, want[i])
		same := slices.EqualFunc(g, w, func(a, b float64) bool { return math.Abs(a-b) <= 1e-6*math.Abs(b)+1e-3 })
		if got[i].ID != want[i].ID || got[i].Pass != want[i].Pass || !same {
			t.Errorf("obstacle %s %v of the site file, want %s %v", got[i].ID, g, want[i].ID, w)
		}
	}
	if got, want := again.HeightAccount(), made.Site.HeightAccount(); !slices.Equal(got, want) {
		t.Errorf("account %q of the site file, want %q", got, want)
	}
}

// A block of flats 90 m off throws its shade on the property, a house there
// does not.
func TestWhatShadesFromAfarIsKept(t *testing.T) {
	outline := collectionOf(t, sketch{covering(Outline, "lot", rectangle(0, 0, 30, 30))}.file(home, ""))
	objects := collectionOf(t, sketch{
		polygon(`"id":"flats","building":"yes","height":"17"`, rectangle(120, 0, 130, 20)),
		polygon(`"id":"house","building":"house"`, rectangle(120, 0, 130, 20)),
		polygon(`"id":"near","building":"house"`, rectangle(65, 0, 75, 20)),
	}.file(home, ""))
	var kept []string
	for _, f := range Compile(objects, outline, Reading{Key: builtInKey}).File.Features {
		kept = append(kept, f.ID)
	}
	if want := []string{"lot", "flats", "near"}; !slices.Equal(kept, want) {
		t.Errorf("kept %q, want %q", kept, want)
	}
}

func TestCompiledSitesThrowTheSameShade(t *testing.T) {
	check(t, 100, func(t *rapid.T) {
		d := &drawing{T: t}
		tag := func(key string, values ...string) string {
			return fmt.Sprintf(`,%q:%q`, key, rapid.SampledFrom(append(values, "")).Draw(t, key))
		}
		d.several("house", 3, func(id string) {
			d.add(polygon(`"id":"`+id+`"`+tag("building", "yes", "house", "garage", "roof")+tag("building:part", "yes")+tag("height", "7", "20'")+
				tag("building:levels", "2")+tag("roof:shape", "gabled", "skillion", "many")+tag("roof:height", "2")+tag("min_height", "3"), d.blob(15, 3, 6)))
		})
		d.several("tree", 3, func(id string) {
			at := d.at(20)
			d.add(pointAt(`"natural":"tree","id":"`+id+`"`+tag("genus", "Acer", "Picea")+tag("leaf_cycle", "evergreen")+tag("leaf_type", "needleleaved")+tag("height", "9"), at.X+90, at.Y)) // clear of the row of trees
		})
		d.several("row", 1, func(id string) { d.add(lineString(`"natural":"tree_row","id":"`+id+`"`, d.way(3)...)) })
		d.several("hedge", 2, func(id string) {
			d.add(lineString(`"barrier":"hedge","id":"`+id+`"`+tag("height", "2")+tag("width", "0.8"), d.way(2)...))
		})
		d.add(covering(Turf, "lawn", rectangle(-30, -30, 30, 30)))
		checkCompiledThrowsTheSameShade(t, collectionOf(t, d.sketch.file(home, "")))
	})
}

func TestRealExtractsThrowTheSameShadeCompiled(t *testing.T) {
	dir := realData(t, "sites")
	for _, name := range []string{"berlin", "sydney", "ruggell-1"} {
		file, err := os.ReadFile(filepath.Join(dir, name+".geojson"))
		if err != nil {
			t.Fatal(err)
		}
		checkCompiledThrowsTheSameShade(t, collectionOf(t, file))
	}
}

// Of the 145 trees of this extract 18 have a height, of its 210 buildings and
// parts 25 have one and 168 only storeys (counted by a script over the XML);
// one of the last lies below the ground.
func TestHeightsOfARealExtract(t *testing.T) {
	dir := realData(t, "osm")
	file, err := os.Open(filepath.Join(dir, "de_berlin_neukoelln.osm"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	from := make(map[Kind]map[Basis]int)
	for c := range ingest.Read(file, "town.osm", ingest.DefaultLimits) {
		for _, o := range NewSite(c, Reading{Key: builtInKey}).Objects {
			if from[o.Kind] == nil {
				from[o.Kind] = make(map[Basis]int)
			}
			if len(o.Points) > 0 || o.Kind == Building {
				from[o.Kind][o.Stature.From]++
			}
		}
	}
	want := map[Kind]map[Basis]int{Building: {Tagged: 25, Levels: 167, Assumed: 17}, Tree: {Tagged: 18, Assumed: 127}}
	for k := range want {
		if !maps.Equal(from[k], want[k]) {
			t.Errorf("%s: %v, want %v", k, from[k], want[k])
		}
	}
}

// Two tree registers as they are, but for their kind. One gives heights to
// 3,278 of 3,418 trees, one of them the year of planting (counted by a script);
// a height of 0 means not known. The other has a height for each of its 1,386.
func TestHeightsOfTreeRegisters(t *testing.T) {
	dir := realData(t, "trees")
	for _, tt := range []struct {
		file string
		want map[Basis]int
		odd  int // heights that are not believed
	}{
		{"au_colac_trees.geojson", map[Basis]int{Stated: 3277, Assumed: 141}, 1},
		{"at_vienna_trees_west.geojson", map[Basis]int{Tagged: 1386}, 0},
	} {
		file, err := os.ReadFile(filepath.Join(dir, tt.file))
		if err != nil {
			t.Fatal(err)
		}
		c := collectionOf(t, file)
		for _, f := range c.Features {
			f.Properties.Set("kind", Tree)
		}
		s := NewSite(c, Reading{Key: builtInKey})
		from := make(map[Basis]int)
		for _, o := range s.Of(Tree) {
			from[o.Stature.From]++
		}
		odd := 0
		for _, p := range s.Problems {
			if p.Code == "height_range" {
				odd++
			}
		}
		if !maps.Equal(from, tt.want) || odd != tt.odd {
			t.Errorf("%s: %v with %d not believed, want %v with %d", tt.file, from, odd, tt.want, tt.odd)
		}
	}
}

func TestNoObstacleStandsOnItsHead(t *testing.T) {
	check(t, 200, func(t *rapid.T) {
		s := siteOf(t, drawProperty(t).file(home, ""))
		for _, o := range s.Obstacles() {
			switch shape := o.Shape.(type) {
			case sun.Prism:
				if !(shape.Top > shape.Base && shape.Base >= 0) || shape.Plan.Empty() {
					t.Errorf("%s: %v", o.ID, shape)
				}
			case sun.Crown:
				if !(shape.Top > shape.Base && shape.Base > 0 && shape.Radius > 0) || math.IsNaN(shape.At.X) {
					t.Errorf("%s: %v", o.ID, shape)
				}
			case sun.Screen:
				if !(shape.Height > 0) || len(shape.Line) < 2 {
					t.Errorf("%s: %v", o.ID, shape)
				}
			}
		}
	})
}
