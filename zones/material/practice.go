package material

import (
	_ "embed"
	"fmt"

	"example.org/turfplat/zones/tables"
)

// practiceCSV holds a row a figure of the trade and where it comes from.
//
//go:embed practice.csv
var practiceCSV string

// A Practice is a figure of the trade that holds where nothing else is said.
type Practice struct {
	Value  Quantity
	Source string
}

// The figures of the trade.
var (
	Carry          = mustPractice("carry")           // what is loaded beyond what the rate asks for
	StripTolerance = mustPractice("strip_tolerance") // how far a calibrated spreader may be off
	SettingReach   = mustPractice("setting_reach")   // how far beyond its points a calibration holds
	MowingShare    = mustPractice("mowing_share")    // of its height that grass may lose at once
)

func mustPractice(name string) Practice {
	for _, row := range tables.BuiltIn("material: practice.csv", practiceCSV, "name", "value", "source") {
		if row[0] == name {
			return Practice{mustParse(row[1]), row[2]}
		}
	}
	panic(fmt.Sprintf("material: practice.csv: no row %s", name))
}

// Share returns a figure that is a part of a whole.
func (p Practice) Share() Share { return Share(p.Value.SI()) }
