package lanes

import (
	"fmt"
	"math"
	"math/rand/v2"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// A sample is a yard with a name.
type sample struct {
	name string
	yard Yard
}

// generated invents yards of eight families, 25 of each.
func generated(t failer) []sample {
	var samples []sample
	for family, invent := range []func(*rand.Rand) ([]geo.Ring, []geo.Ring){rectangles, cornered, horseshoes, kidneys, wedges, stars, islands, parcels} {
		for i := range 25 {
			random := rand.New(rand.NewPCG(uint64(family), uint64(i)))
			lawns, beds := invent(random)
			y := yardOfRings(t, turnedBy(random.Float64()*math.Pi, lawns), beds)
			for range i % 4 {
				y.Posts = append(y.Posts, Post{geo.XY{X: 24*random.Float64() - 12, Y: 16*random.Float64() - 8}, CommonPractice().TrunkRing})
			}
			name := []string{"rectangle", "L", "U", "kidney", "wedge", "star", "islands", "three lawns"}[family]
			samples = append(samples, sample{fmt.Sprintf("%s %d", name, i+1), y})
		}
	}
	return samples
}

func turnedBy(angle float64, rings []geo.Ring) []geo.Ring {
	sin, cos := math.Sincos(angle)
	for _, r := range rings {
		for i, p := range r {
			r[i] = geo.XY{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos}
		}
	}
	return rings
}

// yardOfRings lays out lawns with beds in them.
func yardOfRings(t failer, lawns, beds []geo.Ring) Yard {
	join := func(rings []geo.Ring) geo.Region {
		var regions []geo.Region
		for _, r := range rings {
			regions = append(regions, must[geo.Region](t)(geo.RegionOf([]geo.Ring{r})))
		}
		return must[geo.Region](t)(geo.Union(regions...))
	}
	lawn, bed := join(lawns), join(beds)
	return yardOf(must[geo.Region](t)(geo.Difference(lawn, bed)), zones.Cover{Kind: zones.Bed, Region: must[geo.Region](t)(geo.Intersection(bed, lawn))})
}

// drawn draws a length, m.
func drawn(random *rand.Rand, from, to float64) float64 { return from + (to-from)*random.Float64() }

func rectangles(r *rand.Rand) (lawns, beds []geo.Ring) {
	a, b := drawn(r, 4, 30), drawn(r, 3, 20)
	return []geo.Ring{rectangle(-a, -b, a, b)}, nil
}

func cornered(r *rand.Rand) (lawns, beds []geo.Ring) {
	a, b, c, d := drawn(r, 15, 40), drawn(r, 15, 40), drawn(r, 5, 13), drawn(r, 5, 13)
	return []geo.Ring{{{X: 0, Y: 0}, {X: a, Y: 0}, {X: a, Y: c}, {X: d, Y: c}, {X: d, Y: b}, {X: 0, Y: b}}}, nil
}

func horseshoes(r *rand.Rand) (lawns, beds []geo.Ring) {
	a, b, c := drawn(r, 15, 35), drawn(r, 15, 30), drawn(r, 4, 7)
	return []geo.Ring{{{X: 0, Y: 0}, {X: a, Y: 0}, {X: a, Y: b}, {X: a - c, Y: b}, {X: a - c - 1, Y: c}, {X: c, Y: c}, {X: c, Y: b}, {X: 0, Y: b}}}, nil
}

func kidneys(r *rand.Rand) (lawns, beds []geo.Ring) {
	ring := regular(60, 0, 0, drawn(r, 8, 20))
	dent := drawn(r, 0.1, 0.45)
	for i, p := range ring {
		turn := 2 * math.Pi * float64(i) / 60
		ring[i] = p.Times(1 - dent*math.Exp(-4*(1-math.Cos(turn))))
	}
	return []geo.Ring{ring}, nil
}

func wedges(r *rand.Rand) (lawns, beds []geo.Ring) {
	a := drawn(r, 20, 50)
	return []geo.Ring{{{X: 0, Y: 0}, {X: a, Y: drawn(r, -4, 4)}, {X: a + drawn(r, -5, 5), Y: drawn(r, 6, 12)}, {X: 0, Y: drawn(r, 12, 25)}}}, nil
}

func stars(r *rand.Rand) (lawns, beds []geo.Ring) {
	n := 5 + r.IntN(6)
	ring := regular(n, 0, 0, 1)
	for i, p := range ring {
		ring[i] = p.Times(drawn(r, 10, 26))
	}
	return []geo.Ring{ring}, nil
}

func islands(r *rand.Rand) (lawns, beds []geo.Ring) {
	for range 1 + r.IntN(4) {
		beds = append(beds, regular(5+r.IntN(9), drawn(r, -18, 18), drawn(r, -12, 12), drawn(r, 0.8, 4)))
	}
	return []geo.Ring{rectangle(-drawn(r, 20, 26), -drawn(r, 14, 20), drawn(r, 20, 26), drawn(r, 14, 20))}, beds
}

func parcels(r *rand.Rand) (lawns, beds []geo.Ring) {
	x := -30.0
	for range 3 {
		wide := drawn(r, 6, 20)
		lawns = append(lawns, rectangle(x, -drawn(r, 4, 12), x+wide, drawn(r, 4, 12)))
		x += wide + drawn(r, 1, 5)
	}
	return lawns, nil
}
