package track

import (
	"math"

	"example.org/turfplat/geo"
)

// A sighting is one station seen across the side it was walked along.
type sighting struct {
	time  float64 // s
	dir   geo.XY  // unit vector across the side
	off   float64 // how far the station lies along dir from the side's line, m
	side  int
	along float64 // place along the side, -1 to 1; 0 if it has no length
	bow   float64 // how far an arc bows out there, as a share of the most; 0 on a straight side
}

// A fit is how well a law explains sightings about straight sides.
type fit struct {
	restricted float64 // log of the restricted likelihood (Patterson & Thompson 1971, Biometrika 58:545-554)
	full       float64 // log of the likelihood at its greatest
	variance   float64 // of the errors on one axis, m2
	freedom    float64 // sightings less what the sides take
}

// fitted runs sightings, in order of time, against a number of sides, each of
// unknown offset and slant, and bow if it is an arc.
func (l law) fitted(sightings []sighting, count int) fit {
	f := newFilter(l, 3*count+1, sightings[0].time)
	for _, s := range sightings {
		f.see(s)
	}
	taken, logDesign, rest := eliminated(f.normal, 3*count+1)
	n := float64(len(sightings))
	freedom := n - float64(taken)
	return fit{
		restricted: -(f.logdet + logDesign + freedom*math.Log(rest)) / 2,
		full:       -(f.logdet + n*math.Log(rest)) / 2,
		variance:   rest / freedom,
		freedom:    freedom,
	}
}

// eliminated solves the normal equations in the upper triangle of a symmetric
// matrix for all but the last column, in place. It returns how many columns
// say something new, the log-determinant of those, and what remains of the
// last.
func eliminated(m []float64, n int) (rank int, logdet, rest float64) {
	for k := range n - 1 {
		pivot := m[k*n+k]
		if pivot < 1e-9 {
			continue
		}
		rank++
		logdet += math.Log(pivot)
		for i := k + 1; i < n; i++ {
			f := m[k*n+i] / pivot
			for j := i; j < n && f != 0; j++ {
				m[i*n+j] -= f * m[k*n+j]
			}
		}
	}
	return rank, logdet, max(m[n*n-1], 1e-9)
}
