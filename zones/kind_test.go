package zones

import (
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// geometries are one of each sort, beside the lawn that every site of the
// tests of kinds has.
var geometries = map[string]func(props string) string{
	"Point":        func(props string) string { return feature(props, "Point", "[-93.1,44.95]") },
	"MultiPoint":   func(props string) string { return feature(props, "MultiPoint", "[[-93.1,44.95],[-93.1001,44.95]]") },
	"LineString":   func(props string) string { return feature(props, "LineString", "[[-93.1,44.95],[-93.0999,44.95]]") },
	"Polygon":      func(props string) string { return feature(props, "Polygon", "["+smallRing+"]") },
	"MultiPolygon": func(props string) string { return feature(props, "MultiPolygon", "[["+smallRing+"]]") },
	"GeometryCollection": func(props string) string {
		return `{"type":"Feature","properties":{` + props + `},"geometry":{"type":"GeometryCollection","geometries":[` +
			`{"type":"Point","coordinates":[-93.1,44.95]},{"type":"Polygon","coordinates":[` + smallRing + `]}]}}`
	},
}

const smallRing = "[[-93.1,44.95],[-93.0999,44.95],[-93.0999,44.9501],[-93.1,44.9501],[-93.1,44.95]]"

func feature(props, geometry, coordinates string) string {
	return `{"type":"Feature","properties":{` + props + `},"geometry":{"type":"` + geometry + `","coordinates":` + coordinates + `}}`
}

func collection(features ...string) []byte {
	return []byte(`{"type":"FeatureCollection","features":[` + strings.Join(features, ",") + `]}`)
}

func TestKindsAndTheirGeometry(t *testing.T) {
	const (
		areas  = "Polygon MultiPolygon"
		lines  = "LineString"
		points = "Point MultiPoint"
	)
	for _, tt := range []struct {
		kinds   []Kind
		accepts string
		traced  string // as
	}{
		{[]Kind{Turf, Rough, Synthetic, Bed, Bare, Building, Pool, Outline, ZoneKind, Keepout}, areas, "Polygon"},
		{[]Kind{Hardscape, Water}, areas + " " + lines, "Polygon or LineString"},
		{[]Kind{Cutline, Fence, Wall, Hedge}, lines, "LineString"},
		{[]Kind{Tree}, areas + " " + points, "Point or Polygon"},
		{[]Kind{Hazard, Access, Start, Refill}, points, "Point"},
	} {
		for _, k := range tt.kinds {
			for name, write := range geometries {
				s := siteOf(t, collection(write(`"kind":"`+string(k)+`","id":"it","width_m":2`)))
				if slices.Contains(strings.Fields(tt.accepts), name) {
					if s.Refused() || len(s.Of(k)) != 1 {
						t.Errorf("%s as %s: %s", k, name, told(s.Problems))
					}
					continue
				}
				want := `yard.geojson: features[0] "it": kind ` + string(k) + " is traced as a " + tt.traced + ", this is a " + name
				if !s.Refused() || s.Problems[0].Code != "kind_shape" || s.Problems[0].String() != want {
					t.Errorf("%s as %s: %s, want %s", k, name, told(s.Problems), want)
				}
			}
		}
	}
}

func TestRefusedProperties(t *testing.T) {
	for _, tt := range []struct {
		name, props, geometry string
		want                  string // with its hint
	}{
		{"word of the trade", `"kind":"lawn"`, "Polygon", `error: yard.geojson: features[0]: kind "lawn" is not known (did you mean "turf"?)`},
		{"plural", `"kind":"beds","name":"Back"`, "Polygon", `error: yard.geojson: features[0] "Back": kind "beds" is not known (did you mean "bed"?)`},
		{"in two words", `"kind":"keep out"`, "Polygon", `error: yard.geojson: features[0]: kind "keep out" is not known (did you mean "keepout"?)`},
		{"capitals", `"kind":" Turf"`, "Polygon", `error: yard.geojson: features[0]: kind " Turf" is not known (did you mean "turf"?)`},
		{"driveway", `"kind":"driveway"`, "Polygon", `error: yard.geojson: features[0]: kind "driveway" is not known (did you mean "hardscape"?)`},
		{"nothing like it", `"kind":"moat"`, "Polygon", `error: yard.geojson: features[0]: kind "moat" is not known`},
		{"open lawn", `"kind":"turf"`, "LineString",
			`error: yard.geojson: features[0]: kind turf is traced as a Polygon, this is a LineString (close the line to a ring and make it a Polygon)`},
		{"drive without a width", `"kind":"hardscape"`, "LineString",
			`error: yard.geojson: features[0]: kind hardscape traced as a line needs width_m (give its width, as in "width_m": 3, or trace it as a Polygon)`},
		{"drive of no width", `"kind":"hardscape","width_m":0`, "LineString",
			`error: yard.geojson: features[0]: kind hardscape traced as a line needs width_m (give its width, as in "width_m": 3, or trace it as a Polygon)`},
		{"width in millimetres", `"kind":"water","width_m":3000`, "LineString",
			`error: yard.geojson: features[0]: kind water with a width of 3000 m is too wide, the limit is 1000 m (give width_m in metres, or width_ft in feet)`},
		{"nothing at all", `"name":"?"`, "Polygon",
			`error: yard.geojson: none of the 1 features has a kind or a map tag that says what it is (give each object a property "kind", such as "turf", "bed" or "outline")`},
		{"empty kind", `"kind":""`, "Polygon",
			`error: yard.geojson: none of the 1 features has a kind or a map tag that says what it is (give each object a property "kind", such as "turf", "bed" or "outline")`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := siteOf(t, collection(geometries[tt.geometry](tt.props)))
			if got := told(s.Problems); got != tt.want {
				t.Errorf("told\n%s\nwant\n%s", got, tt.want)
			}
			if Survey(s) != nil {
				t.Error("surveyed all the same")
			}
		})
	}
}

