package track

import (
	"math"

	"example.org/turfplat/geo"
)

// A filter is a Kalman filter of the errors that a law describes, for unit
// variance: for each axis the state of each part, which of a smooth part is
// its error and its rate. It runs columns of numbers seen at one time across
// the sides through the same gains: the design of the sides, and last the
// sightings themselves.
type filter struct {
	law         law
	start       []float64   // variance of each state at rest, one axis
	seen        []bool      // states that are errors, not rates
	mean        [][]float64 // of each state, x axis first; a row has the columns
	cov, gain   []float64   // of the states: square; and towards the last sighting
	row, normal []float64   // innovations, and the upper triangle of their products
	now         []float64   // how the last sighting looks at the states
	time        float64
	logdet      float64
}

func newFilter(l law, columns int, start float64) *filter {
	f := &filter{law: l, time: start}
	for _, p := range l.parts {
		f.start, f.seen = append(f.start, p.share), append(f.seen, true)
		if p.smooth {
			f.start, f.seen = append(f.start, p.share/(p.reach*p.reach)), append(f.seen, false)
		}
	}
	m := len(f.start)
	n := 2 * m
	f.cov, f.gain, f.now = make([]float64, n*n), make([]float64, n), make([]float64, n)
	f.mean = make([][]float64, n)
	for k := range n {
		f.cov[k*n+k] = f.start[k%m]
		f.mean[k] = make([]float64, columns)
	}
	f.row, f.normal = make([]float64, columns), make([]float64, columns*columns)
	return f
}

// A move is how an error and its rate follow from those a while before.
type move struct{ a, b, c, d float64 }

// fade lets time pass.
func (f *filter) fade(time float64) {
	passed := time - f.time
	f.time = time
	if passed == 0 {
		return
	}
	k, axis := 0, len(f.start)
	for _, p := range f.law.parts {
		u := passed / p.reach
		e := math.Exp(-u)
		if !p.smooth {
			f.single(k, move{a: e}, f.start[k])
			f.single(k+axis, move{a: e}, f.start[k])
			k++
			continue
		}
		m := move{e * (1 + u), e * passed, -e * u / p.reach, e * (1 - u)}
		f.pair(k, m, f.start[k], f.start[k+1])
		f.pair(k+axis, m, f.start[k], f.start[k+1])
		k += 2
	}
}

// single moves one state on, and adds what keeps it at rest.
func (f *filter) single(at int, m move, rest float64) {
	n := len(f.gain)
	for c := range f.mean[at] {
		f.mean[at][c] *= m.a
	}
	for j := range n {
		f.cov[at*n+j] *= m.a
	}
	for j := range n {
		f.cov[j*n+at] *= m.a
	}
	f.cov[at*n+at] += rest * (1 - m.a*m.a)
}

// pair moves an error and its rate on, and adds what keeps them at rest.
func (f *filter) pair(at int, m move, rest, restRate float64) {
	n := len(f.gain)
	x, v := f.mean[at], f.mean[at+1]
	for c := range x {
		x[c], v[c] = m.a*x[c]+m.b*v[c], m.c*x[c]+m.d*v[c]
	}
	for j := range n {
		p, q := f.cov[at*n+j], f.cov[(at+1)*n+j]
		f.cov[at*n+j], f.cov[(at+1)*n+j] = m.a*p+m.b*q, m.c*p+m.d*q
	}
	for j := range n {
		p, q := f.cov[j*n+at], f.cov[j*n+at+1]
		f.cov[j*n+at], f.cov[j*n+at+1] = m.a*p+m.b*q, m.c*p+m.d*q
	}
	cross := -m.a*m.c*rest - m.b*m.d*restRate
	f.cov[at*n+at] += rest - m.a*m.a*rest - m.b*m.b*restRate
	f.cov[(at+1)*n+at+1] += restRate - m.c*m.c*rest - m.d*m.d*restRate
	f.cov[at*n+at+1] += cross
	f.cov[(at+1)*n+at] += cross
}

// see takes in one sighting.
func (f *filter) see(s sighting) {
	const rounding = 1e-7 // a law without white noise sees nothing new in no time
	f.fade(s.time)
	v := f.aim(s.dir) + f.law.white + rounding
	f.logdet += math.Log(v)
	columns := len(f.row)
	clear(f.row)
	for k, h := range f.now {
		for c, m := range f.mean[k] {
			f.row[c] -= h * m
		}
	}
	f.row[3*s.side]++
	f.row[3*s.side+1] += s.along
	f.row[3*s.side+2] += s.bow
	f.row[columns-1] += s.off
	f.learn(v)
	for c, r := range f.row {
		line := f.normal[c*columns : (c+1)*columns]
		for d := c; d < columns && r != 0; d++ {
			line[d] += r / v * f.row[d]
		}
	}
}

// learn moves the states towards the last sighting, of variance v.
func (f *filter) learn(v float64) {
	n := len(f.gain)
	for k, g := range f.gain {
		for c, r := range f.row {
			f.mean[k][c] += g / v * r
		}
		for j, o := range f.gain {
			f.cov[k*n+j] -= g * o / v
		}
	}
}

// aim works out how a sighting in a direction hangs together with the states,
// and returns its variance without white noise.
func (f *filter) aim(dir geo.XY) float64 {
	n, m := len(f.gain), len(f.start)
	for k := range f.now {
		f.now[k] = 0
		if f.seen[k%m] {
			f.now[k] = dir.X
			if k >= m {
				f.now[k] = dir.Y
			}
		}
	}
	var variance float64
	for k := range f.gain {
		f.gain[k] = 0
		for j, h := range f.now {
			f.gain[k] += f.cov[k*n+j] * h
		}
	}
	for k, h := range f.now {
		variance += h * f.gain[k]
	}
	return variance
}
