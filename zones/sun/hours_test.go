package sun

import (
	"math"
	"testing"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

var june = Season{From: Date{6, 21}, To: Date{6, 21}}

func TestHoursOnlyWhereWanted(t *testing.T) {
	want, err := geo.Difference(squareOf(8), squareOf(4))
	if err != nil {
		t.Fatal(err)
	}
	s := Scene{Place: orb.Point{0, 45}, MinElevation: LeastElevation}
	f := s.Hours(GridOver(squareOf(10).Bounds(), 0.5), want, june)
	if len(f.Values) != 400 {
		t.Fatalf("%d cells, want 400", len(f.Values))
	}
	for cell, hours := range f.Values {
		if in := want.Contains(f.Center(cell)); in == math.IsNaN(hours) {
			t.Errorf("cell at %v: %g h, wanted: %v", f.Center(cell), hours, in)
		}
	}
}

func TestHoursOfNothing(t *testing.T) {
	s := Scene{Place: orb.Point{0, 45}, Obstacles: []Obstacle{{Shape: Prism{squareOf(2), 0, 5}}}, MinElevation: LeastElevation}
	if f := s.Hours(GridOver(geo.Region{}.Bounds(), 1), geo.Region{}, june); len(f.Values) != 0 {
		t.Errorf("%d cells over no ground", len(f.Values))
	}
	f := s.Hours(GridOver(squareOf(4).Bounds(), 1), geo.Region{}, june)
	for _, hours := range f.Values {
		if !math.IsNaN(hours) {
			t.Errorf("%g h where none was asked for", hours)
		}
	}
	s.Place = orb.Point{15, 78}
	for _, hours := range s.Hours(GridOver(squareOf(4).Bounds(), 1), squareOf(4), Season{From: Date{12, 1}, To: Date{12, 31}}).Values {
		if hours != 0 {
			t.Errorf("%g h of sun in the polar night", hours)
		}
	}
}

// A season's mean is that of its days, as their months weigh.
func TestHoursAreWeighted(t *testing.T) {
	at := func(season Season) float64 {
		s := Scene{Place: orb.Point{0, 50}, Obstacles: []Obstacle{{Shape: Prism{squareOf(6), 0, 5}}}, MinElevation: LeastElevation}
		spot := oblong{at: geo.XY{Y: 5}, long: 0.5, wide: 0.5}.region()
		return s.Hours(GridOver(spot.Bounds(), 1), spot, season).Values[0]
	}
	both := Season{From: Date{4, 30}, To: Date{5, 1}}
	both.Weights[3], both.Weights[4] = 3, 1
	april, may := at(Season{From: Date{4, 30}, To: Date{4, 30}}), at(Season{From: Date{5, 1}, To: Date{5, 1}})
	if got, want := at(both), (3*april+may)/4; math.Abs(got-want) > 0.01 || april == may {
		t.Errorf("%.4f h, want %.4f of %.4f and %.4f", got, want, april, may)
	}
}

// Ground by its slope: the first slope counts where two overlap, level ground
// lies beside them, and each part gets what a yard of that slope alone gets.
func TestHoursOnSlopes(t *testing.T) {
	west, east := oblong{at: geo.XY{X: -5}, long: 5, wide: 8}.region(), oblong{at: geo.XY{X: 2}, long: 4, wide: 8}.region()
	s := Scene{Place: orb.Point{0, 50}, Obstacles: []Obstacle{{Shape: Prism{squareOf(4), 0, 5}}}, MinElevation: LeastElevation}
	grid, all := GridOver(squareOf(16).Bounds(), 1), squareOf(16)
	of := func(slopes ...Slope) []float64 {
		s.Slopes = slopes
		return s.Hours(grid, all, Season{From: Date{10, 15}, To: Date{10, 15}}).Values
	}
	level, north, south := of(), of(Slope{all, 0.3, 0}), of(Slope{all, 0.3, 180})
	mixed := of(Slope{west, 0.3, 0}, Slope{east, 0.3, 180})
	for cell, got := range mixed {
		want := level[cell]
		switch p := grid.Center(cell); {
		case west.Contains(p):
			want = north[cell]
		case east.Contains(p):
			want = south[cell]
		}
		if got != want {
			t.Errorf("%v: %g h, want %g", grid.Center(cell), got, want)
		}
	}
	if corner := 0; !(north[corner] < level[corner]) {
		t.Errorf("a north slope gets %g h, level ground %g", north[corner], level[corner])
	}
}
