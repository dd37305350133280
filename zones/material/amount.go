package material

// Volume is a volume in cubic metres.
type Volume float64

// Litres returns v in litres.
func (v Volume) Litres() float64 { return litre.fromSI(float64(v)) }

var litre = Unit{over: unitsByName["L"]}

// Share is a part of a whole, 0 to 1.
type Share float64

// Density is the weight of a material, or of what is in it, in a volume of it:
// kilograms in a cubic metre.
type Density float64

// Temperature is in degrees Celsius.
type Temperature float64

// A Measure is how an amount is measured out.
type Measure int

// The measures. Weights are kilograms; liquids are shown in litres, bulk goods
// in cubic metres.
const (
	Weight Measure = iota
	Liquid
	Bulk
)

var measureOf = map[string]Measure{"weight": Weight, "liquid": Liquid, "bulk": Bulk}

// String is weight, liquid or bulk.
func (m Measure) String() string {
	switch m {
	case Weight:
		return "weight"
	case Liquid:
		return "liquid"
	}
	return "bulk"
}

// An Amount is how much of a material there is or shall be.
type Amount struct {
	By   Measure
	Size float64 // kg of weights, m3 of liquids and bulk goods
}

// Amount returns the quantity as an amount: a weight or a volume.
func (q Quantity) Amount() (Amount, error) {
	if q.Unit.over != nil && (q.Unit.Dimension() == weightDimension || q.Unit.Dimension() == volumeDimension) {
		return Amount{q.Unit.over.measure, q.SI()}, nil
	}
	return Amount{}, q.not("a weight or a volume", "write it in lb, oz, kg, g, gal, fl oz, L, mL, yd3, ft3 or m3")
}

// SI returns the amount in kg, in L for liquids, in m3 for bulk goods, and the
// name of that unit.
func (a Amount) SI() (value float64, unit string) {
	switch a.By {
	case Weight:
		return a.Size, "kg"
	case Liquid:
		return Volume(a.Size).Litres(), "L"
	}
	return a.Size, "m3"
}

// In returns the amount in a unit.
func (a Amount) In(u Unit) (float64, error) {
	if u.Dimension() != a.By.dimension() {
		return 0, inputErrorf("", "a %s amount cannot be shown in %s", a.By, u)
	}
	return u.fromSI(a.Size), nil
}

func (m Measure) dimension() Dimension {
	if m == Weight {
		return weightDimension
	}
	return volumeDimension
}

// Times returns so many of the amount.
func (a Amount) Times(n float64) Amount { return Amount{a.By, a.Size * n} }

// As returns the amount measured in another way. Between weights and volumes
// that takes the material's density.
func (a Amount) As(m Measure, d Density) (Amount, error) {
	switch {
	case a.By.dimension() == m.dimension():
		return Amount{m, a.Size}, nil
	case !(d > 0):
		return a, inputErrorf("oz is a weight and fl oz a volume; use one kind throughout, or state the density, such as 9 lb / gal or 1200 lb / yd3",
			"weights and volumes of one product cannot be mixed without its density")
	case m == Weight:
		return Amount{m, a.Size * float64(d)}, nil
	}
	return Amount{m, a.Size / float64(d)}, nil
}
