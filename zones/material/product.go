package material

import (
	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A Product is a material as its pack, tag or supplier describes it. What is
// not said is zero.
type Product struct {
	Name     string
	Grade    Grade
	Strength Strength
	Seed     SeedLot
	Density  Density
	Liquid   bool // it is poured: where its density is known, it is measured by volume
	Packs    []Pack
	Covers   geo.Area // the ground that the pack is for, by its own words
}

// Rate returns the rate at which the product goes down to give a wanted rate
// of what is in it, or of itself.
//
//	0.75 lb N / 1000 ft2 of 25-0-10         3 lb / 1000 ft2
//	0.5 lb ai / acre of 4 lb / gal          16 fl oz / acre
//	1.5 lb PLS / 1000 ft2 at 95 %, 85 %     1.86 lb / 1000 ft2
//
// A rate by volume of what is sold by weight, or the other way round, takes
// the product's density. What no pack tells otherwise is measured as the rate
// is, but for liquids.
func (p Product) Rate(wanted Rate) (Rate, error) {
	rate, err := p.holding(wanted)
	if err != nil {
		return rate, p.named(err)
	}
	by := rate.By
	switch {
	case len(p.Packs) > 0:
		by = p.Packs[0].Size.By
	case p.Liquid && p.Density > 0:
		by = Liquid
	}
	measured, err := rate.As(by, p.Density)
	return measured, p.named(err)
}

// holding returns the rate of the product, measured as what is in it is given.
func (p Product) holding(wanted Rate) (Rate, error) {
	switch wanted.Of {
	case Itself:
		return wanted, nil
	case Active, AcidEquivalent:
		return p.Strength.product(wanted)
	case PureLiveSeed:
		return weighed(wanted, p.Seed.PLS(), "purity and germination from the tag")
	}
	return weighed(wanted, p.Grade.Of(wanted.Of), "the grade, such as 24-0-6")
}

func weighed(wanted Rate, part Share, what string) (Rate, error) {
	if !(part > 0) {
		return Rate{}, inputErrorf("state "+what+", or choose another product", "there is no %s in it", wanted.Of.name())
	}
	return Rate{By: Weight, PerM2: wanted.PerM2 / float64(part)}, nil
}

// Delivers returns how much of a substance a rate of the product puts down.
func (p Product) Delivers(s Substance, product Rate) (Rate, error) {
	if s == Itself {
		return product, nil
	}
	by := Weight
	if s == Active || s == AcidEquivalent {
		by = p.Strength.measure()
	}
	measured, err := product.As(by, p.Density)
	if err != nil {
		return Rate{}, p.named(err)
	}
	switch s {
	case Active, AcidEquivalent:
		active, err := p.Strength.active(measured, s)
		return active, p.named(err)
	case PureLiveSeed:
		return Rate{Weight, measured.PerM2 * float64(p.Seed.PLS()), s}, nil
	}
	return Rate{Weight, measured.PerM2 * float64(p.Grade.Of(s)), s}, nil
}

// LabelRate returns the rate that a pack means by the ground it covers.
func (p Product) LabelRate() (Rate, error) {
	if len(p.Packs) != 1 || !(p.Covers > 0) {
		return Rate{}, p.named(inputErrorf("state one pack and the ground that it covers", "the pack tells no rate"))
	}
	return RateOf(p.Packs[0].Size, p.Covers)
}

// As returns the rate measured in another way. Between weights and volumes
// that takes the material's density.
func (r Rate) As(m Measure, d Density) (Rate, error) {
	a, err := Amount{r.By, r.PerM2}.As(m, d)
	return Rate{a.By, a.Size, r.Of}, err
}

// named puts the product's name before what is wrong with it.
func (p Product) named(err error) error {
	wrong, ours := err.(*InputError)
	if !ours || p.Name == "" {
		return err
	}
	return &InputError{ingest.Quoted(p.Name) + ": " + wrong.Text, wrong.Hint}
}