func TestDoubtfulProperties(t *testing.T) {
	for _, tt := range []struct {
		name, props string
		want        string
		source      Source
		sigma       geo.Length
	}{
		{"nothing said", `"kind":"turf"`, "", Traced, 0.3},
		{"walked", `"kind":"turf","source":"walked"`, "", Walked, 1},
		{"own sigma", `"kind":"turf","source":"taped","sigma_m":0.02`, "", Taped, 0.02},
		{"unknown source", `"kind":"turf","source":"guessed"`, `warning: yard.geojson: features[0]: source "guessed" is not known, traced taken`, Traced, 0.3},
		{"inner row named", `"kind":"turf","source":"stated_width"`, `warning: yard.geojson: features[0]: source "stated_width" is not known, traced taken`, Traced, 0.3},
		{"negative sigma", `"kind":"turf","sigma_m":-1`, "warning: yard.geojson: features[0]: sigma_m -1 is not an edge error of 0 to 100 m, left aside (give sigma_m in metres, as a number alone)", Traced, 0.3},
		{"sigma in millimetres", `"kind":"turf","sigma_m":300`, "warning: yard.geojson: features[0]: sigma_m 300 is not an edge error of 0 to 100 m, left aside (give sigma_m in metres, as a number alone)", Traced, 0.3},
		{"map tag source means something else", `"landuse":"grass","source":"survey"`, "", Imported, 0.5},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := siteOf(t, collection(geometries["Polygon"](tt.props)))
			if got := told(s.Problems); got != tt.want {
				t.Errorf("told %q, want %q", got, tt.want)
			}
			o := s.Objects[0]
			if o.Source != tt.source || o.Error.Sigma != tt.sigma {
				t.Errorf("source %s with sigma %g, want %s with %g", o.Source, o.Error.Sigma, tt.source, tt.sigma)
			}
		})
	}
}

func TestSourcesOfLines(t *testing.T) {
	for _, tt := range []struct {
		name, props string
		source      Source
		kind        geo.ErrorKind
		sigma       geo.Length
	}{
		{"stated width", `"kind":"hardscape","width_m":3`, Traced, geo.Width, 0.1},
		{"stated width, walked", `"kind":"hardscape","width_m":3,"source":"walked"`, Walked, geo.Width, 0.1},
		{"default width named", `"kind":"hardscape","width_m":3,"source":"default_width"`, DefaultWidth, geo.Width, 0.4},
		{"tagged width", `"highway":"footway","width":"2"`, Imported, geo.Width, 0.1},
		{"width of the map key", `"highway":"footway"`, DefaultWidth, geo.Width, 0.4},
		{"fence", `"kind":"fence"`, Traced, geo.Vertices, 0.3},
	} {
		t.Run(tt.name, func(t *testing.T) {
			o := siteOf(t, collection(geometries["LineString"](tt.props))).Objects[0]
			if o.Source != tt.source || o.Error.Kind != tt.kind || o.Error.Sigma != tt.sigma {
				t.Errorf("source %s, kind %d, sigma %g; want %s, %d, %g", o.Source, o.Error.Kind, o.Error.Sigma, tt.source, tt.kind, tt.sigma)
			}
		})
	}
}

func TestEverySourceHasAnError(t *testing.T) {
	for _, s := range []Source{Traced, Walked, Taped, Imported, DefaultWidth} {
		if !s.Known() || s.EdgeError().Sigma <= 0 {
			t.Errorf("source %s: known %t, error %v", s, s.Known(), s.EdgeError())
		}
	}
	if len(edgeErrors) != 6 {
		t.Errorf("%d rows in sources.csv", len(edgeErrors))
	}
	for _, table := range []string{"source,error,sigma_m,reach_m,basis\na,b,1,0,x", "source,error,sigma_m,reach_m,basis\na,walk,x,0,x", "a\nb,c"} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("bad table %q was read", table)
				}
			}()
			mustReadRows("t", table, readSource, columnsOf(table)...)
		}()
	}
}

func TestIdleObjectsAreCounted(t *testing.T) {
	lawn := geometries["Polygon"](`"kind":"turf"`)
	idle := geometries["Point"](`"name":"x"`)
	for n, want := range []string{"", "note: yard.geojson: 1 object plays no part and is left aside", "note: yard.geojson: 2 objects play no part and are left aside"} {
		s := siteOf(t, collection(slices.Concat([]string{lawn}, slices.Repeat([]string{idle}, n))...))
		if got := told(s.Problems); got != want {
			t.Errorf("told %q, want %q", got, want)
		}
	}
}

func TestKindOfAFeatureThatWasRefusedIsNotCountedIdle(t *testing.T) {
	s := siteOf(t, collection(geometries["Polygon"](`"kind":"turf"`), geometries["Polygon"](`"kind":"moat"`)))
	if got := codes(s.Problems); !slices.Equal(got, []string{"kind_unknown"}) {
		t.Errorf("told %v", got)
	}
	if s.Problems[0].Severity != ingest.Refusal {
		t.Errorf("severity %v", s.Problems[0].Severity)
	}
}
