package soil

import (
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/zones/material"
)

// judgeUnit leaves out a sensor whose readings soil cannot have in the unit
// stated, and warns of one that hardly can. Only logs of some weeks tell: 40 is
// a cold spring day in one unit and a hot summer's in the other.
func (l *logReader) judgeUnit(station *Station, s *sensor) {
	text, impossible := s.doubt(s.dayMeans())
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
