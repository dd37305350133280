package lanes

import "math"

// Evenness says how even a cover is: its mean, its least and its most, and the
// coefficient of variation (standard deviation over mean) as a share.
type Evenness struct{ Mean, CV, Least, Most float64 }

// tally gathers an Evenness.
type tally struct {
	n, sum, squares float64
	least, most     float64
}

func (t *tally) add(v float64) { t.weigh(v, 1) }

// weigh adds what counts as w.
func (t *tally) weigh(v, w float64) {
	if t.n == 0 {
		t.least, t.most = v, v
	}
	t.n += w
	t.sum += w * v
	t.squares += w * v * v
	t.least, t.most = min(t.least, v), max(t.most, v)
}

func (t *tally) evenness() Evenness {
	if t.n == 0 {
		return Evenness{}
	}
	mean := t.sum / t.n
	e := Evenness{Mean: mean, Least: t.least, Most: t.most}
	if mean > 0 {
		e.CV = math.Sqrt(max(0, t.squares/t.n-mean*mean)) / mean
	}
	return e
}

// Abreast returns the cover that endless passes leave, in one direction and a
// pitch in metres apart, in shares of the catch at the centre of one pass.
func (p Pattern) Abreast(pitch float64) Evenness {
	const stations = 2000
	center := p.catch(0)
	var t tally
	for i := range stations {
		x := (float64(i) + 0.5) / stations * pitch
		var sum float64
		for k := math.Floor((-p.reach[0] - x) / pitch); k*pitch+x <= p.reach[1]; k++ {
			sum += p.catch(k*pitch + x)
		}
		t.add(sum / center)
	}
	return t.evenness()
}
