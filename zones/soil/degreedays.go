package soil

import (
	"fmt"
	"time"

	"example.org/turfplat/zones/material"
)

// A DegreeDay is the heat gathered up to a day and with it.
type DegreeDay struct {
	Day time.Time
	Sum float64 // degrees Celsius times days
}

// DegreeDays is the heat gathered day by day, as far as the days are known.
type DegreeDays struct {
	Days   []DegreeDay
	Filled int    // of these days, that are not known and were filled in between their neighbours
	Ended  string // why it ends before it was asked to; "" if it does not
}

// HeatOfDay is what a day adds to a sum: the mean of the day's highest and
// lowest temperature less the base, never less than nothing (Michigan State
// University and Virginia Tech turf notes).
func HeatOfDay(highest, lowest, base material.Temperature) float64 {
	return max(0, float64((highest+lowest)/2-base))
}

// SumDegrees adds up the heat of days from one on, up to and with another. Up to
// three days in a row that are not known are filled in between the days before
// and after; beyond that the sum ends, as any more would be a guess.
func SumDegrees(highest, lowest []DayValue, base material.Temperature, from, upTo time.Time) DegreeDays {
	heat := heatByDay(highest, lowest, base)
	var d DegreeDays
	sum := 0.0
	for day := from; !day.After(upTo); day = day.AddDate(0, 0, 1) {
		h, known := heat[day]
		if !known {
			var ok bool
			if h, ok = between(heat, day, from, upTo); !ok {
				d.Ended = fmt.Sprintf("the air of %s is not known, nor of enough days about it", isoDay(day))
				return d
			}
			d.Filled++
		}
		sum += h
		d.Days = append(d.Days, DegreeDay{day, sum})
	}
	return d
}

func heatByDay(highest, lowest []DayValue, base material.Temperature) map[time.Time]float64 {
	lows := make(map[time.Time]material.Temperature)
	for _, d := range lowest {
		lows[d.Day] = d.Value
	}
	heat := make(map[time.Time]float64)
	for _, d := range highest {
		if low, known := lows[d.Day]; known {
			heat[d.Day] = HeatOfDay(d.Value, low, base)
		}
	}
	return heat
}

// between is the heat of a day that is not known, on a straight line between
// the nearest known days before and after it; ok is false if too many in a row
// are not known.
func between(heat map[time.Time]float64, day, from, upTo time.Time) (h float64, ok bool) {
	before, after := 1, 1
	for ; before <= fillDays; before++ {
		if _, known := heat[day.AddDate(0, 0, -before)]; known {
			break
		}
	}
	for ; after <= fillDays; after++ {
		if _, known := heat[day.AddDate(0, 0, after)]; known {
			break
		}
	}
	first, last := day.AddDate(0, 0, -before), day.AddDate(0, 0, after)
	if before+after-1 > fillDays || last.After(upTo) {
		return 0, false
	}
	h0, h1 := heat[first], heat[last]
	return h0 + (h1-h0)*float64(before)/float64(before+after), true
}

// Reaches is the first day on which the sum is at least as much, in degrees
// Celsius times days.
func (d DegreeDays) Reaches(sum float64) (DegreeDay, bool) {
	for _, day := range d.Days {
		if day.Sum >= sum-hair {
			return day, true
		}
	}
	return DegreeDay{}, false
}
