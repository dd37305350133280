package track

import (
	"example.org/turfplat/geo"
)

// standing is the noise of a receiver that stood still: how its fixes scatter
// about their mean, each seen on both axes from one place. It is zero for fewer
// than eight of them.
func standing(p path) Noise {
	const most = 1500
	if len(p.stations) < 8 {
		return Noise{}
	}
	middle := medianPlace(p.stations)
	every := 1 + len(p.stations)/most
	var seen []sighting
	for i := 0; i < len(p.stations); i += every {
		s := p.stations[i]
		off := s.at.Minus(middle)
		seen = append(seen, sighting{time: s.time, dir: geo.XY{X: 1}, off: off.X}, sighting{time: s.time, dir: geo.XY{Y: 1}, off: off.Y, side: 1})
	}
	b := p.believed(0)
	var m mixture
	for _, c := range candidates() {
		f := c.law.fitted(seen, 2)
		m.add(c, f, 1, c.weight+f.restricted+b.log(f.variance))
	}
	return m.estimate(seen[len(seen)-1].time - seen[0].time).noise
}
