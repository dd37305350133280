package track

import (
	"math"
	"testing"

	"example.org/turfplat/geo"
)

// TestSmoothingTakesNothingOffCorners: the parabola filter leaves the area of
// a lawn walked without error; a plain mean over as long takes 4 % off.
func TestSmoothingTakesNothingOffCorners(t *testing.T) {
	for _, tt := range []struct {
		lawn lawn
		tol  float64 // share of the area
	}{
		{lawns[2], 0.001}, {lawns[4], 0.001}, {lawns[9], 0.0001},
		{lawns[11], 0.01}, // the corners of a strip's end stand nearer than the filter reaches
	} {
		var p path
		p.interval = 1
		length := ringLength(tt.lawn.ring)
		steps := math.Round(length)
		for i := range int(steps) * 2 {
			at := placeOn(tt.lawn.ring, float64(i)*length/steps)
			p.stations = append(p.stations, station{at: at, time: float64(i), until: float64(i), weight: 1})
		}
		s := newSmoother(p, smoothSpan.Value)
		n := int(steps)
		ring := s.smoothed()[n/2 : n/2+n]
		want := math.Abs(signedArea(tt.lawn.ring))
		if got := signedArea(ring); math.Abs(got-want) > tt.tol*want {
			t.Errorf("%s: %.3f m2, want %.3f within %g", tt.lawn.name, got, want, tt.tol)
		}
	}
}

func TestWeightsSumToOne(t *testing.T) {
	var p path
	p.interval = 1
	for i := range 40 {
		u := float64(i) + 0.4*math.Sin(float64(7*i))
		p.stations = append(p.stations, station{at: geo.XY{X: u}, time: u, until: u, weight: 1 / float64(1+i%3)})
	}
	s := newSmoother(p, 4)
	for i := range p.stations {
		var sum, first float64
		s.weights(i, func(j int, w float64) {
			sum += w
			first += w * (p.stations[j].time - p.stations[i].time)
		})
		if math.Abs(sum-1) > 1e-9 || math.Abs(first) > 1e-9 {
			t.Errorf("station %d: weights sum to %.12f, their first moment to %.2g", i, sum, first)
		}
	}
}

func TestDivision(t *testing.T) {
	places := resampled(elbow(30, 12), 120) // starts at a corner; a metre apart
	for _, starts := range partings(places, 8, 4) {
		if len(starts) != 6 {
			continue
		}
		for k, want := range []int{0, 30, 42, 60, 78, 90} {
			if d := starts[k] - want; d < -1 || d > 1 {
				t.Errorf("side %d starts at %d, want %d", k, starts[k], want)
			}
		}
		return
	}
	t.Error("no division into six")
}

func TestOutlineKeepsTheArea(t *testing.T) {
	for _, l := range lawns {
		for _, grow := range []float64{0.97, 1, 1.03} {
			want := grow * math.Abs(signedArea(l.ring))
			ring := resampled(l.ring, 300)
			r, err := outlined(ring, want)
			if err != nil {
				t.Fatalf("%s: %v", l.name, err)
			}
			shell := r.Polygons()[0].Shell
			if got := signedArea(shell); math.Abs(got-want) > 1e-4*want {
				t.Errorf("%s: outline has %.4f m2, want %.4f", l.name, got, want)
			}
			if len(shell) > len(ring)/2 {
				t.Errorf("%s: %d of %d vertices are left", l.name, len(shell), len(ring))
			}
		}
	}
}

// TestMatchedLaps: a lap walked at another pace, standing in between, is laid
// on the first without rounding its corners.
func TestMatchedLaps(t *testing.T) {
	slow, fast := lap{}, lap{}
	for i := range 100 {
		slow.at = append(slow.at, placeOn(rectangle(30, 20), float64(i)))
		fast.at = append(fast.at, placeOn(rectangle(30, 20), 3+100*math.Pow(float64(i)/100, 1.3)))
	}
	slow.stations, fast.stations = make([]int, 100), make([]int, 100)
	m := meanOf([]lap{slow, fast})
	if got := signedArea(m.at); math.Abs(got-600) > 3 {
		t.Errorf("mean of two laps has %.2f m2, want 600 within 3", got)
	}
	for k := range m.phase {
		for i := 1; i < len(m.phase[k]); i++ {
			if m.phase[k][i] < m.phase[k][i-1]-1 {
				t.Errorf("lap %d runs back at place %d", k, i)
			}
		}
	}
}

func TestNarrowLapsAreNotFolded(t *testing.T) {
	thin := rectangle(40, 2)
	inside := rectangle(40, -0.3)
	for _, tt := range []struct {
		name string
		laps [][]geo.XY
		want float64 // mean signed area
	}{
		{"all to the left", [][]geo.XY{thin, thin}, 80},
		{"all to the right", [][]geo.XY{reversed(thin), reversed(thin)}, 80},
		{"one the other way round", [][]geo.XY{thin, reversed(thin), thin}, 80},
		{"one turned inside out by errors", [][]geo.XY{thin, inside}, 34},
	} {
		var laps []lap
		for _, at := range tt.laps {
			laps = append(laps, lap{make([]int, len(at)), at})
		}
		var got float64
		for _, l := range counterClockwise(laps) {
			got += signedArea(l.at) / float64(len(laps))
		}
		if math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("%s: %.2f m2, want %.2f", tt.name, got, tt.want)
		}
	}
}

func TestSharedGround(t *testing.T) {
	lawn := rectangle(30, 20)
	for _, tt := range []struct {
		name           string
		other          []geo.XY
		both, inA, inB float64
	}{
		{"itself", lawn, 600, 600, 600},
		{"the other way round", reversed(lawn), 600, 600, 600},
		{"a bed within", []geo.XY{{X: 10, Y: 6}, {X: 18, Y: 6}, {X: 18, Y: 12}, {X: 10, Y: 12}}, 48, 600, 48},
		{"a corner", []geo.XY{{X: 18, Y: 8}, {X: 48, Y: 8}, {X: 48, Y: 28}, {X: 18, Y: 28}}, 144, 600, 600},
		{"apart", []geo.XY{{X: 40}, {X: 50}, {X: 50, Y: 10}, {X: 40, Y: 10}}, 0, 600, 100},
		{"nothing", nil, 0, 600, 0},
	} {
		both, inA, inB := shared(lawn, tt.other)
		for _, v := range [][2]float64{{both, tt.both}, {inA, tt.inA}, {inB, tt.inB}} {
			if math.Abs(v[0]-v[1]) > 0.04*600 {
				t.Errorf("%s: %.1f m2 in both, %.1f and %.1f in each, want %g, %g, %g", tt.name, both, inA, inB, tt.both, tt.inA, tt.inB)
				break
			}
		}
	}
}
