package material

import (
	"math"

	"example.org/turfplat/geo"
)

// Cores are the holes that a core aerator pulls.
type Cores struct {
	Across, Along geo.Length // from hole to hole, in one pass
	Tine          geo.Length // inner diameter
	Passes        int
}

// PerM2 returns the number of holes on a square metre after all passes.
func (c Cores) PerM2() (float64, error) {
	if !(c.Across > 0 && c.Along > 0 && c.Passes > 0) {
		return 0, inputErrorf("measure from hole to hole both ways", "the holes have no spacing, or there is no pass")
	}
	return float64(c.Passes) / float64(c.Across*c.Along), nil
}

// SurfaceRemoved returns what part of the surface the holes take away; holes
// of two passes are counted as if none met.
func (c Cores) SurfaceRemoved() (Share, error) {
	holes, err := c.PerM2()
	if err != nil {
		return 0, err
	}
	removed := holes * math.Pi / 4 * float64(c.Tine*c.Tine)
	if !(c.Tine > 0 && removed <= 1) {
		return 0, inputErrorf("state the inner diameter of the tine", "holes so wide and so close do not go into the ground")
	}
	return Share(removed), nil
}
