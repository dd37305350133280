package zones

import (
	"math"

	"example.org/turfplat/geo/ingest"
)

// A Stature is how an object stands above the ground, which its shade hangs
// on.
type Stature struct {
	Height  float64 // m, of the top above the ground; 0 = throws no shade
	Base    float64 // m, of the underside: of a part over a passage, of a crown on its trunk
	From    Basis   // what the height rests on; "" if there is none
	Roof    Roof    // of a building, within its height
	Foliage Foliage // of trees and shrubs; else what is stated of the light that passes
}

// shadeReach is how many times its height the shade of an object reaches, while
// the sun stands at 10 degrees.
const shadeReach = 5.7

// farReach is how far, in metres, an object throws its shade beyond the
// vicinity of a property.
func (st Stature) farReach() float64 { return max(0, shadeReach*st.Height-vicinity) }

// Basis is what a height rests on.
type Basis string

// The bases of heights, the surest first.
const (
	Stated  Basis = "stated"  // height_m or height_ft
	Tagged  Basis = "tagged"  // a map tag for the height
	Levels  Basis = "levels"  // storeys counted, at an assumed height each
	Assumed Basis = "assumed" // a default of the kind
)

const (
	tallest = 500 // m, of what is believed
	levelM  = 3.0 // m a storey; common practice, public map data are seen with 3.5 and 4.5
	mostly  = 150 // storeys, of what is believed

	toMillimetre = 0.001 // m, to which a site file gives heights
)

// statureOf finds how high an object stands: as the file states, else as map
// tags have it, else by the defaults of its kind.
func (s *Site) statureOf(f *ingest.Feature, kind Kind, place ingest.Place) Stature {
	row, stands := defaultHeightOf(kind, f.Properties)
	switch {
	case kind == Tree:
		return s.treeStature(f, row, place)
	case !stands:
		return Stature{}
	}
	if statesNone(f.Properties, "height") {
		return Stature{From: Stated} // level with the ground; of a tree it would mean not known
	}
	st := Stature{Roof: roofOf(f.Properties)}
	st.Height, st.From = heightOf(f, st.Roof, row.height)
	st.Roof.Height = min(st.Roof.Height, st.Height)
	st.Base = baseOf(f.Properties, st.Height, row.thickness)
	if !row.opaque {
		st.Foliage = s.foliageOf(f, place)
	} else {
		st.Foliage = withTransmittance(Foliage{}, f.Properties)
	}
	return st
}

// treeStature is that of a tree, a row of trees or a wood.
func (s *Site) treeStature(f *ingest.Feature, row heightRow, place ingest.Place) Stature {
	otherwise := crownRowOf(f.Properties).height
	if row.height > 0 {
		otherwise = row.height
	}
	st := Stature{Foliage: s.foliageOf(f, place)}
	st.Height, st.From = heightOf(f, Roof{}, otherwise)
	st.Base = crownBase(st.Height)
	return st
}

// heightOf is the height of an object, and what it rests on: what the file
// states, else map tags, else a default. A height that a survey wrote, which
// said so, rests on what it had it from, unless somebody changed it since.
func heightOf(f *ingest.Feature, roof Roof, otherwise float64) (float64, Basis) {
	known, from := mappedHeight(f.Properties, roof)
	if from == "" {
		known, from = otherwise, Assumed
	}
	h, stated := lengthOf(f.Properties, "height")
	switch {
	case !stated, h > tallest:
		return known, from
	case f.Properties.Has("height_from") && math.Abs(h-known) <= toMillimetre:
		return known, from
	}
	return h, Stated
}

// mappedHeight is what map tags tell of the height of an object; "" if they
// tell nothing.
func mappedHeight(p ingest.Properties, roof Roof) (float64, Basis) {
	for _, key := range []string{"height", "est_height"} {
		if text, ok := p.Tag(key); ok {
			if h, ok := parseTagLength(text); ok && h <= tallest {
				return h, Tagged
			}
		}
	}
	if levels, ok := tagNumber(p, "building:levels", mostly); ok && levels+roof.Height > 0 {
		return levels*levelM + roof.Height, Levels
	}
	return 0, ""
}

// baseOf returns the underside of what does not reach the ground: as tagged,
// else by its thickness if it stands open below.
func baseOf(p ingest.Properties, height, thickness float64) float64 {
	if text, ok := p.Tag("min_height"); ok {
		if base, ok := parseTagLength(text); ok {
			return min(base, height)
		}
	}
	if level, ok := tagNumber(p, "building:min_level", mostly); ok {
		return min(level*levelM, height)
	}
	if thickness > 0 {
		return max(0, height-thickness)
	}
	return 0
}
