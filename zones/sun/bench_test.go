package sun

import (
	"fmt"
	"testing"

	"github.com/paulmach/orb"
)

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
			scene.Obstacles = obstaclesOf(inventedYard(inventedSource(1), size.side, size.objects))
			for b.Loop() {
				scene.Hours(GridOver(yard.Bounds(), 0.25), yard, season)
			}
		})
	}
}
