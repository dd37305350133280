package zones

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/turfplat/geo/ingest"
)

// tagged makes properties of tags written key=value.
func tagged(tags ...string) ingest.Properties {
	var p ingest.Properties
	for _, tag := range tags {
		key, value, _ := strings.Cut(tag, "=")
		p.Set(key, value)
	}
	return p
}

// ownTags lists every combination of a row's alternatives, each wildcard
// standing for something that no other row names.
func (r mapKeyRow) ownTags() [][]string {
	combined := [][]string{nil}
	for _, m := range r.tags {
		var longer [][]string
		for _, tags := range combined {
			for _, pattern := range m.patterns {
				value := strings.ReplaceAll(pattern, "*", "1")
				longer = append(longer, append(append([]string(nil), tags...), m.key+"="+value))
			}
		}
		combined = longer
	}
	return combined
}

func TestNoRowOfTheMapKeyIsShadowed(t *testing.T) {
	for i, row := range builtInKey.rows {
		for _, tags := range row.ownTags() {
			for _, s := range []shape{point, line, area} {
				if row.shapes&s == 0 {
					continue
				}
				for j, earlier := range builtInKey.rows[:i] {
					if earlier.shapes&s != 0 && fitAll(earlier.tags, tagged(tags...)) {
						t.Errorf("row %d: %v as a %s is decided by row %d already", i+2, tags, s, j+2)
					}
				}
				if found, ok := builtInKey.find(tagged(tags...), s); !ok || found.kind != row.kind {
					t.Errorf("row %d: %v as a %s is %q, want %q", i+2, tags, s, found.kind, row.kind)
				}
			}
		}
	}
}

func TestPartsThatTagsPlay(t *testing.T) {
	for _, tt := range []struct {
		tags  string
		shape shape
		want  Kind // "" = none
		width float64
	}{
		{"landuse=grass", area, Turf, 0},
		{"landuse=grass", line, "", 0},
		{"leisure=park", area, "", 0},
		{"leisure=garden", area, "", 0},
		{"landuse=residential", area, "", 0},
		{"landuse=meadow", area, Rough, 0},
		{"surface=artificial_turf leisure=pitch", area, Synthetic, 0},
		{"leisure=pitch surface=grass", area, Turf, 0},
		{"leisure=pitch", area, "", 0},
		{"building=yes", area, Building, 0},
		{"building=no", area, "", 0},
		{"building=no landuse=grass", area, Turf, 0},
		{"building=yes layer=-1", area, "", 0},
		{"building=yes layer=1", area, Building, 0},
		{"amenity=parking parking=underground", area, "", 0},
		{"amenity=parking parking=surface", area, Hardscape, 0},
		{"amenity=parking location=underground", area, "", 0},
		{"highway=footway tunnel=yes", line, "", 0},
		{"highway=footway tunnel=no", line, Hardscape, 1},
		{"highway=footway covered=yes", line, "", 0},
		{"highway=footway covered=no", line, Hardscape, 1},
		{"highway=path surface=grass", line, "", 0},
		{"highway=path surface=gravel", line, Hardscape, 1},
		{"highway=footway footway=sidewalk", line, Hardscape, 1.5},
		{"highway=service service=driveway", line, Hardscape, 3},
		{"highway=service", line, Hardscape, 4},
		{"highway=residential", line, Hardscape, 6},
		{"highway=secondary", line, Hardscape, 9},
		{"highway=pedestrian", area, Hardscape, 0},
		{"highway=bus_stop", point, "", 0},
		{"barrier=hedge", line, Hedge, 1},
		{"barrier=hedge", area, Bed, 0},
		{"barrier=wall", line, Wall, 0},
		{"barrier=wall", area, "", 0},
		{"barrier=fence", line, Fence, 0},
		{"natural=tree", point, Tree, 0},
		{"natural=tree_row", line, Tree, 6},
		{"natural=wood", area, Tree, 0},
		{"natural=shrub", point, Bed, 0},
		{"leisure=swimming_pool", area, Pool, 0},
		{"natural=water water=pond", area, Water, 0},
		{"waterway=stream", line, Water, 1.5},
		{"waterway=drain", point, Hazard, 0},
		{"man_made=manhole manhole=drain", point, Hazard, 0},
		{"golf=bunker", area, Bare, 0},
		{"power=pole", point, Hazard, 0},
		{"barrier=gate", point, Access, 0},
		{"surface=gravel", area, Bare, 0},
		{"surface=paving_stones", area, Hardscape, 0},
	} {
		row, _ := builtInKey.find(tagged(strings.Fields(tt.tags)...), tt.shape)
		if row.kind != tt.want || row.width != tt.width {
			t.Errorf("%s as a %s: %q, %g m wide; want %q, %g m", tt.tags, tt.shape, row.kind, row.width, tt.want, tt.width)
		}
	}
}

