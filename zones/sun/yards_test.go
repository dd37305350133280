package sun

import (
	"math"
	"math/rand/v2"

	"example.org/turfplat/geo"
)

// A thing is an invented object of a yard twice: as the package takes it, and
// as a form that a ray meets, written independently.
type thing struct {
	Obstacle
	form rayForm
}

// oblong is a rectangle on the ground, turned by an angle in radians.
type oblong struct {
	at         geo.XY
	long, wide float64 // half sides, m
	turn       float64
}

// out returns the position that lies u along the long side of the oblong and
// v to the left of it.
func (o oblong) out(u, v float64) geo.XY {
	sin, cos := math.Sincos(o.turn)
	return geo.XY{X: o.at.X + u*cos - v*sin, Y: o.at.Y + u*sin + v*cos}
}

func (o oblong) region() geo.Region {
	return regionOf(geo.Ring{o.out(-o.long, -o.wide), o.out(o.long, -o.wide), o.out(o.long, o.wide), o.out(-o.long, o.wide)})
}

// inventedSource is the source of one invented yard.
func inventedSource(n uint64) *rand.Rand { return rand.New(rand.NewPCG(20261125, n)) }

// inventedYard returns things strewn over a square of a side in metres.
func inventedYard(rng *rand.Rand, side float64, objects int) []thing {
	makers := []func(*rand.Rand, oblong) thing{tree, shed, tree, gabledHouse, cornerHouse, grove, fence, hedge, tree, hippedHouse, carport, leanTo}
	var yard []thing
	for i := range objects {
		at := geo.XY{X: (rng.Float64() - 0.5) * side, Y: (rng.Float64() - 0.5) * side}
		o := oblong{at, 3 + 4*rng.Float64(), 1 + 2*rng.Float64(), 2 * math.Pi * rng.Float64()}
		yard = append(yard, makers[i%len(makers)](rng, o))
	}
	return yard
}

func obstaclesOf(yard []thing) []Obstacle {
	var obstacles []Obstacle
	for _, t := range yard {
		obstacles = append(obstacles, t.Obstacle)
	}
	return obstacles
}

func tree(rng *rand.Rand, o oblong) thing {
	c := Crown{At: o.at, Radius: 1 + 3*rng.Float64(), Base: 0.5 + 2*rng.Float64(), Form: CrownForm(rng.IntN(2))}
	c.Top = c.Base + 2 + 8*rng.Float64()
	return thing{Obstacle{Shape: c, Pass: Pass{rng.Float64() / 2, 0.5 + rng.Float64()/2}}, rayCrown(c)}
}

func shed(rng *rand.Rand, o oblong) thing {
	top := 2 + 6*rng.Float64()
	return thing{Obstacle{Shape: Prism{o.region(), 0, top}}, rayBox{o, 0, top}}
}

// carport has no walls.
func carport(rng *rand.Rand, o oblong) thing {
	top := 2.4 + rng.Float64()
	return thing{Obstacle{Shape: Prism{o.region(), top - 0.3, top}}, rayBox{o, top - 0.3, top}}
}

func cornerHouse(rng *rand.Rand, o oblong) thing {
	return bend(o, 0, 3+4*rng.Float64(), Pass{})
}

// grove is a wood of one height: crowns from a base up.
func grove(rng *rand.Rand, o oblong) thing {
	return bend(o, 2, 6+4*rng.Float64(), Pass{0.2, 0.6})
}

// bend is an L of two boxes.
func bend(o oblong, base, top float64, pass Pass) thing {
	plan := regionOf(geo.Ring{
		o.out(-o.long, -o.wide), o.out(o.long, -o.wide), o.out(o.long, 0),
		o.out(0, 0), o.out(0, 3*o.wide), o.out(-o.long, 3*o.wide),
	})
	main, wing := o, o
	main.at, main.wide = o.out(0, -o.wide/2), o.wide/2
	wing.at, wing.long, wing.wide = o.out(-o.long/2, o.wide), o.long/2, 2*o.wide
	return thing{Obstacle{Shape: Prism{plan, base, top}, Pass: pass}, rayEither{rayBox{main, base, top}, rayBox{wing, base, top}}}
}

func gabledHouse(rng *rand.Rand, o oblong) thing {
	r := Roof{Plan: o.region(), Eave: 2.5 + rng.Float64(), Form: Gabled}
	r.Ridge = r.Eave + 1 + 2*rng.Float64()
	return thing{Obstacle{Shape: r}, rayRoof{rayBox{o, 0, r.Ridge}, r, math.Inf(1)}}
}

func hippedHouse(rng *rand.Rand, o oblong) thing {
	r := Roof{Plan: o.region(), Eave: 2.5 + rng.Float64(), Form: Hipped}
	r.Ridge = r.Eave + 1 + 2*rng.Float64()
	return thing{Obstacle{Shape: r}, rayRoof{rayBox{o, 0, r.Ridge}, r, o.long}}
}

// leanTo slopes along its long side.
func leanTo(rng *rand.Rand, o oblong) thing {
	down := Degrees(90 - o.turn/degree)
	r := Roof{Plan: o.region(), Eave: 2, Ridge: 3 + rng.Float64(), Form: Skillion, Bearing: &down}
	return thing{Obstacle{Shape: r}, raySlant{rayBox{o, 0, r.Ridge}, r}}
}

func fence(rng *rand.Rand, o oblong) thing {
	s := Screen{Line: geo.Line{o.out(-o.long, 0), o.out(o.long, 0)}, Height: 1 + rng.Float64()}
	o.wide = 0
	return thing{Obstacle{Shape: s}, rayBox{o, 0, s.Height}}
}

func hedge(rng *rand.Rand, o oblong) thing {
	s := Screen{Line: geo.Line{o.out(-o.long, 0), o.out(o.long, 0)}, Height: 1 + 2*rng.Float64(), Width: 1}
	o.wide = 0.5
	return thing{Obstacle{Shape: s}, rayBox{o, 0, s.Height}}
}

func regionOf(ring geo.Ring) geo.Region {
	r, err := geo.RegionOf([]geo.Ring{ring})
	if err != nil {
		panic(err)
	}
	return r
}

func squareOf(side float64) geo.Region {
	return oblong{long: side / 2, wide: side / 2}.region()
}
