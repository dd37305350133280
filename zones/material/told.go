package material

import (
	"math"
	"strconv"
)

// Told writes a quantity that a program or a rule states in the units that
// people read: temperatures to 0.1 degree, depths to half a centimetre or half
// an inch, rates of a weight to three figures. Others stand as they were written.
func (f Figures) Told(q Quantity) string {
	for _, c := range counterparts {
		from, to, ahead := c.us, c.metric, f.metric()
		if !ahead {
			from, to = to, from
		}
		if q.Unit.String() != from {
			continue
		}
		v := c.of(q.Number, ahead)
		if q.Of != Itself {
			to = mustParse("1 " + to).Unit.of(q.Of)
		}
		return number(c.round(v)) + " " + to
	}
	return q.String()
}

// A counterpart is a unit of the one system that people read in place of one
// of the other.
type counterpart struct {
	us, metric string
	zero       float64 // of the metric unit, in that of the US
	size       float64 // units of the US in the metric one
	round      func(float64) float64
}

var counterparts = []counterpart{
	{"F", "C", 32, 1.8, func(v float64) float64 { return math.Round(v*10) / 10 }},
	{"in", "cm", 0, 1 / 2.54, nominal},
	{"lb / 1000 ft2", "g / m2", 0, poundsPer1000, func(v float64) float64 { return figures(v, 3) }},
}

// poundsPer1000 is a gram on a square metre in lb / 1000 ft2.
const poundsPer1000 = 92.90304 / 453.59237

// of turns a number into the metric unit, or back.
func (c counterpart) of(v float64, toMetric bool) float64 {
	if toMetric {
		return (v - c.zero) / c.size
	}
	return v*c.size + c.zero
}

// nominal rounds a depth as sensors have theirs: 2 in is 5 cm, 4 in 10 cm.
func nominal(v float64) float64 {
	if v >= 5 {
		return math.Round(v)
	}
	return math.Round(v*2) / 2
}

// figures rounds to so many significant figures.
func figures(v float64, n int) float64 {
	text := strconv.FormatFloat(v, 'e', n-1, 64)
	v, _ = strconv.ParseFloat(text, 64) // of what was just written
	return v
}
