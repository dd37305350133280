package sun

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// inventedYard returns a yard of some objects over a square of a side in
// metres: a third houses and sheds, most of the rest trees, some fences and
// hedges.
func inventedYard(rng *rand.Rand, side float64, objects int) []Obstacle {
	var yard []Obstacle
	for i := range objects {
		x, y := rng.Float64()*side-side/2, rng.Float64()*side-side/2
		switch {
		case i%3 == 0:
			yard = append(yard, Obstacle{Shape: Prism{inventedHouse(rng, x, y), 0, 3 + 6*rng.Float64()}})
		case i%10 == 4:
			line := geo.Line{{X: x, Y: y}, {X: x + 10*rng.Float64(), Y: y + 10*rng.Float64()}}
			yard = append(yard, Obstacle{Shape: Screen{line, 1 + rng.Float64(), rng.Float64()}})
		default:
			height := 4 + 10*rng.Float64()
			crown := Crown{geo.XY{X: x, Y: y}, 1.5 + 3*rng.Float64(), height / 4, height, CrownForm(i % 2)}
			yard = append(yard, Obstacle{Shape: crown, Pass: Pass{InLeaf: 0.15, Bare: 0.6}})
		}
	}
	return yard
}

// inventedHouse is a rectangle or an L round a place.
func inventedHouse(rng *rand.Rand, x, y float64) geo.Region {
	w, h := 4+8*rng.Float64(), 3+6*rng.Float64()
	ring := geo.Ring{{}, {X: w}, {X: w, Y: h}, {Y: h}}
	if rng.IntN(2) == 0 {
		ring = geo.Ring{{}, {X: w}, {X: w, Y: h / 2}, {X: w / 2, Y: h / 2}, {X: w / 2, Y: h}, {Y: h}}
	}
	turn := Degrees(360 * rng.Float64()).heading()
	for i, p := range ring {
		ring[i] = geo.XY{X: x + p.X*turn.X - p.Y*turn.Y, Y: y + p.X*turn.Y + p.Y*turn.X}
	}
	return regionOf(ring)
}

func regionOf(ring geo.Ring) geo.Region {
	r, err := geo.RegionOf([]geo.Ring{ring})
	if err != nil {
		panic(err)
	}
	return r
}

func squareOf(side float64) geo.Region {
	h := side / 2
	return regionOf(geo.Ring{{X: -h, Y: -h}, {X: h, Y: -h}, {X: h, Y: h}, {X: -h, Y: h}})
}

// BenchmarkHours is a season of seven months over square yards at 0.25 m.
func BenchmarkHours(b *testing.B) {
	season := Season{From: Date{4, 1}, To: Date{10, 31}}
	for _, size := range []struct {
		side    float64
		objects int
	}{{40, 0}, {40, 15}, {40, 30}, {40, 60}, {80, 30}} {
		b.Run(fmt.Sprintf("side=%gm/objects=%d", size.side, size.objects), func(b *testing.B) {
			yard := squareOf(size.side)
			scene := Scene{Place: orb.Point{-93.27, 44.98}, MinElevation: LeastElevation}
			scene.Obstacles = inventedYard(rand.New(rand.NewPCG(1, 2)), size.side, size.objects)
			for b.Loop() {
				scene.Hours(GridOver(yard.Bounds(), 0.25), yard, season)
			}
		})
	}
}
