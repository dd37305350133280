package sun

import "example.org/turfplat/geo"

// A body is a part of an obstacle that casts one shadow.
type body interface {
	// cast shades the cells in the body's shadow. The shadow of a point is
	// moved by reach, in metres, for each metre it stands above the ground.
	cast(r *raster, reach geo.XY)
}

// sampleHeight is how far above the ground sun is looked for, in metres: among
// the blades of grass. Common practice, no source.
const sampleHeight = 0.05

// aboveSample returns a height above the ground as one above the sample.
func aboveSample(height float64) float64 { return max(0, height-sampleHeight) }

func shadowOf(p geo.XY, height float64, reach geo.XY) geo.XY {
	return geo.XY{X: p.X + height*reach.X, Y: p.Y + height*reach.Y}
}
