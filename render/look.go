package render

import "example.org/turfplat/zones"

// A look is how ground of one kind is drawn: a tint, a pattern over it, and an
// edge line; the word stands on the map and in the key.
type look struct {
	word    string
	plural  string // in a list of several
	tint    Ink
	pattern Pattern
	ink     Ink // of the pattern
	edge    Ink
	weight  float64 // of the edge, mm
}

var (
	accent   = BluishGreen.Shade(0.55)
	warning  = Vermillion.Shade(0.8)
	faint    = Grey.Tint(0.55)
	edgeInk  = Black.Tint(0.8)
	turfTint = BluishGreen.Tint(0.12)
)

// Patterns that only maps of ground use.
var (
	// leaves are planting: pairs of small leaves, close together.
	leaves = Pattern{Tiles: []Tiling{{Across: 3.2, Up: 1.6, Mark: []Line{
		{Points: []Point{{0, -0.45}, {-0.2, 0.05}, {-0.6, 0.3}}},
		{Points: []Point{{0, -0.45}, {0.2, 0.05}, {0.6, 0.3}}},
	}}}, Weight: HairLine, Round: true}

	// blades are grass that is not mown: long, in twos.
	blades = Pattern{Tiles: []Tiling{{Across: 4, Up: 2.4, Mark: []Line{
		{Points: []Point{{-0.25, -0.8}, {-0.35, 0.9}}},
		{Points: []Point{{0.25, -0.8}, {0.75, 0.7}}},
	}}}, Weight: HairLine, Round: true}

	// tilework is a basin.
	tilework = Pattern{Rulings: []Ruling{{Spacing: 2}, {Angle: 90, Spacing: 2}}, Weight: HairLine}

	// blanks are ground of which nothing is known.
	blanks = Pattern{Rulings: []Ruling{{Spacing: 3, Dash: 1.8, Gap: 4.2, Shift: 3}}, Weight: HairLine}

	// barred is ground on which nothing may be applied.
	barred = Pattern{Rulings: []Ruling{{Angle: 45, Spacing: 3}, {Angle: 135, Spacing: 3}}, Weight: ThinLine}

	// crowns are woods and rows of trees.
	crowns = Pattern{Tiles: []Tiling{{Across: 8, Up: 4, Mark: Disc(Point{}, 1.1).Lines()}}, Weight: HairLine}
)

var looks = map[zones.Kind]look{
	zones.Building:  {"Building", "buildings", Black.Tint(0.1), Hatch, Black.Tint(0.45), Black, HeavyLine},
	zones.Pool:      {"Pool", "pools", SkyBlue.Tint(0.25), tilework, Blue.Tint(0.6), Blue.Shade(0.7), MediumLine},
	zones.Water:     {"Water", "waters", SkyBlue.Tint(0.25), Waves, Blue.Tint(0.7), Blue.Shade(0.7), MediumLine},
	zones.Hardscape: {"Hardscape", "hardscapes", Black.Tint(0.04), Stipple, Black.Tint(0.35), edgeInk, ThinLine},
	zones.Bed:       {"Bed", "beds", Orange.Tint(0.16), leaves, Orange.Shade(0.55), Orange.Shade(0.4), MediumLine},
	zones.Synthetic: {"Synthetic turf", "synthetic turfs", ReddishPurple.Tint(0.12), BackHatch, ReddishPurple.Shade(0.7), edgeInk, ThinLine},
	zones.Bare:      {"Bare ground", "bare grounds", Yellow.Tint(0.16), Chips, Orange.Shade(0.5), edgeInk, ThinLine},
	zones.Rough:     {"Rough grass", "rough grasses", Yellow.Tint(0.28), blades, BluishGreen.Shade(0.5), edgeInk, ThinLine},
	zones.Turf:      {"Turf", "lawns", turfTint, Tufts, BluishGreen.Tint(0.8), accent, MediumLine},
}

// unknownLook is that of ground that nothing covers.
var unknownLook = look{word: "Unknown", tint: White, pattern: blanks, ink: Grey, edge: faint, weight: ThinLine}

// fill draws an area in the look, without its edge.
func (l look) fill(area Polygon) []Element {
	return []Element{Path{Lines: area.Lines(), Fill: l.tint}, l.pattern.Fill(area, l.ink)}
}

func (l look) outlined(area Polygon) Path {
	return Path{Lines: area.Lines(), Stroke: l.edge, Weight: l.weight}
}
