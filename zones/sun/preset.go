package sun

import (
	_ "embed"
	"strings"
	"time"
)

// seasonsCSV holds the seasons of grasses north of the equator: their first
// and last days and the weight of a day in each month.
//
//go:embed seasons.csv
var seasonsCSV string

var seasonColumns = []string{"season", "from", "to", "january", "february", "march", "april", "may", "june",
	"july", "august", "september", "october", "november", "december", "source"}

// Cool returns the season of cool-season grasses at a latitude: spring and
// autumn, six months on south of the equator.
func Cool(lat float64) Season { return preset("cool", lat) }

// Warm returns the season of warm-season grasses at a latitude: summer, six
// months on south of the equator.
func Warm(lat float64) Season { return preset("warm", lat) }

func preset(name string, lat float64) Season {
	for _, row := range builtIn("seasons.csv", seasonsCSV, seasonColumns...) {
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
