package track

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

var lawTable = []struct {
	name string
	law  law
	tol  float64 // of a fit: the filter adds a rounding that is felt where little is new
}{
	{"white", white, 1e-6},
	{"rough", rough(20, 0), 1e-5},
	{"rough and white", rough(8, 1), 1e-6},
	{"smooth and white", smooth(15, 0.5), 1e-4},
	{"both", both(60, 6), 1e-3},
}

// TestFitAgainstDenseAlgebra asks the filter to agree with generalised least
// squares over the full covariance matrix.
func TestFitAgainstDenseAlgebra(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	var seen []sighting
	const count = 3
	for i := range 40 {
		side := i * count / 40
		sin, cos := math.Sincos(float64(side) * 1.3)
		seen = append(seen, sighting{
			time: float64(i) + 0.3*rng.Float64(), dir: geo.XY{X: cos, Y: sin}, side: side,
			off: rng.NormFloat64(), along: rng.Float64()*2 - 1, bow: float64(side%2) * rng.Float64(),
		})
	}
	for _, tt := range lawTable {
		got, want := tt.law.fitted(seen, count), denseFit(tt.law, seen, count)
		for _, p := range []struct {
			what      string
			got, want float64
		}{
			{"restricted", got.restricted, want.restricted}, {"full", got.full, want.full},
			{"variance", got.variance, want.variance}, {"freedom", got.freedom, want.freedom},
		} {
			if math.Abs(p.got-p.want) > tt.tol*(1+math.Abs(p.want)) {
				t.Errorf("%s: %s %.8f, want %.8f", tt.name, p.what, p.got, p.want)
			}
		}
	}
}

// denseFit is fitted by the textbook: C the covariance of the sightings, X the
// design, y the offsets.
func denseFit(l law, seen []sighting, count int) fit {
	n, columns := len(seen), 3*count+1
	// Eliminating C out of [C X y] leaves -X'C^-1X and so on below; the same
	// elimination gives log |C|.
	size := n + columns
	m := make([]float64, size*size)
	set := func(i, j int, v float64) { m[i*size+j], m[j*size+i] = v, v }
	for i, a := range seen {
		for j, b := range seen {
			c := l.correlation(math.Abs(a.time-b.time)) * a.dir.Dot(b.dir)
			if i == j {
				c += l.white
			}
			set(i, j, c)
		}
		set(i, n+3*a.side, 1)
		set(i, n+3*a.side+1, a.along)
		set(i, n+3*a.side+2, a.bow)
		set(i, n+columns-1, a.off)
	}
	var logC float64
	for k := range n {
		pivot := m[k*size+k]
		logC += math.Log(pivot)
		for i := k + 1; i < size; i++ {
			f := m[i*size+k] / pivot
			for j := k; j < size; j++ {
				m[i*size+j] -= f * m[k*size+j]
			}
		}
	}
	normal := make([]float64, columns*columns)
	for i := range columns {
		for j := range columns {
			normal[i*columns+j] = -m[(n+i)*size+n+j]
		}
	}
	rank, logX, rest := eliminated(normal, columns)
	freedom := float64(n - rank)
	return fit{
		restricted: -(logC + logX + freedom*math.Log(rest)) / 2,
		full:       -(logC + float64(n)*math.Log(rest)) / 2,
		variance:   rest / freedom,
		freedom:    freedom,
	}
}

func TestAreaVarianceAgainstAllPairs(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	var g gradient
	for i := range 60 {
		g.by = append(g.by, geo.XY{X: rng.NormFloat64(), Y: rng.NormFloat64()})
		g.time = append(g.time, float64(i)*(1+rng.Float64()))
	}
	for i := 1; i < len(g.time); i++ {
		g.time[i] = max(g.time[i], g.time[i-1])
	}
	for _, tt := range lawTable {
		var want float64
		for i, a := range g.by {
			for j, b := range g.by {
				want += a.Dot(b) * tt.law.correlation(math.Abs(g.time[i]-g.time[j]))
			}
			want += tt.law.white * a.Dot(a)
		}
		if got := g.binned().variance(tt.law); math.Abs(got-want) > 1e-9*want {
			t.Errorf("%s: %.9f m4, want %.9f", tt.name, got, want)
		}
	}
}

