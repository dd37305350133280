package lanes

import "math"

// A shield is how far the sides of a stroke throw, m: to the nearest ground
// that must get nothing, infinite if there is none within the throw.
type shield struct{ left, right float64 }

// isTurf reports whether product may land on what a mark stands for.
func isTurf(mark uint8) bool { return mark == served || mark == otherTurf }

// shielded sets the shields of strokes by what lies beside them.
func shielded(lane []stroke, ground *raster[uint8], p Pattern) {
	for i := range lane {
		s := &lane[i]
		for cell, at := range ground.within(s.bounds(p)) {
			if isTurf(ground.cells[cell]) || !s.reaches(at, p) {
				continue
			}
			if x := s.offset(at); x < 0 {
				s.shield.left = min(s.shield.left, -x)
			} else {
				s.shield.right = min(s.shield.right, x)
			}
		}
	}
}

// hardShare is the part of a lane along which a side must be hard to be told.
const hardShare = 0.1

// tellDeflectors says of each header lane on which sides hard edges lie within
// the throw.
func (p *Plan) tellDeflectors(y Yard) {
	if len(p.Lanes) == 0 {
		return
	}
	ground := p.marked(y)
	for i, l := range p.Lanes {
		if !l.Spreading || l.Pass != Header {
			continue
		}
		var left, right float64
		lane := strokes(l)
		shielded(lane, ground, p.Work.Pattern)
		for _, s := range lane {
			if s.shield.left < math.Inf(1) {
				left += s.length
			}
			if s.shield.right < math.Inf(1) {
				right += s.length
			}
		}
		p.Lanes[i].Deflector = sideOf(left > hardShare*length(l.Line), right > hardShare*length(l.Line))
	}
}

func sideOf(left, right bool) Side {
	switch {
	case left && right:
		return Both
	case left:
		return Left
	case right:
		return Right
	}
	return Neither
}
