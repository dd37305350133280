package lanes

import (
	_ "embed"
	"fmt"
	"strconv"

	"example.org/turfplat/zones/tables"
)

// Practice holds the figures of the trade that lanes are laid by.
type Practice struct {
	Speed        float64 // m/s, walking
	Turn         float64 // s
	Refill       float64 // s, walking to it not counted
	HandWidth    float64 // m; narrower strips are done by hand
	TrunkRing    float64 // m, radius kept round a trunk
	HazardRing   float64 // m, radius kept round a hazard
	FenceStrip   float64 // m, half-width of a fence
	ContourSlope float64 // percent; steeper ground is walked along the contour
	WalkSlope    float64 // percent; steeper ground is not ridden on
	HandSlope    float64 // percent; steeper ground is done by hand
	WideSwath    float64 // m; hardly any walked spreader has a wider one
	Covered      float64 // share of the rate from which ground counts as covered
	Doubled      float64 // share of the rate from which ground counts as doubled
}

// practiceCSV holds a row a figure, and on what it rests.
//
//go:embed practice.csv
var practiceCSV string

// CommonPractice returns the built-in figures.
func CommonPractice() Practice { return commonPractice }

var commonPractice = mustReadPractice(practiceCSV)

// mustReadPractice panics on a malformed table: it is part of the program.
func mustReadPractice(table string) Practice {
	figures := make(map[string]float64)
	for _, row := range tables.BuiltIn("lanes: practice.csv", table, "figure", "value", "unit", "basis") {
		v, err := strconv.ParseFloat(row[1], 64)
		if err != nil || v <= 0 {
			panic(fmt.Sprintf("lanes: practice.csv: bad row %q", row))
		}
		figures[row[0]] = v
	}
	take := func(name string) float64 {
		v, ok := figures[name]
		if !ok {
			panic("lanes: practice.csv: no row " + name)
		}
		return v
	}
	return Practice{
		Speed: take("speed"), Turn: take("turn"), Refill: take("refill"), HandWidth: take("hand_width"),
		TrunkRing: take("trunk_ring"), HazardRing: take("hazard_ring"), FenceStrip: take("fence_strip"),
		ContourSlope: take("contour_slope"), WalkSlope: take("walk_slope"), HandSlope: take("hand_slope"), WideSwath: take("wide_swath"),
		Covered: take("covered"), Doubled: take("doubled"),
	}
}

// turnWay is the way, in metres, that a turn costs as much time as.
func (p Practice) turnWay() float64 { return p.Turn * p.Speed }
