package program

import (
	"fmt"
	"time"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/soil"
)

// A record is what the log of a station tells on the day of a plan. Nothing
// after that day is looked at.
type record struct {
	station *soil.Station
	today   time.Time
	units   zones.Units
}

// An opening is when a trigger opened and closed a window, by a log.
type opening struct {
	opened, closed time.Time // zero = not yet
	decided        string    // the reading that opened it, in words
	now            string    // how it stands and which way it goes, in words; "" = not known
	expected       time.Time // the day on which it opens if the trend lasts; zero = not known
	unsure         string    // why the log cannot say, or not for sure; "" if it can
	told           string    // what is to be told of the sensor; may be empty
}

// rule is the trigger as the log reads it.
func (t SoilTrigger) rule() soil.Rule {
	r := soil.Rule{TrailDays: t.Days, Falling: t.AtMost != nil}
	if r.Falling {
		r.Opens = material.Temperature(t.AtMost.SI())
	} else {
		r.Opens = material.Temperature(t.AtLeast.SI())
	}
	if t.Closes != nil {
		r.HasClose, r.Closes = true, material.Temperature(t.Closes.SI())
	}
	return r
}

// series is the days of the sensor nearest to the trigger's depth.
func (r *record) series(t SoilTrigger) (soil.Series, error) {
	depth, err := t.Depth.Length()
	if err != nil {
		return soil.Series{}, err
	}
	statistic := soil.Mean
	if t.Lowest {
		statistic = soil.Lowest
	}
	return r.station.Soil(depth, statistic)
}

// soil tells when the soil first met a trigger in a season.
func (r *record) soil(t SoilTrigger, season time.Time) opening {
	days, err := r.series(t)
	if err != nil {
		return opening{unsure: err.Error()}
	}
	rule := t.rule()
	w := rule.Window(days, rule.Begins(season), r.today)
	o := opening{opened: w.Opened.Day, closed: w.Closed.Day, now: r.standing(w)}
	if !o.opened.IsZero() {
		o.decided = fmt.Sprintf("%d-day mean %s on %s, that day %s (column %s)", t.Days,
			r.degrees(w.Opened.Mean), isoDay(w.Opened.Day), r.degrees(w.Opened.Reading.Value), days.Column)
	}
	if o.opened.IsZero() {
		o.expected = expected(w, rule, r.today)
	}
	o.unsure = w.Doubt
	o.told = days.Note
	return o
}

// standing says how a window stands and which way the soil goes.
func (r *record) standing(w soil.Window) string {
	if w.Now.Day.IsZero() {
		return ""
	}
	text := "at " + r.degrees(w.Now.Mean)
	if w.UnknownDays > 0 {
		text += " on " + isoDay(w.Now.Day)
	}
	if !w.Trend.Known {
		return text
	}
	perDay := r.difference(w.Trend.PerDay)
	switch {
	case perDay >= steady:
		return fmt.Sprintf("%s, rising %.1f %s a day", text, perDay, r.unit())
	case perDay <= -steady:
		return fmt.Sprintf("%s, falling %.1f %s a day", text, -perDay, r.unit())
	}
	return text + ", steady"
}

// expected is the day on which a window that is still shut opens if the trend
// lasts; zero if it leads away, or the day it points at is past.
func expected(w soil.Window, rule soil.Rule, today time.Time) time.Time {
	days, ok := w.Trend.DaysTo(w.Now.Mean, rule.Opens)
	day := w.Now.Day.AddDate(0, 0, days)
	if !ok || !day.After(today) {
		return time.Time{}
	}
	return day
}

// likely says when a trigger opens if the trend lasts, or that this is after the
// last day of the dates; "" if it is not known.
func (o opening) likely(last, today time.Time) string {
	day := o.expected
	if day.IsZero() {
		return ""
	}
	switch left := int(day.Sub(today) / (24 * time.Hour)); {
	case day.After(last):
		return fmt.Sprintf("not likely to open before its dates end on %s", isoDay(last))
	case left == 1:
		return fmt.Sprintf("likely to open tomorrow, %s", isoDay(day))
	default:
		return fmt.Sprintf("likely to open in about %d days, on %s", left, isoDay(day))
	}
}

// steady is a change a day, in degrees of either unit, that is not worth a
// word.
const steady = 0.05

// degreeDays tells when a sum was reached.
func (r *record) degreeDays(g DegreeDays, since time.Time) opening {
	highest, err := r.station.Air(soil.Highest)
	if err != nil {
		return opening{unsure: err.Error()}
	}
	lowest, err := r.station.Air(soil.Lowest)
	if err != nil {
		return opening{unsure: err.Error()}
	}
	base := material.Temperature(g.Base.SI())
	sums := soil.SumDegrees(highest.Days, lowest.Days, base, since, r.today)
	scale, told := g.scale(), scaleOf(material.Figures{Units: r.units})
	o := opening{unsure: sums.Ended}
	if n := len(sums.Days); n > 0 {
		o.now = fmt.Sprintf("%.0f on %s", sums.Days[n-1].Sum*told, isoDay(sums.Days[n-1].Day))
	}
	if day, ok := sums.Reaches(g.AtLeast / scale); ok {
		o.opened = day.Day
		o.decided = fmt.Sprintf("%.0f on %s", day.Sum*told, isoDay(day.Day))
	}
	if day, ok := sums.Reaches(g.Closes / scale); ok && g.Closes > 0 {
		o.closed = day.Day
	}
	return o
}

// scaleOf turns degree days in Celsius into those that people read.
func scaleOf(f material.Figures) float64 {
	if f.Units == zones.Metric {
		return 1
	}
	return 9.0 / 5
}

// scale turns degree days in Celsius into those of the trigger's unit.
func (g DegreeDays) scale() float64 {
	if g.Base.Unit == fahrenheit {
		return 9.0 / 5
	}
	return 1
}

var fahrenheit = must(material.ParseUnit("F"))

// soilNow is the trailing mean of a trigger on the day of the plan; false if
// the log does not tell.
func (r *record) soilNow(t SoilTrigger) (material.Temperature, bool) {
	days, err := r.series(t)
	if err != nil {
		return 0, false
	}
	w := soil.Rule{TrailDays: t.Days}.Window(days, r.today.AddDate(0, 0, -t.Days), r.today)
	return w.Now.Mean, w.Now.Day.Equal(r.today)
}

// airMax is the highest temperature of the air on the day of the plan.
func (r *record) airMax() (material.Temperature, bool) {
	days, err := r.station.Air(soil.Highest)
	if n := len(days.Days); err != nil || n == 0 {
		return 0, false
	}
	for _, d := range days.Days {
		if d.Day.Equal(r.today) {
			return d.Value, true
		}
	}
	return 0, false
}

func (r *record) unit() string {
	if r.units == zones.Metric {
		return "C"
	}
	return "F"
}

// difference turns a difference in Celsius into the units of the site.
func (r *record) difference(t material.Temperature) float64 {
	if r.units == zones.Metric {
		return float64(t)
	}
	return float64(t) * 9 / 5
}

func (r *record) degrees(t material.Temperature) string { return degrees(t, r.units) }

// degrees writes a temperature in the units of a site.
func degrees(t material.Temperature, units zones.Units) string {
	if units == zones.Metric {
		return fmt.Sprintf("%.1f C", float64(t))
	}
	return fmt.Sprintf("%.1f F", float64(t)*9/5+32)
}
