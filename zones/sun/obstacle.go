package sun

// An Obstacle is anything that stands between the sun and the ground.
type Obstacle struct {
	ID, Name string // as the site file has them
	Shape    Shape
	Pass     Pass
}

// Pass is the share of direct sun that comes through an obstacle, 0 to 1. The
// zero value is opaque. Evergreens pass the same share in leaf and bare.
type Pass struct{ InLeaf, Bare float64 }

// when returns the share that comes through while a share of the leaves is out.
func (p Pass) when(inLeaf float64) float64 {
	return max(0, min(1, p.Bare+(p.InLeaf-p.Bare)*inLeaf))
}

// A Shape is the form of an obstacle: a Prism, Roof, Crown or Screen. Heights
// are in metres above the ground straight below. What does not rise above the
// grass casts no shade.
type Shape interface{ bodies() []body }
