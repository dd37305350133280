package soil

import (
	"fmt"
	"iter"
	"math"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
)

// Soil gives the days of the sensor nearest to a depth; its Note says so if
// that is another depth. The error says why there are none.
func (s *Station) Soil(depth geo.Length, stat Statistic) (Series, error) {
	var nearest *sensor
	for _, candidate := range s.sensors {
		c := candidate.column
		if c.medium == ground && candidate.gives(stat) && (nearest == nil || nearer(candidate, nearest, depth, stat)) {
			nearest = candidate
		}
	}
	if nearest == nil {
		return Series{}, s.lacks(ground, stat)
	}
	at := nearest.column.depth
	off := math.Abs(float64(at - depth))
	if off > float64(depthReach+sameDepth) {
		return Series{}, fmt.Errorf("no sensor is near %s; the nearest is %s", inCentimetres(depth), inCentimetres(at))
	}
	series := s.series(nearest, stat)
	if off > float64(sameDepth) {
		lag := "shallower soil warms and cools sooner"
		if at > depth {
			lag = "deeper soil warms and cools later"
		}
		series.Note = fmt.Sprintf("no sensor at %s; column %s at %s is the nearest, and %s", inCentimetres(depth), ingest.Quoted(nearest.column.name), inCentimetres(at), lag)
	}
	return series, nil
}

// nearer reports whether a sensor serves a depth better than another: it is
// nearer, or at the same depth made for the statistic.
func nearer(a, b *sensor, depth geo.Length, stat Statistic) bool {
	offA, offB := math.Abs(float64(a.column.depth-depth)), math.Abs(float64(b.column.depth-depth))
	if offA != offB {
		return offA < offB
	}
	return a.column.statistic == stat && b.column.statistic != stat
}

func inCentimetres(depth geo.Length) string { return fmt.Sprintf("%.4g cm", float64(depth)*100) }

// Air gives the days of the air. The error says why there are none.
func (s *Station) Air(stat Statistic) (Series, error) {
	var best *sensor
	for _, candidate := range s.sensors {
		if candidate.column.medium == air && candidate.gives(stat) && (best == nil || candidate.column.statistic == stat) {
			best = candidate
		}
	}
	if best == nil {
		return Series{}, s.lacks(air, stat)
	}
	return s.series(best, stat), nil
}

// gives reports whether a statistic of days can be made of the sensor's
// readings: from a value a day only the one that it is.
func (s *sensor) gives(stat Statistic) bool {
	return s.column.statistic == stat || s.column.statistic == Mean && !s.daily()
}

func (s *Station) lacks(m medium, stat Statistic) error {
	what, name := "soil", "soil_2in"
	if m == air {
		what, name = "air", "air"
	}
	if stat == Mean {
		return fmt.Errorf("the log has no temperatures of %s: name their column %s_f or %s_c", what, name, name)
	}
	return fmt.Errorf("the log has no %s of a day for %s: name their column %s_%s_f or %s_%s_c, or give readings of every hour", lowHigh[stat], what, name, stat, name, stat)
}

var lowHigh = map[Statistic]string{Lowest: "lows", Highest: "highs"}

func (s *Station) series(from *sensor, stat Statistic) Series {
	c := from.column
	return Series{Station: s.Name, Column: c.name, Depth: c.depth, Statistic: stat, Days: from.days(stat)}
}

// days are those that are known: days that have a value, or no stretch without
// a reading that is longer than usual and than five hours.
func (s *sensor) days(stat Statistic) []DayValue {
	var days []DayValue
	longest, daily := max(dayGap, s.step), s.daily()
	for day := range byDay(s.readings) {
		if daily || longestGap(day) <= longest {
			days = append(days, DayValue{Day: day[0].day(), Value: of(stat, day), Readings: len(day)})
		}
	}
	return days
}

// longestGap is the longest stretch of a day without a reading, in seconds.
func longestGap(day []reading) int64 {
	last := day[0].day().Unix()
	end, gap := last+daySeconds, int64(0)
	for _, r := range day {
		gap = max(gap, r.at-last)
		last = r.at
	}
	return max(gap, end-last)
}

// byDay cuts readings in order of time into those of days.
func byDay(readings []reading) iter.Seq[[]reading] {
	return func(yield func([]reading) bool) {
		for from := 0; from < len(readings); {
			to, day := from+1, readings[from].day()
			for to < len(readings) && readings[to].day().Equal(day) {
				to++
			}
			if !yield(readings[from:to]) {
				return
			}
			from = to
		}
	}
}

// of makes a statistic of the readings of a day.
func of(stat Statistic, day []reading) material.Temperature {
	v := day[0].value
	switch stat {
	case Mean:
		return meanOf(day)
	case Lowest:
		for _, r := range day {
			v = min(v, r.value)
		}
	case Highest:
		for _, r := range day {
			v = max(v, r.value)
		}
	}
	return v
}

func meanOf(day []reading) material.Temperature {
	sum := material.Temperature(0)
	for _, r := range day {
		sum += r.value
	}
	return sum / material.Temperature(len(day))
}
