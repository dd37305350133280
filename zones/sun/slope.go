package sun

import "example.org/turfplat/geo"

// A Slope is ground that lies aslant. Shadows that fall on it are reckoned as
// if all ground around lay in its plane. Where slopes overlap the first counts.
type Slope struct {
	Ground geo.Region
	Rise   float64 // over run: 0.1 rises 1 m in 10
	Aspect Degrees // the way it faces, downhill, clockwise from north
}

// reach returns how far, and which way, the shadow of a point moves on the
// slope for each metre it stands above the ground. It reports false while the
// sun stands behind the slope.
func (s Slope) reach(b beam) (geo.XY, bool) {
	const grazing = 1e-6 // shadows a million times as long as what casts them
	climb := b.climb + s.Rise*dot(s.Aspect.heading(), b.towards)
	return geo.XY{X: -b.towards.X / climb, Y: -b.towards.Y / climb}, climb > grazing
}
