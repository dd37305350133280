package material

import (
	"strings"
	"time"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A Quantity is a number of a unit, as it was written, and what it is of.
type Quantity struct {
	Number float64
	Unit   Unit
	Of     Substance
}

// String writes the quantity in the fewest digits, so that Parse reads it.
func (q Quantity) String() string {
	if q.Unit.over == nil {
		return number(q.Number)
	}
	return number(q.Number) + " " + q.Unit.of(q.Of)
}

// SI returns the quantity in kilograms, metres, seconds and degrees Celsius.
func (q Quantity) SI() float64 { return q.Unit.toSI(q.Number) }

// In returns the number of another unit that is as much. A number of up to 15
// digits turned there and back returns; longer ones do to 1e-15 of themselves.
func (q Quantity) In(u Unit) (float64, error) {
	if q.Unit.over == nil || q.Unit.Dimension() != u.Dimension() {
		return 0, q.not(u.Dimension().String(), "")
	}
	if q.Unit == u {
		return q.Number, nil
	}
	return u.fromSI(q.SI()), nil
}

// check refuses what can be written but not be.
func (q Quantity) check(written string) error {
	const absoluteZero = -273.15 // degrees Celsius
	u := q.Unit
	temperature := u.over.dimension == temperatureDimension
	switch {
	case u.under != nil && (temperature || u.under.dimension == temperatureDimension):
		return inputErrorf("", "%s: a temperature stands alone", ingest.Quoted(written))
	case temperature && q.SI() < absoluteZero:
		return inputErrorf("", "%s is colder than anything can be", ingest.Quoted(written))
	case q.Number < 0 && !temperature:
		return inputErrorf("", "%s is less than nothing", ingest.Quoted(written))
	case q.Of != Itself && u.over.dimension != weightDimension && u.over.dimension != shareDimension:
		return inputErrorf("write it as a weight, such as 0.75 lb N / 1000 ft2", "%s: %s is weighed, not measured by %s", ingest.Quoted(written), q.Of.name(), u.over.name)
	}
	return nil
}

// not refuses a quantity of another dimension than the one wanted.
func (q Quantity) not(wanted, hint string) error {
	u := q.Unit
	switch {
	case u.over == nil:
		return inputErrorf("write it with its unit", "a number without a unit is not %s", wanted)
	case u.over.name == "oz" && strings.Contains(wanted, "volume"):
		hint = "oz is a weight; liquids are measured in fl oz"
	case u.over.measure == Liquid && strings.Contains(wanted, "weight"):
		hint = u.over.name + " is a volume; weights are oz, lb, g or kg, and only a stated density turns one into the other"
	case u.over.name == "yd" && wanted == "a volume":
		hint = "write yd3 for cubic yards"
	case u.over.name == "M" && wanted == "a length":
		hint = "M is 1000 ft2; write m for metres"
	case u.under != nil && u.under.name == "m":
		hint = "m is a metre; write M or 1000 ft2"
	}
	return inputErrorf(hint, "%s is %s, not %s", ingest.Quoted(q.String()), q.kind(), wanted)
}

// kind names what the quantity measures; a volume on an area is a depth, but
// written as the one it is not taken for the other.
func (q Quantity) kind() string {
	if q.Unit.under != nil && q.Unit.Dimension() == lengthDimension {
		return "a volume on an area"
	}
	return q.Unit.Dimension().String()
}

// si returns the SI value of a quantity of a dimension.
func (q Quantity) si(d Dimension, hint string) (float64, error) {
	if q.Unit.over == nil || q.Unit.Dimension() != d || q.kind() != d.String() {
		return 0, q.not(d.String(), hint)
	}
	return q.SI(), nil
}

// Volume returns a volume, of a liquid or in bulk.
func (q Quantity) Volume() (Volume, error) {
	v, err := q.si(volumeDimension, "write it in gal, fl oz, L, mL, yd3, ft3 or m3")
	return Volume(v), err
}

// Length returns a length.
func (q Quantity) Length() (geo.Length, error) {
	v, err := q.si(lengthDimension, "write it in in, ft, mm or m")
	return geo.Length(v), err
}

// Area returns an area.
func (q Quantity) Area() (geo.Area, error) {
	v, err := q.si(areaDimension, "write it in ft2, acre, m2 or ha")
	return geo.Area(v), err
}

// Share returns a part of a whole; more than the whole is refused.
func (q Quantity) Share() (Share, error) {
	v, err := q.si(shareDimension, "write it in %")
	if err == nil && v > 1 {
		err = inputErrorf("", "%s is more than the whole", ingest.Quoted(q.String()))
	}
	return Share(v), err
}

// Density returns a weight in a volume.
func (q Quantity) Density() (Density, error) {
	v, err := q.si(densityDimension, "write it in lb / yd3, lb / gal, kg / m3 or g / L")
	return Density(v), err
}

// InLiquid reports whether the quantity is of something in a measure of
// liquids, such as 10.7 lb / gal.
func (q Quantity) InLiquid() bool { return q.Unit.under != nil && q.Unit.under.measure == Liquid }

// Temperature returns a temperature.
func (q Quantity) Temperature() (Temperature, error) {
	v, err := q.si(temperatureDimension, "write it in F or C")
	return Temperature(v), err
}

// Duration returns a time, of at most a hundred years.
func (q Quantity) Duration() (time.Duration, error) {
	const most = 100 * 366 * 24 * time.Hour
	v, err := q.si(timeDimension, "write it in min, h, d or weeks")
	if err == nil && v > most.Seconds() {
		err = inputErrorf("", "%s is longer than a hundred years", ingest.Quoted(q.String()))
	}
	if err != nil {
		return 0, err
	}
	return time.Duration(v*float64(time.Second) + 0.5), nil
}
