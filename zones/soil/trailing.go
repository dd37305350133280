package soil

import (
	"math"
	"time"

	"example.org/turfplat/zones/material"
)

// A Trailing is the mean of days in a row that end with one.
type Trailing struct {
	Day     time.Time
	Mean    material.Temperature
	Days    int      // known, of those that should be
	Reading DayValue // of the day itself: the one that decides
}

// trailings are the means of so many days that end with each day, where the
// day itself and enough of the others are known.
func trailings(days []DayValue, length int) []Trailing {
	var list []Trailing
	length = max(length, 1)
	enough := int(math.Ceil(trailShare*float64(length) - hair))
	for i, day := range days {
		sum, known := material.Temperature(0), 0
		for j := i; j >= 0 && daysBetween(days[j].Day, day.Day) < length; j-- {
			sum += days[j].Value
			known++
		}
		if known >= enough {
			list = append(list, Trailing{Day: day.Day, Mean: sum / material.Temperature(known), Days: known, Reading: day})
		}
	}
	return list
}

// daysBetween counts the days from one to another.
func daysBetween(from, to time.Time) int { return int(to.Sub(from) / (24 * time.Hour)) }

// A Trend is how fast temperatures of days move.
type Trend struct {
	PerDay material.Temperature // by a straight line through the days of a week, least squares
	Known  bool
}

// DaysTo is in how many days a temperature is reached from another if the
// trend lasts; ok is false if it leads away, or would take longer than a month,
// which no trend does.
func (t Trend) DaysTo(from, to material.Temperature) (days int, ok bool) {
	const most = 30
	n := math.Ceil(float64((to-from)/t.PerDay) - hair)
	if !t.Known || !(n >= 0 && n <= most) {
		return 0, false
	}
	return int(n), true
}

// trend is that of the days up to one.
func trend(days []DayValue, upTo time.Time) Trend {
	var n, sumX, sumY, sumXX, sumXY float64
	for _, day := range days {
		back := daysBetween(day.Day, upTo)
		if back < 0 || back >= trendDays {
			continue
		}
		x, y := -float64(back), float64(day.Value)
		n, sumX, sumY, sumXX, sumXY = n+1, sumX+x, sumY+y, sumXX+x*x, sumXY+x*y
	}
	if n < trailShare*float64(trendDays) {
		return Trend{}
	}
	return Trend{material.Temperature((n*sumXY - sumX*sumY) / (n*sumXX - sumX*sumX)), true}
}
