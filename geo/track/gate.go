package track

import (
	"fmt"
	"math"
)

// gated drops the fixes that the receiver itself calls poor, and gives the
// fair ones less weight.
func (p path) gated() (path, Step) {
	step := Step{Name: "quality", Before: len(p.stations)}
	p.keep(func(i int) bool {
		f := p.fixes[p.stations[i].fix]
		return f.Quality != 0 && f.HDOP <= worstHDOP.Value && f.Sigma <= worstSigma.Value &&
			(f.Satellites == 0 || f.Satellites >= int(fewestSats.Value))
	})
	fair := 0
	for i, s := range p.stations {
		if r := p.fixes[s.fix].HDOP / fairHDOP.Value; r > 1 {
			p.stations[i].weight = 1 / (r * r)
			fair++
		}
	}
	step.Text = fmt.Sprintf("dropped: no fix, HDOP over %g, stated error over %g m, fewer than %g satellites; %d with HDOP over %g count less",
		worstHDOP.Value, worstSigma.Value, fewestSats.Value, fair, fairHDOP.Value)
	return p, step.kept(len(p.stations))
}

// settled drops the start of a walk during which the receiver visibly
// converges, up to a tenth of the walk.
func (p path) settled() (path, Step) {
	step := Step{Name: "warm-up", Before: len(p.stations), Text: "no sign of a receiver that settles"}
	const inRow = 5
	limit := max(settledSpeed.Value, 3*p.usualSpeed())
	last := int(settlingTime.Value * float64(len(p.stations)))
	run := 0
	for i := 1; i < len(p.stations) && p.timed && i-run <= last; i++ {
		if p.unsettled(i, limit) {
			run = 0
			continue
		}
		if run++; run == inRow {
			if first := i - inRow; first > 0 {
				p.stations = p.stations[first:]
				step.Text = fmt.Sprintf("dropped until %d fixes in a row moved slower than %.1f m/s and the stated error was steady", inRow, limit)
			}
			break
		}
	}
	return p, step.kept(len(p.stations))
}

// unsettled reports whether the receiver jumps to station i, or the error it
// states still changes much.
func (p path) unsettled(i int, limit float64) bool {
	a, b := p.stations[i-1], p.stations[i]
	before, after := p.fixes[a.fix].Sigma, p.fixes[b.fix].Sigma
	return a.at.Distance(b.at) > limit*(b.time-a.time) || math.Abs(before-after) > before/4
}
