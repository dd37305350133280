package sun

import (
	"cmp"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// Explain says which obstacle takes which hours of sun at one spot.
func (s Scene) Explain(at geo.XY, season Season) Account {
	v := s.viewFrom(at)
	var a Account
	taken := make([]float64, 1+len(s.Obstacles)) // from the ground on
	for _, b := range s.beams(season) {
		covers := v.before(b)
		a.Possible += b.hours
		a.Got += b.hours * passing(covers)
		share(covers, b.hours, taken)
	}
	a.Losses = s.losses(taken)
	for _, d := range season.examples() {
		a.Days = append(a.Days, s.dayAt(v, d))
	}
	return a
}

// share adds to taken what each cover takes of some hours.
func share(covers []cover, hours float64, taken []float64) {
	pass := passing(covers)
	sum := 0.0
	for _, c := range covers {
		sum += c.weight(pass)
	}
	for _, c := range covers {
		if w := c.weight(pass); w > 0 {
			taken[c.obstacle-Ground] += hours * (1 - pass) * w / sum
		}
	}
}

// weight is how heavily a cover counts among those that let a share through
// together.
func (c cover) weight(together float64) float64 {
	switch {
	case together > 0:
		return -math.Log(c.pass)
	case c.pass == 0:
		return 1
	}
	return 0
}

func (s Scene) losses(taken []float64) []Loss {
	var losses []Loss
	for i, hours := range taken {
		if hours > 0 {
			id, name := s.called(i + Ground)
			losses = append(losses, Loss{i + Ground, id, name, hours})
		}
	}
	slices.SortStableFunc(losses, func(a, b Loss) int { return cmp.Compare(b.Hours, a.Hours) })
	return losses
}

func (s Scene) called(obstacle int) (id, name string) {
	if obstacle == Ground {
		return "", "sloping ground"
	}
	return s.Obstacles[obstacle].ID, s.Obstacles[obstacle].Name
}