// Rows with a width or a radius are guesses; they say on what they rest.
func TestMeasuresOfTheMapKeyHaveABasis(t *testing.T) {
	for i, record := range strings.Split(strings.TrimSpace(mapKeyCSV), "\n") {
		cells := strings.Split(record, ",")
		if measured := strings.Join(cells[3:6], "") != ""; i > 0 && measured && !strings.Contains(cells[6], "common practice") {
			t.Errorf("line %d: %s", i+1, record)
		}
	}
}

func TestTagsFlatAndNested(t *testing.T) {
	for _, props := range []string{
		`"landuse":"grass"`,
		`"tags":{"landuse":"grass"}`,
		`"tags":"{\"landuse\":\"grass\"}"`,
	} {
		s := siteOf(t, collection(geometries["Polygon"](props)))
		if lawns := s.Of(Turf); len(lawns) != 1 || lawns[0].Source != Imported {
			t.Errorf("%s: %s", props, told(s.Problems))
		}
	}
}

func TestStatedKindOverridesTags(t *testing.T) {
	s := siteOf(t, collection(geometries["Polygon"](`"kind":"bed","building":"yes"`)))
	if len(s.Of(Bed)) != 1 || len(s.Of(Building)) != 0 {
		t.Errorf("objects %v", s.Objects)
	}
}

// A closed way of hedge or wall is what goes round something, not an area.
func TestClosedBarriersStayLines(t *testing.T) {
	ring := append(rectangle(0, 0, 20, 10), rectangle(0, 0, 20, 10)[0])
	s := sketch{
		covering(Outline, "lot", rectangle(-5, -5, 25, 15)),
		lineString(`"barrier":"hedge","id":"hedge"`, ring...),
		lineString(`"barrier":"wall","id":"wall"`, ring...),
	}
	m := s.measure(t)
	near(t, "hedge bed", m.Covers[Bed].AreaM2, 21*11-19*9-0.25*(4-math.Pi), 1e-4, 0) // corners are round outside
	if m.Covers[Turf].Pieces != 2 {
		t.Errorf("%d pieces of turf, want that inside the hedge and that outside", m.Covers[Turf].Pieces)
	}
}

func TestHedgeAsABed(t *testing.T) {
	lawn := covering(Turf, "lawn", rectangle(0, 0, 20, 10))
	along := []item{
		lineString(kind(Hedge, "a", `"width_m":1`), xy(5, -1), xy(5, 11)),
		lineString(kind(Hedge, "b"), xy(10, -1), xy(10, 11)),
		lineString(`"barrier":"hedge","id":"c"`, xy(15, -1), xy(15, 11)),
	}
	m := sketch(append(along, lawn)).measure(t)
	near(t, "beds", m.Covers[Bed].AreaM2, 2*12, 1e-8, 0)
	near(t, "turf", m.Covers[Turf].AreaM2, 200-2*10, 1e-8, 0)
	near(t, "edge with beds", m.Edges.TurfBedM, 4*10, 1e-7, 0)
	near(t, "trim along the hedge without a width", m.Edges.TrimM, 2*10, 1e-7, 0)
}

func TestReadMapKey(t *testing.T) {
	const header = "tags,shape,kind,width_m,lane_m,radius_m,note\n"
	for _, tt := range []struct {
		name, table string
		want        string // the error
	}{
		{"own row", header + "landuse=clover,area,turf,,,,", ""},
		{"mark of a spreadsheet", "\ufeff" + header + "landuse=clover,area,turf,,,,", ""},
		{"carriage returns", strings.ReplaceAll(header+"landuse=clover,area,turf,,,,\n", "\n", "\r\n"), ""},
		{"left out", header + "landuse=clover,any,,,,,", ""},
		{"row of trees", header + "natural=row,line,tree,6,,,", ""},
		{"nothing", "", "line 1: the columns must be tags,shape,kind,width_m,lane_m,radius_m,note"},
		{"other columns", "tags,shape\n", "line 1: the columns must be tags,shape,kind,width_m,lane_m,radius_m,note"},
		{"no tags", header + ",area,turf,,,,", "line 2: there are no tags, so the row would fit everything"},
		{"half a tag", header + "landuse,area,turf,,,,", `line 2: tag "landuse" is not written key=value`},
		{"no value", header + "landuse=,area,turf,,,,", `line 2: tag "landuse=" is not written key=value`},
		{"unknown shape", header + "a=b,blob,turf,,,,", `line 2: shape "blob" is not point, line, area or any`},
		{"unknown kind", header + "a=b,area,lawn,,,,", `line 2: kind "lawn" is not known`},
		{"width in words", header + "a=b,line,hardscape,wide,,,", `line 2: width_m "wide" is not a length of up to 1000 m`},
		{"no width", header + "a=b,line,hardscape,0,,,", `line 2: width_m "0" is not a length of up to 1000 m`},
		{"negative radius", header + "a=b,point,bed,,,-1,", `line 2: radius_m "-1" is not a length of up to 1000 m`},
		{"boundless width", header + "a=b,line,hardscape,Inf,,,", `line 2: width_m "Inf" is not a length of up to 1000 m`},
		{"drive without a width", header + "a=b,line,hardscape,,,,", "line 2: kind hardscape mapped as a line needs a width_m"},
		{"bed without a radius", header + "a=b,point,bed,,,,", "line 2: kind bed mapped as a point needs a radius_m"},
		{"fence as an area", header + "a=b,area,fence,,,,", "line 2: kind fence can only be a LineString"},
		{"too few columns", header + "a=b,area,turf", "line 2: there are 3 columns, not 7"},
		{"all of them", header + "a=b,area,lawn,,,,\na=c,area,turf,,,,\n\na,area,turf,,,,\na=b\n",
			"line 2: kind \"lawn\" is not known\nline 5: tag \"a\" is not written key=value\nline 6: there are 1 columns, not 7"},
		{"something else", header + strings.Repeat("a=b,any,,,,,\n", 90_000), "is larger than 1 MiB, which no table of tags is: is it the right file?"},
		{"open quote", header + "a=b,area,lawn,,,,\n\"a=c,area,turf,,,,\n", "line 2: kind \"lawn\" is not known\nparse error on line 3, column 20: extraneous or missing \" in quoted-field"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			key, err := ReadMapKey(strings.NewReader(tt.table))
			if got := fmt.Sprint(err); err != nil && got != tt.want || err == nil && tt.want != "" {
				t.Errorf("error %q, want %q", got, tt.want)
			}
			if (err == nil) == (key == nil) {
				t.Errorf("key %v with error %v", key, err)
			}
		})
	}
}

