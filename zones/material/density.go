package material

import (
	_ "embed"
	"fmt"

	"example.org/turfplat/zones/tables"
)

// densityCSV holds a row a bulk material: the range of its density, the figure
// that a source gives as the usual one, if any, and the source.
//
//go:embed density.csv
var densityCSV string

// A BulkDensity is what bulk material weighs, by moisture and make.
type BulkDensity struct {
	Material  string
	Low, High Density
	Usual     Density // to plan with: a source's figure, else the middle of the range
	Source    string
}

// BulkDensities are those known, for where the supplier states none; the
// supplier's figure always wins.
var BulkDensities = mustReadDensities(densityCSV)

func mustReadDensities(table string) []BulkDensity {
	var densities []BulkDensity
	for _, row := range tables.BuiltIn("material: density.csv", table, "material", "low", "high", "usual", "source") {
		d := BulkDensity{Material: row[0], Low: mustDensity(row[1]), High: mustDensity(row[2]), Source: row[4]}
		d.Usual = (d.Low + d.High) / 2
		if row[3] != "" {
			d.Usual = mustDensity(row[3])
		}
		densities = append(densities, d)
	}
	return densities
}

func mustDensity(text string) Density {
	d, err := mustParse(text).Density()
	if err != nil {
		panic(fmt.Sprintf("material: density.csv: %v", err))
	}
	return d
}
