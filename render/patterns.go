package render

// dot is a line too short to see; round ends make it a dot.
var dot = []Line{{Points: []Point{{-0.005, 0}, {0.005, 0}}}}

// Patterns that stay apart on a photocopy. All are of our own drawing, in the
// manner of surveys and planting plans (common practice, no source).
var (
	hatch      = pattern{rulings: []ruling{{angle: 45, spacing: 1.6}}, weight: hairLine}
	backHatch  = pattern{rulings: []ruling{{angle: 135, spacing: 1.6}}, weight: hairLine}
	crossHatch = pattern{rulings: []ruling{{angle: 45, spacing: 2}, {angle: 135, spacing: 2}}, weight: hairLine}
	dashes     = pattern{rulings: []ruling{{spacing: 1.8, dash: 2.4, gap: 1.6, shift: 2}}, weight: hairLine}
	stipple    = pattern{tiles: []scatter{{across: 1.8, up: 0.9, mark: dot}}, weight: mediumLine, round: true}

	// tufts are grass: three blades each, wide apart, so that text stays clear.
	tufts = pattern{tiles: []scatter{{across: 7, up: 3.5, mark: []Line{
		{Points: []Point{{0, -0.5}, {0, 0.6}}},
		{Points: []Point{{-0.15, -0.5}, {-0.6, 0.3}}},
		{Points: []Point{{0.15, -0.5}, {0.6, 0.3}}},
	}}}, weight: hairLine, round: true}

	// waves are water.
	waves = pattern{tiles: []scatter{{across: 6, up: 1.8, mark: []Line{{Points: []Point{
		{-1.8, 0}, {-1.4, 0.3}, {-0.9, 0.4}, {-0.4, 0.2}, {0.4, -0.2}, {0.9, -0.4}, {1.4, -0.3}, {1.8, 0},
	}}}}}, weight: hairLine, round: true}

	// bricks are paving in running bond.
	bricks = pattern{rulings: []ruling{
		{spacing: 1.5},
		{angle: 90, spacing: 1.5, dash: 1.5, gap: 1.5, shift: 1.5},
	}, weight: hairLine}

	// chips are gravel and bare ground: small triangles with dots between.
	chips = pattern{tiles: []scatter{
		{across: 5, up: 2.5, mark: []Line{{Points: []Point{{-0.4, -0.3}, {0.45, -0.2}, {-0.05, 0.45}}, Closed: true}}},
		{across: 5, up: 2.5, offset: Point{2.2, 1.1}, mark: dot},
	}, weight: hairLine, round: true}
)