func TestUsersMapKeyIsUsed(t *testing.T) {
	key, err := ReadMapKey(strings.NewReader("tags,shape,kind,width_m,lane_m,radius_m,note\nlanduse=clover,area,turf,,,,\nlanduse=*,area,,,,,\n"))
	if err != nil {
		t.Fatal(err)
	}
	file := collection(geometries["Polygon"](`"landuse":"clover"`), geometries["Polygon"](`"landuse":"grass"`))
	if s := NewSite(collectionOf(t, file), Reading{Key: key}); len(s.Of(Turf)) != 1 {
		t.Errorf("%d lawns, want 1", len(s.Of(Turf)))
	}
}

func TestWildcards(t *testing.T) {
	for _, tt := range []struct {
		pattern, value string
		want           bool
	}{
		{"*", "anything/at all", true},
		{"*", "", true},
		{"grass", "grass", true},
		{"grass", "grassland", false},
		{"grass*", "grassland", true},
		{"-*", "-1", true},
		{"-*", "1", false},
		{"*_link", "primary_link", true},
		{"*_link", "primary", false},
		{"a*b*c", "axxbyyc", true},
		{"a*b*c", "axxbyy", false},
		{"a*a", "a", false},
		{"[a-z]", "b", false},
		{"[a-z]", "[a-z]", true},
	} {
		if got := wildcard(tt.pattern, tt.value); got != tt.want {
			t.Errorf("%q fits %q: %t", tt.value, tt.pattern, got)
		}
	}
}

func TestTaggedWidths(t *testing.T) {
	for _, tt := range []struct {
		tags string // one a line
		lane float64
		want float64 // 0 = none
	}{
		{"width=3", 0, 3},
		{"width=3.5", 0, 3.5},
		{"width=3 m", 0, 3},
		{"width=3m", 0, 3},
		{"width= 3 ", 0, 3},
		{"width=10 ft", 0, 3.048},
		{"width=10'", 0, 3.048},
		{"width=16'3\"", 0, 4.953},
		{"width=16' 3\"", 0, 4.953},
		{"width=0'0\"", 0, 0},
		{"width=0", 0, 0},
		{"width=-3", 0, 0},
		{"width=3,5", 0, 0},
		{"width=wide", 0, 0},
		{"width=3 miles", 0, 0},
		{"width=9999", 0, 0},
		{"est_width=2.5", 0, 2.5},
		{"width=wide\nest_width=2.5", 0, 2.5},
		{"width=3\nest_width=2.5", 0, 3},
		{"lanes=2", 3, 6},
		{"lanes=2", 0, 0},
		{"lanes=0", 3, 0},
		{"lanes=200", 3, 0},
		{"lanes=NaN", 3, 0},
		{"width=5\nlanes=2", 3, 5},
	} {
		got, ok := taggedWidth(tagged(strings.Split(tt.tags, "\n")...), tt.lane)
		if ok != (tt.want > 0) {
			t.Errorf("%q: %g, %t", tt.tags, got, ok)
			continue
		}
		near(t, tt.tags, got, tt.want, 1e-12, 0)
	}
}
