package soil

import (
	_ "embed"
	"fmt"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/tables"
)

// practiceCSV holds a row a figure by which logs are judged, and where it comes
// from.
//
//go:embed practice.csv
var practiceCSV string

var practice = mustReadPractice(practiceCSV)

// The figures in use. Times are seconds.
var (
	trailShare   = practice.share("trail_share")
	dayGap       = practice.seconds("day_gap")
	sameDepth    = practice.length("same_depth")
	depthReach   = practice.length("depth_reach")
	stuckHours   = practice.seconds("stuck_hours")
	stuckDays    = practice.seconds("stuck_days")
	stuckSnow    = practice.seconds("stuck_snow")
	snowLow      = practice.degrees("snow_low")
	snowHigh     = practice.degrees("snow_high")
	possibleLow  = practice.degrees("possible_low")
	possibleHigh = practice.degrees("possible_high")
	hotDay       = practice.degrees("hot_day")
	hotShare     = practice.share("hot_share")
	coldMedian   = practice.degrees("cold_median")
	warmDays     = practice.days("warm_days")
	warmDay      = practice.degrees("warm_day")
	doubtDays    = practice.days("doubt_days")
	doubtHot     = practice.degrees("doubt_hot")
	doubtCold    = practice.degrees("doubt_cold")
	hardFrost    = practice.degrees("hard_frost")
	lightFrost   = practice.degrees("light_frost")
	fillDays     = practice.days("fill_days")
	trendDays    = practice.days("trend_days")
)

// figures are quantities by name.
type figures map[string]material.Quantity

func mustReadPractice(table string) figures {
	read := make(figures)
	for _, row := range tables.BuiltIn("soil: practice.csv", table, "name", "value", "source") {
		q, err := material.Parse(row[1])
		if err != nil || row[2] == "" {
			panic(fmt.Sprintf("soil: practice.csv: row %s: %v", row[0], err))
		}
		read[row[0]] = q
	}
	return read
}

// must gives a figure as what it is; a table that does not hold it so cannot
// be part of the program.
func must[T any](name string, read func() (T, error)) T {
	v, err := read()
	if err != nil {
		panic(fmt.Sprintf("soil: practice.csv: row %s: %v", name, err))
	}
	return v
}

func (f figures) share(name string) float64 { return float64(must(name, f[name].Share)) }

func (f figures) length(name string) geo.Length { return must(name, f[name].Length) }

func (f figures) degrees(name string) material.Temperature { return must(name, f[name].Temperature) }

func (f figures) seconds(name string) int64 { return int64(must(name, f[name].Duration).Seconds()) }

func (f figures) days(name string) int { return int(f.seconds(name) / daySeconds) }
