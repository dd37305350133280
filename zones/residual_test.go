package zones

import (
	"slices"
	"testing"
)

// Turf that nobody mapped is told of, unless a person traced what is not turf.
func TestTurfResidual(t *testing.T) {
	lot, at := covering(Outline, "lot", rectangle(0, 0, 40, 20)), rectangle(10, 5, 20, 15)
	for _, tt := range []struct {
		name   string
		sketch sketch
		want   bool
	}{
		{"nothing on it", sketch{lot}, true},
		{"map data", sketch{lot, polygon(`"building":"yes"`, at)}, true},
		{"map data in a site file", sketch{lot, polygon(kind(Building, "b", `"source":"imported"`), at)}, true},
		{"a path of default width", sketch{lot, lineString(`"highway":"footway"`, xy(-5, 10), xy(45, 10))}, true},
		{"traced", sketch{lot, covering(Building, "b", at)}, false},
		{"a tree from map data beside what was traced", sketch{lot, covering(Building, "b", at), polygon(`"natural":"wood"`, rectangle(30, 5, 35, 9))}, false},
		{"a lawn on the map", sketch{lot, polygon(`"building":"yes"`, at), polygon(`"landuse":"grass"`, rectangle(20, 5, 30, 15))}, false},
		{"no turf left", sketch{lot, polygon(`"building":"yes"`, rectangle(-1, -1, 41, 21))}, false},
		{"a lawn without an outline", sketch{lawn, polygon(`"building":"yes"`, at)}, false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			p := tt.sketch.plat(t)
			if told := slices.Contains(codes(p.Site.Problems), turfResidual); p.TurfResidual() != tt.want || told != tt.want {
				t.Errorf("residual %t, told %t, want %t", p.TurfResidual(), told, tt.want)
			}
		})
	}
}

// A survey tells it too, and once.
func TestSurveyTellsThatNoLawnIsMapped(t *testing.T) {
	lot, house := covering(Outline, "lot", rectangle(0, 0, 40, 20)), polygon(`"building":"yes"`, rectangle(10, 5, 20, 15))
	for _, tt := range []struct {
		name   string
		sketch sketch
		want   []string
	}{
		{"a house", sketch{house}, []string{turfResidual}},
		{"a pool alone", sketch{polygon(`"leisure":"swimming_pool"`, rectangle(10, 5, 20, 15))}, []string{OutlineUnbuilt}},
		{"a lawn", sketch{house, polygon(`"landuse":"grass"`, rectangle(20, 5, 30, 15))}, nil},
	} {
		c := Compile(collectionOf(t, tt.sketch.file(home, "")), collectionOf(t, sketch{lot}.file(home, "")), Reading{Key: DefaultMapKey()})
		if got := codes(c.Site.Problems); !slices.Equal(got, tt.want) {
			t.Errorf("%s: told %v, want %v", tt.name, got, tt.want)
		}
	}
}
