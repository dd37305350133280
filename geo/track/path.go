package track

import (
	"math"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A station is a fix in the frame on its way through the cleaning, or a stop
// that several fixes have become.
type station struct {
	at          geo.XY
	time, until float64 // s from the walk's first fix; until > time at a stop
	weight      float64 // 1 for a good fix
	fix         int     // index in the path's fixes
}

// A path is a walk: stations in the order walked.
type path struct {
	fixes    []ingest.Fix
	stations []station
	timed    bool    // times are the receiver's; otherwise the way walked at the usual pace
	interval float64 // usual time between fixes, s
}

// newPath puts the fixes of a walk in order of time, and drops those that
// follow one another too fast to tell anything new, or lie off the frame.
// Unless all fixes have a time, their order stands.
func newPath(fixes []ingest.Fix, frame geo.Frame) (path, Step) {
	step := Step{Name: "order", Before: len(fixes), Text: "sorted by time; fixes with the time of another, or hardly later, dropped"}
	p := path{fixes: fixes, timed: !slices.ContainsFunc(fixes, func(f ingest.Fix) bool { return f.Time.IsZero() })}
	inTime := func(a, b ingest.Fix) int { return a.Time.Compare(b.Time) }
	switch {
	case p.timed && !slices.IsSortedFunc(fixes, inTime):
		p.fixes = slices.Clone(fixes)
		slices.SortStableFunc(p.fixes, inTime)
	case !p.timed:
		step.Text = "no times: the order of the file stands, and time is way walked at the usual pace; repeated places dropped"
	}
	p.stations = make([]station, 0, len(fixes))
	for i, f := range p.fixes {
		s := station{at: frame.XY(f.At), weight: 1, fix: i}
		if math.IsNaN(s.at.X+s.at.Y) || math.IsInf(s.at.X+s.at.Y, 0) {
			continue
		}
		if p.timed {
			s.time = f.Time.Sub(p.fixes[0].Time).Seconds()
		}
		if n := len(p.stations); n > 0 {
			last := p.stations[n-1]
			if !p.timed {
				s.time = last.time + s.at.Distance(last.at)/pace.Value
			}
			if s.time-last.time < closestFixes.Value {
				continue
			}
		}
		s.until = s.time
		p.stations = append(p.stations, s)
	}
	p.interval = p.medianInterval()
	return p, step.kept(len(p.stations))
}

func (p path) medianInterval() float64 {
	between := make([]float64, 0, len(p.stations))
	for i := 1; i < len(p.stations); i++ {
		between = append(between, p.stations[i].time-p.stations[i-1].time)
	}
	return max(closestFixes.Value, median(between))
}

// median returns the middle value, the upper of two, and sorts; 0 of none.
func median(values []float64) float64 {
	if len(values) == 0 {
		return 0
	}
	slices.Sort(values)
	return values[len(values)/2]
}

// medianPlace returns the median on each axis.
func medianPlace(stations []station) geo.XY {
	x, y := make([]float64, len(stations)), make([]float64, len(stations))
	for i, s := range stations {
		x[i], y[i] = s.at.X, s.at.Y
	}
	return geo.XY{X: median(x), Y: median(y)}
}

// keep leaves those stations in the path that pass.
func (p *path) keep(pass func(i int) bool) {
	kept := p.stations[:0]
	for i, s := range p.stations {
		if pass(i) {
			kept = append(kept, s)
		}
	}
	p.stations = kept
}

// lost reports whether the edge walked from station i-1 to station i is
// unobserved.
func (p path) lost(i int) bool {
	a, b := p.stations[i-1], p.stations[i]
	way := a.at.Distance(b.at)
	usual := 4 * p.interval
	if !p.timed {
		return way > max(lostWay.Value, pace.Value*usual)
	}
	silence := b.time - a.until
	return silence > max(lostTime.Value, usual) && way > closeGate.Value ||
		silence > usual && way > lostWay.Value
}

// usualSpeed is the median speed between stations, m/s.
func (p path) usualSpeed() float64 {
	speeds := make([]float64, 0, len(p.stations))
	for i := 1; i < len(p.stations); i++ {
		a, b := p.stations[i-1], p.stations[i]
		if b.time > a.until {
			speeds = append(speeds, a.at.Distance(b.at)/(b.time-a.until))
		}
	}
	return median(speeds)
}

// extent is the greatest distance of a station from the median of all.
func (p path) extent() float64 {
	if len(p.stations) == 0 {
		return 0
	}
	var most float64
	centre := medianPlace(p.stations)
	for _, s := range p.stations {
		most = max(most, s.at.Distance(centre))
	}
	return most
}
