package render

import (
	"cmp"
	"slices"
)

// placing says how freely a label may be placed on a piece of ground.
type placing struct {
	along bool             // along the piece rather than level
	spill bool             // over the edge of the piece if it is too small
	keep  func(plate) bool // where a label should be if it can
	must  bool             // or else is left out
}

const (
	placeStep   = 2.0 // mm between places that are tried
	mostPlaces  = 600
	leastSpill  = 0.8 // mm of clearance that a piece must have for its label to reach over its edge
	windowInset = 1.0 // mm that labels keep from the frame
)

// placeOn finds a place for a label on a piece: level or along it, and, if it
// may spill, about a place in it.
func (d *draft) placeOn(p piece, f form, v view, how placing) (at Point, turn float64, ok bool) {
	if !how.spill && p.clear < f.height/2 {
		return Point{}, 0, false
	}
	ground := newField(p.area)
	frame := v.window.inset(windowInset)
	places := ground.places(p.pole, 0, 0)
	try := func(turn func(Point) float64, fit func(plate) bool) bool {
		for _, at = range places {
			turn := turn(at)
			if box := f.plate(at, turn); fit(box) && box.within(frame) && d.labels.free(box) {
				return true
			}
		}
		return false
	}
	level := func(Point) float64 { return 0 }
	along := func(at Point) float64 { return p.direction(at, f.width/2) }
	anywhere := func(plate) bool { return true }
	kept := func(box plate) bool { return ground.holds(box) && how.keep(box) }
	turns := []func(Point) float64{level}
	if how.along {
		turns = []func(Point) float64{along}
	} else if p.long() {
		turns = append(turns, along)
	}
	fitting := []func(plate) bool{kept}
	if how.spill {
		fitting = append(fitting, how.keep)
		if !how.must {
			fitting = append(fitting, anywhere)
		}
	}
	for _, fit := range fitting {
		for _, turn := range turns {
			if try(turn, fit) {
				return at, turn(at), true
			}
		}
	}
	return Point{}, 0, false
}

// places are points of a field, the nearest to a wanted one first, that lie a
// margin from its bounds.
func (f field) places(wanted Point, across, up float64) []Point {
	bounds := f.area.bounds()
	places := []Point{wanted}
	for x := bounds.min.X + across; x <= bounds.max.X-across; x += placeStep {
		for y := bounds.min.Y + up; y <= bounds.max.Y-up; y += placeStep {
			if at := (Point{x, y}); f.inside.holds(at) {
				places = append(places, at)
			}
		}
	}
	slices.SortStableFunc(places, func(p, q Point) int {
		return cmp.Compare(squaredDistance(p, wanted, wanted), squaredDistance(q, wanted, wanted))
	})
	return places[:min(len(places), mostPlaces)]
}
