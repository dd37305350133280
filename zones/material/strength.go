package material

// A Strength is how much active ingredient a product holds: a share of its
// weight, or a weight in its volume. The zero Strength is not known.
type Strength struct {
	Share   Share
	Density Density
	Of      Substance // Active, AcidEquivalent, or Itself where the label does not say which
}

// Strength returns the quantity as a strength, such as 65 % or 4 lb / gal.
func (q Quantity) Strength() (Strength, error) {
	if q.Unit.over != nil && q.Unit.Dimension() == shareDimension {
		share, err := q.Share()
		return Strength{Share: share, Of: q.Of}, err
	}
	if q.Unit.over != nil && q.Unit.Dimension() == densityDimension {
		return Strength{Density: Density(q.SI()), Of: q.Of}, nil
	}
	return Strength{}, q.not("a strength", "write it as in 65 % or 4 lb / gal")
}

// product returns the rate of the product that puts down a rate of its active
// ingredient: by weight if the strength is a share, else as a liquid.
func (s Strength) product(active Rate) (Rate, error) {
	if err := s.serves(active.Of); err != nil {
		return Rate{}, err
	}
	if s.Share > 0 {
		return Rate{By: Weight, PerM2: active.PerM2 / float64(s.Share)}, nil
	}
	return Rate{By: Liquid, PerM2: active.PerM2 / float64(s.Density)}, nil
}

// active returns the rate of active ingredient in a rate of the product, which
// is measured as the strength is given.
func (s Strength) active(product Rate, of Substance) (Rate, error) {
	if err := s.serves(of); err != nil {
		return Rate{}, err
	}
	if s.Share > 0 {
		return Rate{Weight, product.PerM2 * float64(s.Share), of}, nil
	}
	return Rate{Weight, product.PerM2 * float64(s.Density), of}, nil
}

// measure is how a product whose strength is so given is measured out.
func (s Strength) measure() Measure {
	if s.Density > 0 {
		return Liquid
	}
	return Weight
}

// serves refuses to take the acid for the whole active ingredient, or the
// other way round.
func (s Strength) serves(of Substance) error {
	switch {
	case !(s.Share > 0 || s.Density > 0):
		return inputErrorf("state it from the label, such as 65 % or 4 lb / gal", "how much active ingredient the product holds is not known")
	case s.Of != Itself && s.Of != of:
		return inputErrorf("use the figure of the label that is given in the same way", "a rate of %s cannot be made from a strength in %s", of.name(), s.Of.name())
	}
	return nil
}
