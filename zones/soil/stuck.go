package soil

import (
	"fmt"
	"math"
	"strconv"

	"example.org/turfplat/zones/material"
)

// dropStuck leaves out readings that stay the same for longer than soil or air
// does: the sensor, its cable or its logger has frozen. Under snow soil stays
// near 0 C for weeks, and is believed for longer.
func (l *logReader) dropStuck(station *Station, s *sensor) {
	longest := stuckHours
	if s.daily() {
		longest = stuckDays
	}
	kept := s.readings[:0]
	for from := 0; from < len(s.readings); {
		to := s.runEnd(from)
		first, last := s.readings[from], s.readings[to-1]
		if !isStuck(s.column.medium, first.value, last.at-first.at, longest) {
			kept = append(kept, s.readings[from:to]...)
		} else {
			l.findings.warn(first.line, s.column.name, "stretches", "soil_stuck",
				fmt.Sprintf("reads %s without a change from %s to %s%s, left out", s.column.shown(first.value), isoDay(first.day()), isoDay(last.day()), station.at()),
				"look at the sensor, its cable and its logger")
		}
		from = to
	}
	s.readings = kept
}

// runEnd is the index after the readings that are as one is, without a gap of
// more than two days between them.
func (s *sensor) runEnd(from int) int {
	to := from + 1
	for to < len(s.readings) && s.readings[to].value == s.readings[from].value && s.readings[to].at-s.readings[to-1].at <= 2*daySeconds {
		to++
	}
	return to
}

// isStuck reports whether a temperature that lasted so many seconds is not to
// be believed.
func isStuck(m medium, v material.Temperature, lasted, longest int64) bool {
	if m == ground && v >= snowLow && v <= snowHigh {
		longest = stuckSnow
	}
	return lasted >= longest
}

// shown writes a temperature in the unit of the column.
func (c *sensorColumn) shown(v material.Temperature) string {
	q, err := material.Quantity{Number: float64(v), Unit: celsius}.In(c.unit)
	if err != nil {
		panic("soil: " + err.Error()) // columns are of temperatures
	}
	return fmt.Sprintf("%s %s", strconv.FormatFloat(math.Round(q*100)/100, 'f', -1, 64), c.unit)
}
