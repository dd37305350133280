package sun

import (
	"math"

	"example.org/turfplat/geo"
)

// A beam is the sun at one instant of a season. It stands for as many hours of
// a mean day as any other.
type beam struct {
	towards geo.XY  // the way to the sun over the ground, one metre long
	climb   float64 // metres up on that way
	hours   float64
	inLeaf  float64 // share of a deciduous tree's leaves that are out
}

// A season is sampled at 2,584 instants in all, laid as a lattice of Fibonacci
// numbers over its days and the hours of each, so that no two share the same
// time in the season or the same share of a day (Niederreiter 1992, Random
// Number Generation and Quasi-Monte Carlo Methods, chapter 5). A lattice of
// days by hours would need far more: where the shade of a wall moves past a
// spot from one day to the next, it would see all hours of that day change at
// once.
const latticePoints, latticeStep = 2584, 1597

// A dayOfSun is the sun's way on a day of a season.
type dayOfSun struct {
	course
	rise, set float64 // hours from noon between which direct sun counts
	inLeaf    float64 // share of a deciduous tree's leaves that are out
}

func (s Scene) dayOfSun(date Date) dayOfSun {
	c := courseOf(s.Place.Lon(), s.Place.Lat(), commonYear, date)
	rise, set := c.above(s.MinElevation)
	return dayOfSun{c, rise, set, leaves.inLeaf(date, s.Place.Lat())}
}

// beam returns the sun at an hour from noon.
func (d dayOfSun) beam(hour float64) beam {
	p := d.at(hour)
	return beam{towards: p.Azimuth.heading(), climb: math.Tan(p.Elevation.radians()), inLeaf: d.inLeaf}
}

// beams samples the sun of a season.
func (s Scene) beams(season Season) []beam {
	return s.lattice(season, latticePoints, latticeStep)
}

// lattice samples the sun of a season at a number of instants. Days count by
// their share and their hours of sun.
func (s Scene) lattice(season Season, points, step int) []beam {
	var days []dayOfSun
	var until []float64 // hours of a mean day that fall on the days so far
	total := 0.0
	for _, d := range season.days() {
		if day := s.dayOfSun(d.Date); day.set > day.rise {
			total += d.share * (day.set - day.rise)
			days, until = append(days, day), append(until, total)
		}
	}
	if len(days) == 0 {
		return nil
	}
	beams := make([]beam, points)
	day := 0
	for i := range beams {
		for day < len(days)-1 && until[day] < total*(float64(i)+0.5)/float64(points) {
			day++
		}
		d := days[day]
		share := (float64(i*step%points) + 0.5) / float64(points)
		beams[i] = d.beam(d.rise + share*(d.set-d.rise))
		beams[i].hours = total / float64(points)
	}
	return beams
}
