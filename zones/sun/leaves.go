package sun

import (
	_ "embed"
	"math"
)

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

// leaves is the built-in calendar.
var leaves = readLeaves(leavesCSV)

func readLeaves(table string) leafCalendar {
	events := map[string]leafEvent{}
	for _, row := range builtIn("leaves.csv", table, "event", "begins", "days", "later_per_degree", "from_lat", "to_lat", "source") {
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

// FullLeaf returns the first and the last day on which deciduous trees at a
// latitude have all their leaves, as hours of sun are worked out.
func FullLeaf(lat float64) (from, to Date) {
	from = dateOf(int(math.Ceil(leaves.out.begin(lat) + leaves.out.days)))
	to = dateOf(int(leaves.fall.begin(lat)))
	if lat < 0 {
		return from.acrossEquator(), to.acrossEquator()
	}
	return from, to
}

// progress returns how far an event is through, 0 to 1.
func (e leafEvent) progress(d Date, lat float64) float64 {
	return max(0, min(1, (float64(d.number())-e.begin(lat))/e.days))
}

// begin is the day of the year on which an event begins.
func (e leafEvent) begin(lat float64) float64 {
	return e.begins + e.perDegree*(max(e.fromLat, min(e.upTo, math.Abs(lat)))-40)
}
