package sun

import (
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// Sums close on every yard: possible = got + taken, over the season and over
// each day; and a spot gets what its cell gets.
func TestExplainCloses(t *testing.T) {
	for n := range uint64(8) {
		rng := inventedSource(n)
		s := Scene{Place: orb.Point{-93, 45}, Obstacles: obstaclesOf(inventedYard(rng, 30, 12)), MinElevation: LeastElevation}
		if n%2 == 1 {
			s.Slopes = []Slope{{oblong{at: geo.XY{X: -10}, long: 10, wide: 30}.region(), 0.5, 0}}
		}
		season := Season{From: Date{9, 1}, To: Date{11, 20}}
		field := s.Hours(GridOver(squareOf(30).Bounds(), 1), squareOf(30), season)
		cells, spots := cellsOf(rng, field.Grid, 4)
		for i, spot := range spots {
			a := s.Explain(spot, season)
			if math.Abs(a.Got-field.Values[cells[i]]) > 1e-9 {
				t.Errorf("yard %d, %v gets %g h, its cell %g", n, spot, a.Got, field.Values[cells[i]])
			}
			taken := 0.0
			for j, l := range a.Losses {
				taken += l.Hours
				if l.Hours <= 0 || j > 0 && l.Hours > a.Losses[j-1].Hours {
					t.Errorf("yard %d, %v: losses out of order: %+v", n, spot, a.Losses)
				}
			}
			if math.Abs(a.Possible-a.Got-taken) > 1e-9 {
				t.Errorf("yard %d, %v: %g h possible, %g got, %g taken", n, spot, a.Possible, a.Got, taken)
			}
			if len(a.Days) != 3 {
				t.Errorf("yard %d: %d days told, want the 15th of September, October and November", n, len(a.Days))
			}
			for _, d := range a.Days {
				checkDay(t, d)
			}
		}
	}
}

// checkDay proves a day's light by its shades.
func checkDay(t *testing.T, d Day) {
	t.Helper()
	light := 0.0
	steps := int(math.Ceil((d.Set - d.Rise) * 60))
	step := (d.Set - d.Rise) / float64(steps)
	for i := range steps {
		at, pass := d.Rise+(float64(i)+0.5)*step, 1.0
		for _, shade := range d.Shades {
			if shade.From < at && at < shade.To {
				pass *= shade.Pass
			}
		}
		light += pass * step
	}
	if math.Abs(light-d.Got) > 1e-9 {
		t.Errorf("%v: %g h of light, %g by its shades", d.Date, d.Got, light)
	}
}

// A wall north to south, as long as the day: the spot a metre east of it loses
// the afternoon, from when the sun stands over the wall's top.
func TestExplainOneWall(t *testing.T) {
	wall := Obstacle{ID: "osm:way/7", Name: "west wall", Shape: Screen{Line: geo.Line{{X: -1, Y: -1e4}, {X: -1, Y: 1e4}}, Height: 100}}
	s := Scene{Place: orb.Point{0, 0}, Obstacles: []Obstacle{wall}, MinElevation: LeastElevation}
	a := s.Explain(geo.XY{}, Season{From: Date{3, 20}, To: Date{3, 20}})
	if len(a.Losses) != 1 || len(a.Days) != 1 || len(a.Days[0].Shades) != 1 {
		t.Fatalf("%+v, want one loss and one day of one shade", a)
	}
	l, d := a.Losses[0], a.Days[0]
	if l.Obstacle != 0 || l.ID != "osm:way/7" || l.Name != "west wall" {
		t.Errorf("the loss is put down to %+v", l)
	}
	// On the equator at the equinox the sun climbs straight up, 15 degrees an
	// hour: it stands 5 degrees high 20 minutes after 6, less what air adds.
	noon := math.Atan2(1, 100-sampleHeight) / degree / 15 // h past noon
	for _, figure := range []struct {
		name      string
		got, want float64
	}{
		{"possible", a.Possible, 2 * (6 - 1.0/3 + 0.0109)},
		{"taken", l.Hours, 6 - 1.0/3 + 0.0109 - noon},
		{"rise", d.Rise, 6 + 1.0/3 - 0.0109},
		{"shade from", d.Shades[0].From, 12 + noon},
		{"shade to", d.Shades[0].To, d.Set},
	} {
		if math.Abs(figure.got-figure.want) > 0.01 {
			t.Errorf("%s: %.4f h, want %.4f", figure.name, figure.got, figure.want)
		}
	}
}

// What several things take at once is shared: alike among walls, by density
// among crowns, and nothing is left for a crown behind a wall.
func TestShares(t *testing.T) {
	for _, tt := range []struct {
		name   string
		covers []cover
		want   [3]float64 // of obstacles 0, 1, 2
	}{
		{"none", nil, [3]float64{}},
		{"one wall", []cover{{1, 0}}, [3]float64{0, 1, 0}},
		{"two walls", []cover{{0, 0}, {2, 0}}, [3]float64{0.5, 0, 0.5}},
		{"a wall and a crown", []cover{{0, 0.3}, {2, 0}}, [3]float64{0, 0, 1}},
		{"one crown", []cover{{0, 0.3}}, [3]float64{0.7, 0, 0}},
		{"two alike", []cover{{0, 0.5}, {1, 0.5}}, [3]float64{0.375, 0.375, 0}},
		{"one twice as dense", []cover{{0, 0.5}, {1, 0.25}}, [3]float64{0.875 / 3, 1.75 / 3, 0}},
		{"glass", []cover{{0, 1}, {1, 0.5}}, [3]float64{0, 0.5, 0}},
	} {
		taken := make([]float64, 4)
		share(tt.covers, 1, taken)
		for i, want := range tt.want {
			if got := taken[i-Ground]; math.Abs(got-want) > 1e-12 {
				t.Errorf("%s: obstacle %d takes %g, want %g", tt.name, i, got, want)
			}
		}
	}
}

func TestExplainBehindTheGround(t *testing.T) {
	s := Scene{Place: orb.Point{0, 45}, MinElevation: LeastElevation}
	s.Slopes = []Slope{{squareOf(10), 1, 0}} // falls to the north at 45 degrees
	a := s.Explain(geo.XY{}, Season{From: Date{12, 21}, To: Date{12, 21}})
	if a.Got != 0 || len(a.Losses) != 1 || a.Losses[0].Obstacle != Ground || a.Losses[0].Name != "sloping ground" {
		t.Errorf("%+v, want all taken by the ground", a)
	}
	if shades := a.Days[0].Shades; len(shades) != 1 || shades[0].Obstacle != Ground {
		t.Errorf("shades %+v, want the ground's", shades)
	}
	if a := s.Explain(geo.XY{X: 8}, Season{From: Date{12, 21}, To: Date{12, 21}}); a.Got != a.Possible || len(a.Losses) > 0 {
		t.Errorf("level ground beside the slope: %+v", a)
	}
}

func TestExplainDays(t *testing.T) {
	for _, tt := range []struct {
		name   string
		lat    float64
		season Season
		want   []Date
	}{
		{"one day", 45, Season{From: Date{6, 21}, To: Date{6, 21}}, []Date{{6, 21}}},
		{"months", 45, Season{From: Date{4, 20}, To: Date{7, 15}}, []Date{{5, 15}, {6, 15}, {7, 15}}},
		{"over the new year", -34, Season{From: Date{12, 1}, To: Date{1, 31}}, []Date{{12, 15}, {1, 15}}},
		{"no 15th", 45, Season{From: Date{6, 20}, To: Date{6, 24}}, []Date{{6, 22}}},
		{"polar night", 80, Season{From: Date{12, 1}, To: Date{12, 31}}, []Date{{12, 15}}},
	} {
		s := Scene{Place: orb.Point{0, tt.lat}, MinElevation: LeastElevation}
		a := s.Explain(geo.XY{}, tt.season)
		var got []Date
		for _, d := range a.Days {
			got = append(got, d.Date)
			if math.Abs(d.Got-(d.Set-d.Rise)) > 1e-9 {
				t.Errorf("%s: %v: %g h from %g to %g", tt.name, d.Date, d.Got, d.Rise, d.Set)
			}
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}
