package material

import (
	"math"

	"example.org/turfplat/geo"
)

// A Spray is a product put down in a carrier, mixed in tanks.
type Spray struct {
	Product Rate   // by weight or as a liquid
	Carrier Rate   // of the finished mix, product included
	Tank    Volume // of mix in a full tank
}

// A Fill is one tank.
type Fill struct {
	Area    geo.Area // that it is for
	Mix     Volume   // to which the tank is filled
	Product Amount   // that goes into it
}

// Fills are the tanks of a job: full ones, all alike, and the last, mixed for
// exactly the ground that is left; none if that is nothing.
type Fills struct {
	Full  Fill
	Count int // of full tanks
	Last  Fill
}

// wholeTanks is how near to a full tank the last one counts as full.
const wholeTanks = 1e-9

// Fills divides the mix for an area into tanks. Product and mix are the rates
// times the area, without any overage.
func (s Spray) Fills(ground geo.Area) (Fills, error) {
	if err := s.check(ground); err != nil {
		return Fills{}, err
	}
	per := geo.Area(float64(s.Tank) / s.Carrier.PerM2)
	tanks := float64(ground / per)
	if tanks > math.MaxInt32 {
		return Fills{}, inputErrorf("use a larger tank", "the job takes more than %d tanks", math.MaxInt32)
	}
	whole := math.Floor(tanks + wholeTanks)
	fills := Fills{Full: s.fill(per), Count: int(whole)}
	if tanks-whole > wholeTanks {
		fills.Last = s.fill(ground - geo.Area(whole)*per)
	}
	return fills, nil
}

func (s Spray) fill(ground geo.Area) Fill {
	return Fill{ground, Volume(s.Carrier.Over(ground).Size), s.Product.Over(ground)}
}

func (s Spray) check(ground geo.Area) error {
	switch {
	case s.Product.Of != Itself:
		return inputErrorf("turn it into a rate of the product", "a tank is filled with a product, not with %s", s.Product.Of.name())
	case s.Carrier.By == Weight || !(s.Carrier.PerM2 > 0):
		return inputErrorf("write it as in 1 gal / 1000 ft2", "the carrier has no volume on an area")
	case !(s.Tank > 0):
		return inputErrorf("write it as in 4 gal", "the tank holds nothing")
	case !(ground >= 0):
		return inputErrorf("", "there is no such ground as %s m2", number(float64(ground)))
	case s.Product.By != Weight && s.Product.PerM2 > s.Carrier.PerM2:
		return inputErrorf("check both rates", "there is more product than mix")
	}
	return nil
}
