package sun

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
)

// seasonsCSV holds the seasons of grasses north of the equator: their first
// and last days and the weight of a day in each month.
//
//go:embed seasons.csv
var seasonsCSV string

// Cool returns the season of cool-season grasses at a latitude: spring and
// autumn, six months on south of the equator.
func Cool(lat float64) Season { return preset("cool", lat) }

// Warm returns the season of warm-season grasses at a latitude: summer, six
// months on south of the equator.
func Warm(lat float64) Season { return preset("warm", lat) }

func preset(name string, lat float64) Season {
	for _, row := range builtIn(seasonsCSV) {
		if row["season"] != name {
			continue
		}
		season, err := ParseSeason(row["from"] + ".." + row["to"])
		must(err)
		for m := range season.Weights {
			season.Weights[m] = row.number(strings.ToLower(time.Month(m + 1).String()))
		}
		if lat < 0 {
			return season.acrossEquator()
		}
		return season
	}
	panic("sun: seasons.csv: no season " + name) // part of the program
}

// A leafEvent is when the trees of a latitude come into leaf, or lose it.
type leafEvent struct {
	begins, days  float64 // day of the year at 40 degrees of latitude; how long it takes
	perDegree     float64 // days later a degree towards the pole
	fromLat, upTo float64 // where that holds
}

// A leafCalendar says how far deciduous trees are in leaf.
type leafCalendar struct{ out, fall leafEvent }

//go:embed leaves.csv
var leavesCSV string

func builtInLeaves() leafCalendar {
	events := map[string]leafEvent{}
	for _, row := range builtIn(leavesCSV) {
		begins, err := parseDate(row["begins"])
		must(err)
		events[row["event"]] = leafEvent{
			float64(begins.number()), row.number("days"), row.number("later_per_degree"), row.number("from_lat"), row.number("to_lat"),
		}
	}
	return leafCalendar{events["out"], events["fall"]}
}

// inLeaf returns the share of a deciduous tree's leaves that are out on a day,
// at a latitude.
func (c leafCalendar) inLeaf(d Date, lat float64) float64 {
	if lat < 0 {
		d = d.acrossEquator()
	}
	return c.out.progress(d, lat) - c.fall.progress(d, lat)
}

// progress returns how far an event is through, 0 to 1.
func (e leafEvent) progress(d Date, lat float64) float64 {
	begins := e.begins + e.perDegree*(max(e.fromLat, min(e.upTo, math.Abs(lat)))-40)
	return max(0, min(1, (float64(d.number())-begins)/e.days))
}

// A builtInRow is a row of a table that is part of the program, by column.
type builtInRow map[string]string

func (r builtInRow) number(column string) float64 {
	v, err := strconv.ParseFloat(r[column], 64)
	must(err)
	return v
}

func builtIn(table string) []builtInRow {
	records, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	must(err)
	var rows []builtInRow
	for _, record := range records[1:] {
		row := builtInRow{}
		for i, column := range records[0] {
			row[column] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func must(err error) {
	if err != nil {
		panic(fmt.Sprintf("sun: built-in table: %v", err)) // part of the program
	}
}
