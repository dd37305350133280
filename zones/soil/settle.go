package soil

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"example.org/turfplat/geo/ingest"
)

// settle puts the readings of each sensor in order, and leaves out those that
// cannot be trusted.
func (l *logReader) settle() {
	if l.readings == 0 {
		l.findings.refuse(0, "soil_empty", "the log has no readings of temperature", "look whether --columns names the right ones")
		return
	}
	for _, station := range l.inOrder() {
		slices.SortFunc(station.sensors, func(a, b *sensor) int { return cmp.Compare(a.column.name, b.column.name) })
		for _, s := range station.sensors {
			l.sort(s)
			l.dropRepeats(s)
			s.step = usualStep(s.readings)
			l.judgeUnit(station, s)
			l.dropImpossible(s)
			l.dropStuck(station, s)
		}
	}
	l.refuseWrongUnits()
}

func (l *logReader) inOrder() []*Station {
	var list []*Station
	for _, s := range l.stations {
		list = append(list, s)
	}
	slices.SortFunc(list, func(a, b *Station) int { return cmp.Compare(a.Name, b.Name) })
	return list
}

// sort orders readings by time, those of one moment as they were read.
func (l *logReader) sort(s *sensor) {
	byTime := func(a, b reading) int { return cmp.Compare(a.at, b.at) }
	if slices.IsSortedFunc(s.readings, byTime) {
		return
	}
	for i, r := range s.readings[1:] {
		if r.at < s.readings[i].at {
			l.findings.warn(r.line, s.column.name, "sensors", "soil_order", "rows are out of order, sorted by time", "")
			break
		}
	}
	slices.SortStableFunc(s.readings, byTime)
}

// dropRepeats keeps the first of the readings of a moment.
func (l *logReader) dropRepeats(s *sensor) {
	kept := s.readings[:1]
	for _, r := range s.readings[1:] {
		last := kept[len(kept)-1]
		if r.at != last.at {
			kept = append(kept, r)
			continue
		}
		if r.value != last.value {
			l.findings.warn(r.line, s.column.name, "readings", "soil_repeat", fmt.Sprintf("another reading of the moment on line %d, left out", last.line),
				"if the log is of several places, name their column with --columns station=...")
		}
	}
	s.readings = kept
}

// dropImpossible leaves out single readings that nothing is as hot as, of a
// column whose unit is believed.
func (l *logReader) dropImpossible(s *sensor) {
	s.readings = slices.DeleteFunc(s.readings, func(r reading) bool {
		if r.value > possibleHigh {
			l.tellImpossible(s.column, r.value, r.line)
		}
		return r.value > possibleHigh
	})
}

// usualStep is the median time from one reading to the next, in seconds; a day
// if there is only one reading.
func usualStep(readings []reading) int64 {
	if len(readings) < 2 {
		return daySeconds
	}
	steps := make([]int64, 0, len(readings)-1)
	for i, r := range readings[1:] {
		steps = append(steps, r.at-readings[i].at)
	}
	slices.Sort(steps)
	return steps[len(steps)/2]
}

// daily reports whether the sensor gives a value a day.
func (s *sensor) daily() bool { return s.step > daySeconds*3/4 }

// at tells people which station it is, where there is more than one.
func (s *Station) at() string {
	if s.Name == "" {
		return ""
	}
	return " at station " + ingest.Quoted(s.Name)
}

// isoDay writes a day for people.
func isoDay(day time.Time) string { return day.Format(time.DateOnly) }
