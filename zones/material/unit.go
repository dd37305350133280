package material

import (
	_ "embed"
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/turfplat/zones/tables"
)

// unitsCSV holds a row a unit: how else it is written, what it measures, its
// size in SI units, exactly, what it reads at the SI unit's zero, and where
// its size comes from.
//
//go:embed units.csv
var unitsCSV string

// A simpleUnit is a row of the table.
type simpleUnit struct {
	name      string
	dimension Dimension
	measure   Measure // of weights and volumes
	si        float64
	zero      float64
}

// A Unit is a unit of the table, or one on so many of another, as in
// "lb / 1000 ft2". Units are equal if they are written alike. The zero Unit is
// that of a bare number, which measures nothing.
type Unit struct {
	over  *simpleUnit
	count float64
	under *simpleUnit
}

// unitsByName are the units of the table, by each of their names.
var unitsByName = mustReadUnits(unitsCSV)

// unitDimensions are the dimensions of what the table says that units measure.
var unitDimensions = map[string]Dimension{
	"weight": weightDimension, "length": lengthDimension, "area": areaDimension, "liquid": volumeDimension, "bulk": volumeDimension,
	"time": timeDimension, "temperature": temperatureDimension, "share": shareDimension,
}

func mustReadUnits(table string) map[string]*simpleUnit {
	units := make(map[string]*simpleUnit)
	for _, row := range tables.BuiltIn("material: units.csv", table, "unit", "also", "measures", "si", "zero", "source") {
		dimension, known := unitDimensions[row[2]]
		if !known {
			panic(fmt.Sprintf("material: units.csv: %q measures %q", row[0], row[2]))
		}
		u := &simpleUnit{row[0], dimension, measureOf[row[2]], mustRatio(row[3]), mustRatio(row[4])}
		for _, name := range append(strings.Split(row[1], "|"), row[0]) {
			if _, taken := units[name]; taken && name != "" {
				panic(fmt.Sprintf("material: units.csv: %q stands twice", name))
			}
			units[name] = u
		}
	}
	delete(units, "")
	return units
}

// findUnit looks a name up as written, then in small letters: M and m differ,
// LB and lb do not.
func findUnit(name string) (*simpleUnit, bool) {
	if u, known := unitsByName[name]; known {
		return u, true
	}
	if u, known := unitsByName[strings.ToLower(name)]; known {
		return u, true
	}
	prefix, rest, _ := strings.Cut(name, " ")
	u, known := unitsByName[strings.ToUpper(prefix)+" "+strings.ToLower(rest)]
	return u, known
}

// Dimension tells what the unit measures.
func (u Unit) Dimension() Dimension {
	switch {
	case u.over == nil:
		return Dimension{}
	case u.under == nil:
		return u.over.dimension
	}
	return u.over.dimension.over(u.under.dimension)
}

// String writes the unit so that ParseUnit reads it, as in "lb / 1000 ft2".
func (u Unit) String() string { return u.of(Itself) }

// of writes the unit of a substance, as in "lb N / 1000 ft2".
func (u Unit) of(s Substance) string {
	if u.over == nil {
		return ""
	}
	text := u.over.name
	if s != Itself {
		text += " " + string(s)
	}
	if u.under == nil {
		return text
	}
	text += " / "
	if u.count != 1 {
		text += number(u.count) + " "
	}
	return text + u.under.name
}

// factor is the unit's size in SI units.
func (u Unit) factor() float64 {
	switch {
	case u.over == nil:
		return 1
	case u.under == nil:
		return u.over.si
	}
	return u.over.si / (u.count * u.under.si)
}

// zero is what the unit reads at the zero of its SI unit.
func (u Unit) zero() float64 {
	if u.over == nil {
		return 0
	}
	return u.over.zero
}

func (u Unit) toSI(number float64) float64 { return (number - u.zero()) * u.factor() }

// fromSI turns an SI value into the unit. A number of up to 15 digits that was
// turned into SI comes back as it was, a temperature of up to ten decimals.
func (u Unit) fromSI(si float64) float64 {
	v := si/u.factor() + u.zero()
	text := strconv.FormatFloat(v, 'g', mostDigits, 64)
	if u.zero() != 0 {
		text = strconv.FormatFloat(v, 'f', 10, 64)
	}
	if written, err := strconv.ParseFloat(text, 64); err == nil && u.toSI(written) == si {
		return written
	}
	return v
}

// number writes a number in the fewest digits, at most 15, that say it.
func number(v float64) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', mostDigits, 64), 64)
	if err != nil || math.IsInf(rounded, 0) {
		rounded = v
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