// TestPublishedAreaError: the standard propagation for independent vertices
// (Bondesson, Stahl & Holm 1998): a square of side L has L sigma sqrt(2), a
// rectangle sigma times its diagonal.
func TestPublishedAreaError(t *testing.T) {
	for _, tt := range []struct {
		name  string
		ring  []geo.XY
		sigma float64
		want  float64
	}{
		{"20 m square, 1 m", rectangle(20, 20), 1, 28.284271},
		{"30 x 20 m, 0.5 m", rectangle(30, 20), 0.5, 18.027756},
	} {
		l := lap{[]int{0, 1, 2, 3}, tt.ring}
		p := path{stations: make([]station, 4), interval: 1}
		for i := range p.stations {
			p.stations[i] = station{at: tt.ring[i], time: 100 * float64(i), until: 100 * float64(i), weight: 1}
		}
		tr := traverse{path: p, smooth: smoother{path: p, clock: make([]float64, 4), lost: make([]bool, 4)}, at: tt.ring}
		area, g := tr.lapArea([]lap{l})
		if got := tt.sigma * math.Sqrt(g.binned().variance(white)); math.Abs(got-tt.want) > 1e-5 || math.Abs(area-signedArea(tt.ring)) > 1e-9 {
			t.Errorf("%s: %.6f m2 on %.3f m2, want %.6f", tt.name, got, area, tt.want)
		}
	}
}

func TestScatterOfALaw(t *testing.T) {
	for _, tt := range lawTable {
		for _, span := range []float64{5, 60, 900} {
			const n = 600
			var want float64 // 1 less the mean correlation of all pairs
			for i := range n {
				for j := range n {
					c := 0.0
					if i != j {
						c = tt.law.correlation(span * math.Abs(float64(i-j)) / n)
					} else {
						c = 1 - tt.law.white
					}
					want += (1 - c - tt.law.white) / n / n
				}
			}
			want += tt.law.white
			if got := tt.law.scatter(span); math.Abs(got-want) > 0.01*want+1e-6 {
				t.Errorf("%s over %g s: %.5f, want %.5f", tt.name, span, got, want)
			}
		}
	}
}

func TestHalfWidth(t *testing.T) {
	const large = 1e9 // degrees of freedom
	for _, tt := range []struct {
		name string
		m    mixture
		want float64 // computed by bisection of the normal tail
		tol  float64
	}{
		{"one normal", mixture{area: []float64{4}, fits: []fit{{freedom: large}}}, 2 * normal95, 1e-6},
		{"Student's t of 10", mixture{area: []float64{1}, fits: []fit{{freedom: 10}}}, 2.2281, 0.15},
		{"one in twenty ten times as wide", mixture{area: []float64{1, 100}, fits: []fit{{freedom: large}, {freedom: large}}}, 0, 0},
	} {
		share := []float64{1}
		if len(tt.m.area) == 2 {
			share = []float64{0.95, 0.05}
			got := tt.m.halfWidth(share, 3)
			outside := 0.95*math.Erfc(got/math.Sqrt2) + 0.05*math.Erfc(got/math.Sqrt(200))
			if math.Abs(outside-0.05) > 1e-6 {
				t.Errorf("%s: %.4f leaves %.4f outside, want 0.05", tt.name, got, outside)
			}
			continue
		}
		if got := tt.m.halfWidth(share, math.Sqrt(tt.m.area[0])); math.Abs(got-tt.want) > tt.tol {
			t.Errorf("%s: %.5f, want %.5f", tt.name, got, tt.want)
		}
	}
}

// TestNoiseIsFound: the fit tells white noise from slow, and its size.
func TestNoiseIsFound(t *testing.T) {
	for _, tt := range []struct {
		name          string
		receiver      receiver
		white, factor float64 // least or most share of white noise; of the scatter
	}{
		{"white", receiver{sigma: 1, law: white}, 0.9, 1.15},
		{"slow", receiver{sigma: 1, law: rough(30, 0)}, 0.05, 1.3},
		{"smooth", receiver{sigma: 1, law: rough(10, 0)}, 0.1, 1.3},
	} {
		rng := rand.New(rand.NewPCG(5, 5))
		errors := tt.receiver.errors(rng, 1200)
		var p path
		for i, e := range errors {
			p.stations = append(p.stations, station{at: e, time: float64(i), until: float64(i), weight: 1})
		}
		p.fixes = make([]ingest.Fix, 1)
		n := standing(p)
		scatter := float64(n.Sigma) / sampled(p)
		if scatter > tt.factor || scatter < 1/tt.factor || (tt.receiver.law.white == 1) != (n.White > 0.5) || tt.white > 0.5 != (n.White >= tt.white) {
			t.Errorf("%s: found %+v, scatter %.2f times the sampled", tt.name, n, scatter)
		}
	}
}

// sampled is the 1-sigma scatter of stations about their mean on one axis.
func sampled(p path) float64 {
	var sum, square geo.XY
	n := float64(len(p.stations))
	for _, s := range p.stations {
		sum = sum.Plus(s.at.Times(1 / n))
		square = square.Plus(geo.XY{X: s.at.X * s.at.X / n, Y: s.at.Y * s.at.Y / n})
	}
	return math.Sqrt((square.X + square.Y - sum.Dot(sum)) / 2)
}
