package sun

import (
	"cmp"
	"math"
	"slices"
)

// examples returns the days whose course is told.
func (s Season) examples() []Date {
	days := s.days()
	var examples []Date
	for _, d := range days {
		if d.Day == 15 {
			examples = append(examples, d.Date)
		}
	}
	if len(examples) == 0 && len(days) > 0 {
		examples = append(examples, days[len(days)/2].Date)
	}
	return examples
}

// dayAt follows the sun over one day, in steps of a minute at most.
func (s Scene) dayAt(v view, date Date) Day {
	sun := s.dayOfSun(date)
	day := Day{Date: date, Rise: 12 + sun.rise, Set: 12 + sun.set}
	steps := math.Ceil((sun.set - sun.rise) * 60)
	step := (sun.set - sun.rise) / steps
	latest := make([]int, 1+len(s.Obstacles)) // one more than the place of each one's latest shade
	for i := range int(steps) {
		from := day.Rise + float64(i)*step
		covers := v.before(sun.beam(from + step/2 - 12))
		day.Got += step * passing(covers)
		for _, c := range covers {
			last := &latest[c.obstacle-Ground]
			if *last > 0 && day.Shades[*last-1].To > from-step/2 {
				day.Shades[*last-1].To = from + step
				continue
			}
			id, name := s.called(c.obstacle)
			day.Shades = append(day.Shades, Shade{from, from + step, c.obstacle, id, name, c.pass})
			*last = len(day.Shades)
		}
	}
	slices.SortStableFunc(day.Shades, func(a, b Shade) int {
		return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.Obstacle, b.Obstacle))
	})
	return day
}
