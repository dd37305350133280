package ingest

import (
	"pgregory.net/rapid"

	"github.com/paulmach/orb"
)

func sameGeometries(t rapid.TB, got, want *Collection) {
	t.Helper()
	if len(got.Features) != len(want.Features) {
		t.Fatalf("got %d features, want %d", len(got.Features), len(want.Features))
	}
	for i, f := range got.Features {
		if !orb.Equal(f.Geometry, want.Features[i].Geometry) {
			t.Errorf("features[%d]: got %v, want %v", i, f.Geometry, want.Features[i].Geometry)
		}
	}
}
