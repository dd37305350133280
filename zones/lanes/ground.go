package lanes

import (
	"math"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// ground splits a plot's turf into what can be walked with a spreader and what
// is too narrow or too steep for it. Fences part it.
func (y Yard) ground(p Plot, practice Practice) (walked, hand geo.Region, err error) {
	if p.ByHand {
		return geo.Region{}, p.Turf, nil
	}
	turf, err := y.parted(p.Turf, practice.FenceStrip)
	if err != nil {
		return geo.Region{}, geo.Region{}, err
	}
	core, err := turf.Offset(-practice.HandWidth / 2)
	if err != nil {
		return geo.Region{}, geo.Region{}, err
	}
	left, err := besideLaps(turf, core, practice.HandWidth)
	if err != nil {
		return geo.Region{}, geo.Region{}, err
	}
	var strips []geo.Region
	for _, piece := range left {
		if isStrip(piece, practice.HandWidth) {
			strips = append(strips, piece)
		}
	}
	if hand, err = geo.Union(strips...); err != nil {
		return geo.Region{}, geo.Region{}, err
	}
	walked, err = geo.Difference(turf, hand)
	return walked, hand, err
}

// isStrip tells a strip of turf from what is left in a corner, which counts to
// the lanes that pass it: a strip is longer than twice the width of the
// widest, or holds more than the corner of a square leaves.
func isStrip(piece geo.Region, width float64) bool {
	const gap = 0.02 // m, of mean width; less is where two things meet
	b := piece.Bounds()
	long, area := math.Hypot(b.Width(), b.Height()), areaOf([]geo.Region{piece})
	return area > width*width/4 || long > 2*width && area > gap*long
}

// parted takes a strip along each fence off the turf.
func (y Yard) parted(turf geo.Region, strip float64) (geo.Region, error) {
	var strips []geo.Region
	for _, f := range y.Fences {
		if len(turf.Inside(f)) == 0 {
			continue
		}
		s, err := f.Stroke(2 * strip)
		if err != nil {
			return geo.Region{}, err
		}
		strips = append(strips, s)
	}
	taken, err := geo.Union(strips...)
	if err != nil || taken.Empty() {
		return turf, err
	}
	return geo.Difference(turf, taken)
}

// room is the ground within laps into which rows may run at their ends: that
// from which nothing is thrown on water.
func (y Yard) room(core geo.Region, p Pattern) (geo.Region, error) {
	left, right := p.Reach()
	reach := max(left, right)
	for _, c := range y.Closed {
		if c.Kind != zones.Water && c.Kind != zones.Pool {
			continue
		}
		for _, piece := range c.Region.Pieces() {
			if !piece.Bounds().Grown(reach).Meets(core.Bounds()) {
				continue
			}
			near, err := piece.Offset(reach)
			if err != nil {
				return geo.Region{}, err
			}
			if core, err = geo.Difference(core, near); err != nil {
				return geo.Region{}, err
			}
		}
	}
	return core, nil
}
