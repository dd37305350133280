package material

import "example.org/turfplat/geo"

// A Rate is how much goes on a unit of ground, of a product or of what is in
// it.
type Rate struct {
	By    Measure
	PerM2 float64 // kg on a square metre, or m3, which is a depth in metres
	Of    Substance
}

// Rate returns the quantity as a rate: a weight or a volume on an area, or a
// depth, which is one of bulk goods.
func (q Quantity) Rate() (Rate, error) {
	u := q.Unit
	switch {
	case u.over == nil:
	case u.under == nil && u.over.dimension == lengthDimension:
		return Rate{By: Bulk, PerM2: q.SI()}, nil
	case u.under != nil && u.under.dimension == areaDimension:
		if d := u.over.dimension; d == weightDimension || d == volumeDimension {
			return Rate{u.over.measure, q.SI(), q.Of}, nil
		}
	}
	return Rate{}, q.not("a rate", "write it as in 3 lb / 1000 ft2, 3 fl oz / 1000 ft2, 40 g / m2 or 1/4 in")
}

// Depth returns how deep a rate by volume lies.
func (r Rate) Depth() geo.Length { return geo.Length(r.PerM2) }

// Over returns what the rate comes to on an area. What is on two areas is on
// both together.
func (r Rate) Over(a geo.Area) Amount { return Amount{r.By, r.PerM2 * float64(a)} }

// RateOf returns the rate at which an amount lies on an area.
func RateOf(a Amount, ground geo.Area) (Rate, error) {
	if !(ground > 0) {
		return Rate{}, inputErrorf("", "an amount on no ground has no rate")
	}
	return Rate{By: a.By, PerM2: a.Size / float64(ground)}, nil
}

// Covers returns the ground on which an amount comes to the rate.
func (r Rate) Covers(a Amount) (geo.Area, error) {
	if r.By.dimension() != a.By.dimension() {
		return 0, inputErrorf("", "a %s amount does not go out at a %s rate", a.By, r.By)
	}
	if !(r.PerM2 > 0) {
		return 0, inputErrorf("", "a rate of nothing covers any ground")
	}
	return geo.Area(a.Size / r.PerM2), nil
}

// Times returns a multiple of the rate.
func (r Rate) Times(n float64) Rate { return Rate{r.By, r.PerM2 * n, r.Of} }

// In returns the rate in a unit, such as lb / 1000 ft2.
func (r Rate) In(u Unit) (float64, error) {
	if u.Dimension() != r.By.dimension().over(areaDimension) {
		return 0, inputErrorf("", "a %s rate cannot be shown in %s", r.By, u)
	}
	return u.fromSI(r.PerM2), nil
}
