package zones

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// The rules for heights are those of common practice with open map data:
// the tag for the height, else storeys of 3 m and 2.5 m in the roof, else a
// figure for the sort of building.
func TestHeights(t *testing.T) {
	for _, tt := range []struct {
		props, geometry string
		height, base    float64
		from            Basis
	}{
		{`"kind":"building","height_m":7.2`, "Polygon", 7.2, 0, Stated},
		{`"kind":"building","height_ft":20`, "Polygon", 6.096, 0, Stated},
		{`"kind":"building","height_m":0`, "Polygon", 0, 0, Stated},
		{`"kind":"building","height_m":9,"height_from":"levels","tags":{"building:levels":"3"}`, "Polygon", 9, 0, Levels},
		{`"kind":"building","height_m":5,"height_from":"assumed"`, "Polygon", 5, 0, Assumed},
		{`"kind":"building","height_m":9.5,"height_from":"assumed"`, "Polygon", 9.5, 0, Stated}, // changed since
		{`"kind":"building","height_m":7,"tags":{"height":"9"}`, "Polygon", 7, 0, Stated},
		{`"kind":"building","tags":{"building":"house"}`, "Polygon", 6.5, 0, Assumed},
		{`"kind":"building"`, "Polygon", 5, 0, Assumed},
		{`"building":"yes","height":"12"`, "Polygon", 12, 0, Tagged},
		{`"building":"yes","height":"12 m"`, "Polygon", 12, 0, Tagged},
		{`"building":"yes","height":"30'"`, "Polygon", 9.144, 0, Tagged},
		{`"building":"yes","height":"30'6\""`, "Polygon", 9.2964, 0, Tagged},
		{`"building":"yes","height":"tall"`, "Polygon", 5, 0, Assumed},
		{`"building":"yes","est_height":"8"`, "Polygon", 8, 0, Tagged},
		{`"building":"yes","height":"9999"`, "Polygon", 5, 0, Assumed},
		{`"building":"yes","building:levels":"2"`, "Polygon", 6, 0, Levels},
		{`"building":"yes","building:levels":"1.5"`, "Polygon", 4.5, 0, Levels},
		{`"building":"yes","building:levels":"2","roof:height":"3"`, "Polygon", 9, 0, Levels},
		{`"building":"yes","building:levels":"2","roof:levels":"1"`, "Polygon", 8.5, 0, Levels},
		{`"building":"yes","building:levels":"2","roof:shape":"gabled"`, "Polygon", 8.5, 0, Levels},
		{`"building":"yes","building:levels":"2","roof:shape":"flat"`, "Polygon", 6, 0, Levels},
		{`"building":"yes","building:levels":"0","roof:levels":"1"`, "Polygon", 2.5, 0, Levels},
		{`"building":"yes","building:levels":"-1"`, "Polygon", 5, 0, Assumed},
		{`"building":"yes","building:levels":"two"`, "Polygon", 5, 0, Assumed},
		{`"building":"house"`, "Polygon", 6.5, 0, Assumed},
		{`"building":"garage"`, "Polygon", 2.8, 0, Assumed},
		{`"building":"shed"`, "Polygon", 2.8, 0, Assumed},
		{`"building":"apartments"`, "Polygon", 12, 0, Assumed},
		{`"building":"roof"`, "Polygon", 2.8, 2.5, Assumed},
		{`"building":"roof","height":"5"`, "Polygon", 5, 4.7, Tagged},
		{`"building:part":"yes","height":"12","min_height":"3"`, "Polygon", 12, 3, Tagged},
		{`"building:part":"yes","height":"12","building:min_level":"2"`, "Polygon", 12, 6, Tagged},
		{`"building:part":"yes","height":"2","min_height":"3"`, "Polygon", 2, 2, Tagged},

		{`"kind":"tree"`, "Point", 10, 2.5, Assumed},
		{`"kind":"tree","height_m":16`, "Point", 16, 4, Stated},
		{`"kind":"tree","height_m":5`, "Point", 5, 2, Stated},
		{`"kind":"tree","height_m":1.5`, "Point", 1.5, 1, Stated},
		{`"kind":"tree","height_m":0`, "Point", 10, 2.5, Assumed},
		{`"natural":"tree"`, "Point", 10, 2.5, Assumed},
		{`"natural":"tree","leaf_type":"needleleaved"`, "Point", 12, 3, Assumed},
		{`"natural":"tree","genus":"Malus"`, "Point", 5, 2, Assumed},
		{`"natural":"tree","species":"Phoenix canariensis"`, "Point", 8, 2, Assumed},
		{`"natural":"tree","height":"18"`, "Point", 18, 4.5, Tagged},
		{`"natural":"wood"`, "Polygon", 12, 3, Assumed},
		{`"landuse":"forest"`, "Polygon", 12, 3, Assumed},
		{`"natural":"tree_row"`, "LineString", 9, 2.25, Assumed},

		{`"barrier":"hedge"`, "LineString", 1.5, 0, Assumed},
		{`"barrier":"hedge","height":"3"`, "LineString", 3, 0, Tagged},
		{`"barrier":"hedge"`, "Polygon", 1.5, 0, Assumed},
		{`"barrier":"fence"`, "LineString", 1.5, 0, Assumed},
		{`"barrier":"wall"`, "LineString", 1.5, 0, Assumed},
		{`"barrier":"retaining_wall"`, "LineString", 0, 0, Assumed},
		{`"kind":"fence","height_m":1.8`, "LineString", 1.8, 0, Stated},
		{`"natural":"shrub"`, "Point", 1.2, 0, Assumed},
		{`"natural":"scrub"`, "Polygon", 1.2, 0, Assumed},
		{`"kind":"bed","height_m":0.9`, "Polygon", 0.9, 0, Stated},
		{`"kind":"bed"`, "Polygon", 0, 0, Assumed},
		{`"kind":"turf","height_m":0.05`, "Polygon", 0, 0, ""},
		{`"highway":"footway","height":"4"`, "LineString", 0, 0, ""},
	} {
		t.Run(tt.props, func(t *testing.T) {
			s := siteOf(t, collection(geometries[tt.geometry](tt.props)))
			st := s.Objects[0].Stature
			near(t, "height", st.Height, tt.height, 1e-12, 0)
			near(t, "base", st.Base, tt.base, 1e-12, 0)
			if st.From != tt.from || len(s.Problems) > 0 {
				t.Errorf("from %q, want %q; told %s", st.From, tt.from, told(s.Problems))
			}
		})
	}
}

