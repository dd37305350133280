package render

import "example.org/turfplat/zones"

// A look is how ground of one kind is drawn: a tint, a pattern over it, and an
// edge line; the word stands on the map and in the key.
type look struct {
	word    string
	plural  string // in a list of several
	tint    Ink
	pattern pattern
	ink     Ink // of the pattern
	edge    Ink
	weight  float64 // of the edge, mm
}

var (
	accent   = bluishGreen.shade(0.55)
	warning  = vermillion.shade(0.8)
	faint    = grey.tint(0.55)
	edgeInk  = black.tint(0.8)
	turfTint = bluishGreen.tint(0.12)
)

// Patterns that only maps of ground use.
var (
	// leaves are planting: pairs of small leaves, close together.
	leaves = pattern{tiles: []scatter{{across: 3.2, up: 1.6, mark: []Line{
		{Points: []Point{{0, -0.45}, {-0.2, 0.05}, {-0.6, 0.3}}},
		{Points: []Point{{0, -0.45}, {0.2, 0.05}, {0.6, 0.3}}},
	}}}, weight: hairLine, round: true}

	// blades are grass that is not mown: long, in twos.
	blades = pattern{tiles: []scatter{{across: 4, up: 2.4, mark: []Line{
		{Points: []Point{{-0.25, -0.8}, {-0.35, 0.9}}},
		{Points: []Point{{0.25, -0.8}, {0.75, 0.7}}},
	}}}, weight: hairLine, round: true}

	// tilework is a basin.
	tilework = pattern{rulings: []ruling{{spacing: 2}, {angle: 90, spacing: 2}}, weight: hairLine}

	// blanks are ground of which nothing is known.
	blanks = pattern{rulings: []ruling{{spacing: 3, dash: 1.8, gap: 4.2, shift: 3}}, weight: hairLine}

	// barred is ground on which nothing may be applied.
	barred = pattern{rulings: []ruling{{angle: 45, spacing: 3}, {angle: 135, spacing: 3}}, weight: thinLine}

	// crowns are woods and rows of trees.
	crowns = pattern{tiles: []scatter{{across: 8, up: 4, mark: disc(Point{}, 1.1).lines()}}, weight: hairLine}
)

var looks = map[zones.Kind]look{
	zones.Building:  {"Building", "buildings", black.tint(0.1), hatch, black.tint(0.45), black, heavyLine},
	zones.Pool:      {"Pool", "pools", skyBlue.tint(0.25), tilework, blue.tint(0.6), blue.shade(0.7), mediumLine},
	zones.Water:     {"Water", "waters", skyBlue.tint(0.25), waves, blue.tint(0.7), blue.shade(0.7), mediumLine},
	zones.Hardscape: {"Hardscape", "hardscapes", black.tint(0.04), stipple, black.tint(0.35), edgeInk, thinLine},
	zones.Bed:       {"Bed", "beds", orange.tint(0.16), leaves, orange.shade(0.55), orange.shade(0.4), mediumLine},
	zones.Synthetic: {"Synthetic turf", "synthetic turfs", reddishPurple.tint(0.12), backHatch, reddishPurple.shade(0.7), edgeInk, thinLine},
	zones.Bare:      {"Bare ground", "bare grounds", yellow.tint(0.16), chips, orange.shade(0.5), edgeInk, thinLine},
	zones.Rough:     {"Rough grass", "rough grasses", yellow.tint(0.28), blades, bluishGreen.shade(0.5), edgeInk, thinLine},
	zones.Turf:      {"Turf", "lawns", turfTint, tufts, bluishGreen.tint(0.8), accent, mediumLine},
}

// unknownLook is that of ground that nothing covers.
var unknownLook = look{word: "Unknown", tint: white, pattern: blanks, ink: grey, edge: faint, weight: thinLine}

// fill draws an area in the look, without its edge.
func (l look) fill(area polygon) []Element {
	return []Element{Path{Lines: area.lines(), Fill: l.tint}, l.pattern.fill(area, l.ink)}
}

func (l look) outlined(area polygon) Path {
	return Path{Lines: area.lines(), Stroke: l.edge, Weight: l.weight}
}
