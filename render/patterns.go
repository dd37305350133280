package render

// dot is a line too short to see; round ends make it a dot.
var dot = []Line{{Points: []Point{{-0.005, 0}, {0.005, 0}}}}

// Patterns that stay apart on a photocopy. All are of our own drawing, in the
// manner of surveys and planting plans (common practice, no source).
var (
	Hatch      = Pattern{Rulings: []Ruling{{Angle: 45, Spacing: 1.6}}, Weight: HairLine}
	BackHatch  = Pattern{Rulings: []Ruling{{Angle: 135, Spacing: 1.6}}, Weight: HairLine}
	CrossHatch = Pattern{Rulings: []Ruling{{Angle: 45, Spacing: 2}, {Angle: 135, Spacing: 2}}, Weight: HairLine}
	Dashes     = Pattern{Rulings: []Ruling{{Spacing: 1.8, Dash: 2.4, Gap: 1.6, Shift: 2}}, Weight: HairLine}
	Stipple    = Pattern{Tiles: []Tiling{{Across: 1.8, Up: 0.9, Mark: dot}}, Weight: MediumLine, Round: true}

	// Tufts are grass: three blades each, wide apart, so that text stays clear.
	Tufts = Pattern{Tiles: []Tiling{{Across: 7, Up: 3.5, Mark: []Line{
		{Points: []Point{{0, -0.5}, {0, 0.6}}},
		{Points: []Point{{-0.15, -0.5}, {-0.6, 0.3}}},
		{Points: []Point{{0.15, -0.5}, {0.6, 0.3}}},
	}}}, Weight: HairLine, Round: true}

	// Waves are water.
	Waves = Pattern{Tiles: []Tiling{{Across: 6, Up: 1.8, Mark: []Line{{Points: []Point{
		{-1.8, 0}, {-1.4, 0.3}, {-0.9, 0.4}, {-0.4, 0.2}, {0.4, -0.2}, {0.9, -0.4}, {1.4, -0.3}, {1.8, 0},
	}}}}}, Weight: HairLine, Round: true}

	// Bricks are paving in running bond.
	Bricks = Pattern{Rulings: []Ruling{
		{Spacing: 1.5},
		{Angle: 90, Spacing: 1.5, Dash: 1.5, Gap: 1.5, Shift: 1.5},
	}, Weight: HairLine}

	// Chips are gravel and bare ground: small triangles with dots between.
	Chips = Pattern{Tiles: []Tiling{
		{Across: 5, Up: 2.5, Mark: []Line{{Points: []Point{{-0.4, -0.3}, {0.45, -0.2}, {-0.05, 0.45}}, Closed: true}}},
		{Across: 5, Up: 2.5, Offset: Point{2.2, 1.1}, Mark: dot},
	}, Weight: HairLine, Round: true}
)