func TestDoubtfulStatures(t *testing.T) {
	for _, tt := range []struct{ props, want string }{
		{`"kind":"building","height_m":6500`, "warning: yard.geojson: features[0]: height_m 6500 is not a height of 0 to 500 m, left aside (give height_m in metres, or height_ft in feet, as a number alone)"},
		{`"kind":"tree","crown_m":800`, "warning: yard.geojson: features[0]: crown_m 800 is not a crown of 0 to 60 m, left aside (give crown_m in metres, or crown_ft in feet, as a number alone)"},
		{`"kind":"tree","leaf":"needle"`, `warning: yard.geojson: features[0]: leaf "needle" is not known, deciduous taken (write deciduous or evergreen)`},
		{`"kind":"tree","transmittance":15`, "warning: yard.geojson: features[0]: transmittance 15 is not a share of 0 to 1, left aside (give the share of direct sun that passes, as in 0.2)"},
	} {
		sort := "Polygon"
		if strings.Contains(tt.props, "crown_m") {
			sort = "Point"
		}
		if got := told(siteOf(t, collection(geometries[sort](tt.props))).Problems); got != tt.want {
			t.Errorf("%s: told\n%s\nwant\n%s", tt.props, got, tt.want)
		}
	}
}

func TestRoofs(t *testing.T) {
	for _, tt := range []struct {
		tags []string
		want Roof
	}{
		{nil, Roof{Shape: Flat, Slope: math.NaN()}},
		{[]string{"roof:shape=flat"}, Roof{Shape: Flat, Slope: math.NaN()}},
		{[]string{"roof:shape=gabled", "roof:height=3"}, Roof{Shape: Gabled, Height: 3, Slope: math.NaN()}},
		{[]string{"roof:shape=Gabled", "roof:orientation=across"}, Roof{Shape: Gabled, Height: 2.5, Across: true, Slope: math.NaN()}},
		{[]string{"roof:shape=gabled", "roof:direction=85.2"}, Roof{Shape: Gabled, Height: 2.5, Slope: 85.2}},
		{[]string{"roof:shape=skillion", "roof:direction=SSW"}, Roof{Shape: Skillion, Height: 2.5, Slope: 202.5}},
		{[]string{"roof:shape=skillion", "roof:direction=uphill"}, Roof{Shape: Skillion, Height: 2.5, Slope: math.NaN()}},
		{[]string{"roof:shape=hipped", "roof:levels=2"}, Roof{Shape: Hipped, Height: 5, Slope: math.NaN()}},
		{[]string{"roof:shape=pyramidal", "roof:levels=0"}, Roof{Shape: Pyramidal, Slope: math.NaN()}},
		{[]string{"roof:shape=many", "roof:height=4"}, Roof{Shape: OddRoof, Height: 4, Slope: math.NaN()}},
		{[]string{"roof:height=4"}, Roof{Shape: OddRoof, Height: 4, Slope: math.NaN()}},
	} {
		if got := roofOf(tagged(tt.tags...)); fmt.Sprint(got) != fmt.Sprint(tt.want) {
			t.Errorf("%v: %v, want %v", tt.tags, got, tt.want)
		}
	}
}
