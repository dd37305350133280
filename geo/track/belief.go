package track

import (
	"math"

	"example.org/turfplat/geo"
)

// A belief is what is thought of a receiver before its fixes are looked at:
// the 1-sigma error on one axis, and by which factor, one sigma either way,
// that may be wrong.
type belief struct {
	sigma  float64 // m
	factor float64
	text   string
}

// beliefs are the errors of receivers by what they tell of themselves.
// Statements are of the error of a position; how much of it changes within a
// walk is for the fixes to say. All are common practice, no source.
var (
	tellsNothing = belief{1.4, 2.6, "the receiver states no error; such receivers wander by 0.5 to 3 m"}
	differential = belief{0.8, 1.8, "differential fixes"}
	rtkFloat     = belief{0.3, 2, "RTK float fixes"}
	rtkFixed     = belief{0.05, 2.5, "RTK fixed fixes"}
	tellsHDOP    = belief{1.4, 2.4, "dilution of precision times 1.4 m"}
	tellsSigma   = belief{0, 1.4, "the receiver states its error"}
	userSays     = belief{0, 1.1, "as stated"}
)

// believed is what to think of the receiver of a path.
func (p path) believed(stated geo.Length) belief {
	var sigmas, hdops, qualities []float64
	for _, s := range p.stations {
		f := p.fixes[s.fix]
		if f.Sigma > 0 {
			sigmas = append(sigmas, f.Sigma)
		}
		if f.HDOP > 0 {
			hdops = append(hdops, f.HDOP)
		}
		qualities = append(qualities, float64(f.Quality))
	}
	most := len(p.stations) / 2
	switch {
	case stated > 0:
		return belief{float64(stated), userSays.factor, userSays.text}
	case len(sigmas) > most:
		return belief{max(0.01, median(sigmas)), tellsSigma.factor, tellsSigma.text}
	}
	switch median(qualities) {
	case 4:
		return rtkFixed
	case 5:
		return rtkFloat
	case 2:
		return differential
	}
	if len(hdops) > most {
		return belief{median(hdops) * tellsHDOP.sigma, tellsHDOP.factor, tellsHDOP.text}
	}
	return tellsNothing
}

// log returns the log of the density of a variance, but for a constant.
func (b belief) log(variance float64) float64 {
	z := (math.Log(variance)/2 - math.Log(b.sigma)) / math.Log(b.factor)
	return -z * z / 2
}
