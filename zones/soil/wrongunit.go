package soil

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/turfplat/zones/material"
)

// judgeUnit leaves out a sensor whose readings soil cannot have in the unit
// stated, and warns of one that hardly can. But for frost out of season, only logs
// of some weeks tell: 40 is a cold spring day in one unit and a hot summer's in
// the other.
func (l *logReader) judgeUnit(station *Station, s *sensor) {
	days := s.dayMeans()
	text, impossible := s.doubt(days)
	if text == "" && s.column.medium != air {
		text = s.frostOutOfSeason(days, l.options.Latitude)
	}
	if text == "" {
		return
	}
	c := s.column
	text = fmt.Sprintf("in %s %s%s", c.unit, text, station.at())
	if impossible {
		text += ", left out"
	}
	other := "f"
	if c.unit != celsius {
		other = "c"
	}
	l.findings.warn(s.readings[0].line, c.name, "stations", unitCode(impossible), text,
		fmt.Sprintf("if it is in %s, say so: name it ..._%s or write unit=%s", strings.ToUpper(other), other, other))
	if impossible {
		s.readings = nil
	}
}

func unitCode(impossible bool) string {
	if impossible {
		return "soil_unit"
	}
	return "soil_unit_doubt"
}

// refuseWrongUnits refuses the log if a column is in another unit at all its
// stations: it is the column's name that is wrong, not a sensor.
func (l *logReader) refuseWrongUnits() {
	right := make(map[*sensorColumn]bool)
	for _, s := range l.sensors {
		right[s.column] = right[s.column] || s.readings != nil
	}
	for i := range l.layout.sensors {
		if c := &l.layout.sensors[i]; !right[c] {
			l.findings.makeRefusal("soil_unit", c.name)
		}
	}
}

// freezing is where water freezes, in degrees Celsius.
const freezing = 0

// doubt says what is odd about days in order of their warmth; "" if nothing is.
func (s *sensor) doubt(days []DayValue) (text string, impossible bool) {
	if len(days) == 0 {
		return "", false
	}
	coldest, median, warmest := days[0].Value, days[len(days)/2].Value, days[len(days)-1].Value
	hot := len(days) - countBelow(days, hotDay)
	if hot > 0 && float64(hot) >= hotShare*float64(len(days)) {
		return fmt.Sprintf("its days reach %s: too hot", s.column.shown(warmest)), true
	}
	if s.column.medium == air {
		return "", false
	}
	switch {
	case len(days) >= doubtDays && median < coldMedian:
		return fmt.Sprintf("half of its days are under %s: too cold for the soil of a lawn", s.column.shown(median)), true
	case len(days) >= warmDays && warmest < warmDay:
		return fmt.Sprintf("the warmest of its %d days has %s: too cold for the soil of a lawn", len(days), s.column.shown(warmest)), true
	case len(days) >= doubtDays && coldest > doubtHot:
		return fmt.Sprintf("the coldest of its %d days has %s: hot for the soil of a lawn", len(days), s.column.shown(coldest)), false
	case len(days) >= doubtDays && median < doubtCold && warmest < freezing:
		return fmt.Sprintf("the warmest of its %d days has %s: frozen throughout", len(days), s.column.shown(warmest)), false
	}
	return "", false
}

// A mildSeason is a part of the year in which soil is warmer than a limit.
type mildSeason struct {
	from, to string // month and day in the north
	limit    material.Temperature
	words    string
}

var mildSeasons = []mildSeason{
	{"05-01", "09-30", lightFrost, "in the warm half of the year"},
	{"03-15", "11-15", hardFrost, "outside winter"},
}

// frostOutOfSeason says that all days of a mild season are colder than soil is
// then, however few they are; "" if they are not, or the latitude is not known.
func (s *sensor) frostOutOfSeason(days []DayValue, latitude float64) string {
	for _, mild := range mildSeasons {
		warmest, held := DayValue{}, false
		for _, d := range days { // in order of their warmth
			if latitude != 0 && mild.holds(d.Day, latitude < 0) {
				warmest, held = d, true
			}
		}
		if held && warmest.Value < mild.limit {
			return fmt.Sprintf("the warmest of its days %s has %s: too cold for the soil of a lawn then", mild.words, s.column.shown(warmest.Value))
		}
	}
	return ""
}

// holds reports whether a day lies in the season; in the south that is half a
// year later.
func (m mildSeason) holds(day time.Time, south bool) bool {
	if south {
		const halfYear = 6                                                                          // months
		day = time.Date(day.Year(), day.Month()+halfYear, min(day.Day(), 28), 0, 0, 0, 0, time.UTC) // 28: of any month
	}
	written := day.Format("01-02")
	return m.from <= written && written <= m.to
}

// countBelow is how many days are at most so warm, of days in order of warmth.
func countBelow(days []DayValue, t material.Temperature) int {
	n, _ := slices.BinarySearchFunc(days, t, func(d DayValue, t material.Temperature) int {
		if d.Value <= t {
			return -1
		}
		return 1
	})
	return n
}

// dayMeans are the means of the sensor's days, coldest first, however few
// readings a day has.
func (s *sensor) dayMeans() []DayValue {
	var days []DayValue
	for day := range byDay(s.readings) {
		days = append(days, DayValue{Day: day[0].day(), Value: meanOf(day), Readings: len(day)})
	}
	slices.SortStableFunc(days, func(a, b DayValue) int {
		switch {
		case a.Value < b.Value:
			return -1
		case a.Value > b.Value:
			return 1
		}
		return 0
	})
	return days
}
