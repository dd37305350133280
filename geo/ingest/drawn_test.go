package ingest

import (
	"strings"
	"testing"

	"github.com/paulmach/orb"
)

// TestDrawn: polygons of a map viewer become features as GeoJSON would have
// them; what was walked is no part of it.
func TestDrawn(t *testing.T) {
	file := inKML(placemark("<Polygon><outerBoundaryIs>"+ring("1,1 1,4 4,4 4,1 1,1")+"</outerBoundaryIs><innerBoundaryIs>"+ring("2,2 3,2 3,3")+"</innerBoundaryIs></Polygon>") +
		"<Placemark>" + ring("7,7 8,7 8,8") + "</Placemark>" +
		placemark(ring("5,5 6,6")) + placemark("<LineString><coordinates>9,9 9,8</coordinates></LineString>"))
	tracks := ReadTracks(strings.NewReader(file), "yard.kml", Limits{})
	drawn, problems := tracks.Drawn()
	want := []orb.Polygon{
		{{{1, 1}, {4, 1}, {4, 4}, {1, 4}, {1, 1}}, {{2, 2}, {3, 3}, {3, 2}, {2, 2}}},
		{{{7, 7}, {8, 7}, {8, 8}, {7, 7}}},
	}
	if len(drawn) != len(want) || tracks.Walked() != 1 || tracks.Title() != "back lawn" {
		t.Fatalf("%d drawn, %d walked, titled %q", len(drawn), tracks.Walked(), tracks.Title())
	}
	for i, label := range []string{"back lawn", ""} {
		if f := drawn[i]; !orb.Equal(f.Geometry, want[i]) || f.Index != i || f.Label() != label {
			t.Errorf("%d: %v %q, want %v", f.Index, f.Geometry, f.Label(), want[i])
		}
	}
	if len(problems) != 1 || problems[0].Code != "ring_flat" || problems[0].Severity != Warning {
		t.Errorf("problems %v", problems)
	}
}

// TestTitle: tracks of several names have none together.
func TestTitle(t *testing.T) {
	for _, tt := range []struct{ names, want string }{
		{"front", "front"}, {"front,front", "front"}, {"front,", "front"}, {"front,back", ""}, {"", ""},
	} {
		var tracks Tracks
		for _, name := range strings.Split(tt.names, ",") {
			tracks.Tracks = append(tracks.Tracks, Track{Name: name})
		}
		if got := tracks.Title(); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.names, got, tt.want)
		}
	}
}
