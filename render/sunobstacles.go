package render

import (
	"cmp"
	"fmt"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// An obstacle is an object that throws shade.
type obstacle struct {
	*zones.Object
	assumed bool // its height is not known, or reckoned from storeys
}

// obstaclesOf are the objects of a site that throw shade, the highest first.
func obstaclesOf(site *zones.Site) []obstacle {
	var all []obstacle
	for _, o := range slices.Concat(site.Objects, site.Beyond) {
		if o.Stature.Height > o.Stature.Base {
			all = append(all, obstacle{o, o.Stature.From == zones.Assumed || o.Stature.From == zones.Levels})
		}
	}
	slices.SortStableFunc(all, func(a, b obstacle) int { return cmp.Compare(b.Stature.Height, a.Stature.Height) })
	return all
}

func (s sunMap) assumes() bool {
	return slices.ContainsFunc(s.obstacles, func(o obstacle) bool { return o.assumed })
}

// heightText writes a height, after a sign for "about" if it is assumed.
func (f figures) heightText(m float64, assumed bool) string {
	text := fmt.Sprintf("%.0f %s", f.InLengthUnit(m), f.lengthUnit())
	if f.InLengthUnit(m) < 10 && f.Metric() {
		text = fmt.Sprintf("%.1f %s", m, f.lengthUnit())
	}
	if assumed {
		return "≈ " + text
	}
	return text
}

// heightSample shows how heights stand on the map.
func (s sunMap) heightSample(assumed bool) func(rect) []Element {
	const example = 12.0 // m
	text := Text{String: s.figures.heightText(example, assumed), Face: Italic, Size: tableSize, Ink: black, Anchor: Middle}
	return func(box rect) []Element {
		text.At = box.center().plus(0, -text.Face.capHeight(text.Size)/2)
		return []Element{text}
	}
}

func (s sunMap) legendOfObstacles(add func(bool, string, func(rect) []Element)) {
	s.legendOfTrees(add)
	s.legendOfBarriers(add, zones.Fence, zones.Wall, zones.Hedge)
	add(s.hasNeighbours(), "Neighbours", neighbourSample)
}

// labelHeights writes on what throws shade how high it stands, the highest
// first, where there is room. What stands far from turf has no label: there
// its height matters little.
func (s sunMap) labelHeights(v view) ([]Element, error) {
	var elements []Element
	turf := s.plat.Ground.Cover(zones.Turf).Pieces()
	for _, o := range s.obstacles {
		reach := o.bounds().Grown(longShadow * o.Stature.Height)
		if !slices.ContainsFunc(turf, func(r geo.Region) bool { return r.Bounds().Meets(reach) }) {
			continue
		}
		f := s.heightLabel(o)
		switch {
		case len(o.Points) > 0:
			elements = append(elements, s.labelTrunks(o.Points, f, v)...)
		case len(o.Lines) > 0:
			elements = append(elements, s.labelBarrier(o.Lines, f, v)...)
		default:
			drawn, err := s.labelGround(o.Ground, f, v)
			if err != nil {
				return nil, err
			}
			elements = append(elements, drawn...)
		}
	}
	return elements, nil
}

// longShadow is how many times its height a shadow reaches that still takes
// much of the sun: that of a sun 27 degrees high.
const longShadow = 2.0

func (o obstacle) bounds() geo.Bounds {
	b := o.Ground.Bounds()
	for _, p := range o.Points {
		b = b.With(p)
	}
	for _, l := range o.Lines {
		for _, p := range l {
			b = b.With(p)
		}
	}
	return b
}

// heightLabel is the height of an obstacle, of a building under its name.
func (s sunMap) heightLabel(o obstacle) form {
	height := Text{String: s.figures.heightText(o.Stature.Height, o.assumed), Face: Italic, Size: mapSize, Ink: black}
	name := s.letters.of(o.Name)
	if o.Kind != zones.Building || name == "" {
		return stacked(height)
	}
	return stacked(Text{String: shortened(name, Regular, mapSize, longestLabel), Size: mapSize, Ink: black}, height)
}

// labelTrunks puts the height of trees beside their trunks.
func (s sunMap) labelTrunks(trunks []geo.XY, f form, v view) []Element {
	var elements []Element
	for _, p := range trunks {
		at := v.at(p)
		if !v.window.holds(at) {
			continue
		}
		for _, clear := range []float64{0.8, 3} { // mm
			if beside, found := besidePoint(at, clear, f, v, s.labels.free); found {
				elements = append(elements, s.put(f, beside, 0, white)...)
				break
			}
		}
	}
	return elements
}

// labelGround puts a height into the ground of an object, where it has most
// room.
func (s sunMap) labelGround(ground geo.Region, f form, v view) ([]Element, error) {
	p, ok, err := largestPiece(v, ground)
	if err != nil || !ok || p.clear < leastSpill {
		return nil, err
	}
	at, turn, found := s.placeOn(p, f, v, placing{spill: true, keep: func(plate) bool { return true }})
	if !found {
		return nil, nil
	}
	return s.put(f, at, turn, white), nil
}

// labelBarrier puts a height along a line, to one side of its middle.
func (s sunMap) labelBarrier(lines []geo.Line, f form, v view) []Element {
	off := f.height/2 + 2*labelGap
	for _, line := range v.lines(lines, s.near) {
		if line.length() < 2*f.width {
			continue
		}
		for _, side := range []float64{off, -off} {
			if drawn := s.labelAlong(line, line.length()/2, side, f, v); drawn != nil {
				return drawn
			}
		}
	}
	return nil
}
