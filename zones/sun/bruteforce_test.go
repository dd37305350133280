package sun

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// rayHours is the witness: mean hours a day of direct sun at spots, ray by
// ray, in steps of a minute, on each day of a season.
func rayHours(yard []thing, place orb.Point, season Season, ground Slope, spots []geo.XY) []float64 {
	sums := make([]float64, len(spots))
	first := time.Date(2026, season.From.Month, season.From.Day, 0, 0, 30, 0, time.UTC)
	last := time.Date(2026, season.To.Month, season.To.Day, 0, 0, 30, 0, time.UTC)
	days := 0.0
	for day := first; !day.After(last); day = day.AddDate(0, 0, 1) {
		days++
		midnight := day.Add(-time.Duration(place.Lon() / 15 * float64(time.Hour)))
		passes := make([]float64, len(yard))
		for i, t := range yard {
			passes[i] = witnessPass(t.Pass, day, place.Lat())
		}
		for minute := range 24 * 60 {
			p := At(place.Lon(), place.Lat(), midnight.Add(time.Duration(minute)*time.Minute))
			if p.Elevation < LeastElevation {
				continue
			}
			for i, spot := range spots {
				sums[i] += lightAt(yard, passes, rayTo(spot, p).over(ground)) / 60
			}
		}
	}
	for i := range sums {
		sums[i] /= days
	}
	return sums
}

func lightAt(yard []thing, passes []float64, r ray) float64 {
	light := 1.0
	if r.dz <= 0 {
		return 0
	}
	for i, t := range yard {
		if light > 0 && passes[i] < 1 && t.form.meets(r) {
			light *= passes[i]
		}
	}
	return light
}

// witnessPass is the share that a tree passes on a day: leaves come out over
// three weeks from 15 April, four days later a degree north of 40, and fall
// over three weeks from 10 October.
func witnessPass(p Pass, day time.Time, lat float64) float64 {
	spring := time.Date(2026, 4, 15, 0, 0, 30, 0, time.UTC).AddDate(0, 0, int(math.Round(4*(min(48, max(30, math.Abs(lat)))-40))))
	autumn := time.Date(2026, 10, 10, 0, 0, 30, 0, time.UTC)
	if lat < 0 {
		day = day.AddDate(0, -6, 0)
		day = time.Date(2026, day.Month(), day.Day(), 0, 0, 30, 0, time.UTC)
	}
	weeks := func(since time.Time) float64 { return max(0, min(1, day.Sub(since).Hours()/24/21)) }
	leaf := weeks(spring) - weeks(autumn)
	return leaf*p.InLeaf + (1-leaf)*p.Bare
}

// The hours of every cell looked at, on its edges too, are within a quarter of
// an hour of the witness's, and within three minutes on average.
func TestHoursAgainstRays(t *testing.T) {
	const yards, perYard = 30, 8
	sum, worst := 0.0, 0.0
	for n := range yards {
		rng := inventedSource(uint64(n))
		yard := inventedYard(rng, 30, 12)
		place := orb.Point{rng.Float64()*360 - 180, math.Round(rng.Float64()*110 - 50)}
		from := rng.IntN(300)
		season := Season{From: dateOf(from), To: dateOf(min(364, from+rng.IntN(120)))}
		var ground Slope
		if n%3 == 0 {
			ground = Slope{squareOf(30), rng.Float64() / 5, Degrees(rng.Float64() * 360)}
		}
		scene := Scene{Place: place, Obstacles: obstaclesOf(yard), Slopes: []Slope{ground}, MinElevation: LeastElevation}
		field := scene.Hours(GridOver(squareOf(30).Bounds(), 0.5), squareOf(30), season)
		cells, spots := cellsOf(rng, field.Grid, perYard)
		for i, want := range rayHours(yard, place, season, ground, spots) {
			off := math.Abs(field.Values[cells[i]] - want)
			sum, worst = sum+off, max(worst, off)
			if off > 0.25 {
				t.Errorf("yard %d at %.0f, %v, %v: %.3f h, rays %.3f", n, place.Lat(), season, spots[i], field.Values[cells[i]], want)
			}
		}
	}
	mean := sum / (yards * perYard)
	t.Logf("mean error %.4f h, worst %.3f h", mean, worst)
	if mean > 0.05 {
		t.Errorf("mean error %.4f h, want 0.05 at most", mean)
	}
}

func cellsOf(rng *rand.Rand, g Grid, n int) (cells []int, spots []geo.XY) {
	for range n {
		cell := rng.IntN(g.Cells())
		cells, spots = append(cells, cell), append(spots, g.Center(cell))
	}
	return cells, spots
}
