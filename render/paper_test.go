package render

import (
	"math"
	"testing"
)

func TestPaperInPoints(t *testing.T) {
	// want: the usual sizes in points, 1/72 inch.
	for _, tt := range []struct {
		name          string
		width, height float64
		within        float64
	}{
		{"letter", 612, 792, 1e-9},
		{"Tabloid", 792, 1224, 1e-9},
		{"A4", 595.276, 841.890, 5e-4},
		{"a3", 841.890, 1190.551, 5e-4},
	} {
		p, err := PaperNamed(tt.name)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(p.Width/mmPerPoint-tt.width) > tt.within || math.Abs(p.Height/mmPerPoint-tt.height) > tt.within {
			t.Errorf("%s is %g x %g pt, want %g x %g", tt.name, p.Width/mmPerPoint, p.Height/mmPerPoint, tt.width, tt.height)
		}
		if turned := p.landscape(); turned.Width != p.Height || turned.Height != p.Width || turned.upright() != p {
			t.Errorf("%s turned is %v, and back %v", tt.name, turned, turned.upright())
		}
	}
	if _, err := PaperNamed("foolscap"); err == nil {
		t.Error("foolscap is taken for a paper")
	}
}
