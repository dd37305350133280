package render

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

const (
	// smallestLegible is the smallest scale at which a crew works from a map: a
	// lane of 10 ft is 3.2 mm wide then, which just takes a figure of 9 points
	// with a rim.
	smallestLegible Scale = 960

	// leastGain is how many times as large the parts of a site must be drawn as the
	// whole to be worth their sheets. Larger paper alone gives 1.41 (A4 to A3) to
	// 1.55 (letter to tabloid), on one sheet and without match lines.
	leastGain = 1.6

	overlap   = 12.0 // mm of ground, at least, that two neighbouring sheets both show
	mostTiles = 99   // of a site
	mostCells = 2000 // of the grid, many of which may hold nothing
)

// A tiling divides the ground of a site among sheets in rows and columns that
// overlap.
type tiling struct {
	arrangement       // that the sheets share
	across, down axis // columns from the left, rows from the bottom
	tiles        []tile
}

// A tile is the part of a site on one sheet.
type tile struct{ column, row int }

// An axis is how sheets follow each other in one direction. Places are in
// metres of ground as it lies on the sheet.
type axis struct {
	from, to float64   // of the site
	middles  []float64 // of the windows
}

// axisOf spreads windows that show so much ground evenly over the site.
func axisOf(from, to, shown, shared float64) axis {
	a := axis{from: from, to: to}
	count := 1.0
	if to-from > shown*(1+1e-12) {
		count = math.Ceil((to - from - shared) / (shown - shared) * (1 - 1e-12))
	}
	count = min(count, mostCells+1)
	if count == 1 {
		a.middles = []float64{(from + to) / 2}
		return a
	}
	for i := range int(count) {
		a.middles = append(a.middles, from+shown/2+float64(i)*(to-from-shown)/(count-1))
	}
	return a
}

// edges are where the part of a window begins and ends: midway to its
// neighbours.
func (a axis) edges(i int) (from, to float64) {
	from, to = a.from, a.to
	if i > 0 {
		from = (a.middles[i-1] + a.middles[i]) / 2
	}
	if i < len(a.middles)-1 {
		to = (a.middles[i] + a.middles[i+1]) / 2
	}
	return from, to
}

// grown moves the ends outwards.
func (a axis) grown(by float64) axis {
	a.from, a.to = a.from-by, a.to+by
	return a
}

// tilingAt finds the tiling of the site with the fewest sheets at a scale, laid
// as on another sheet, and among these the one with the largest windows.
func (d *draft) tilingAt(scale Scale, l lie, frames []arrangement) (tiling, bool) {
	var best tiling
	for _, a := range frames {
		a.scale, a.lie = scale, l
		inner, shared := a.window.inset(mapMargin), scale.metres(overlap)
		t := tiling{
			arrangement: a,
			across:      axisOf(l.extent.Min.X, l.extent.Max.X, scale.metres(inner.width()), shared),
			down:        axisOf(l.extent.Min.Y, l.extent.Max.Y, scale.metres(inner.height()), shared),
		}
		if best.count() == 0 || t.count() < best.count() || t.count() == best.count() && t.window.polygon().area() > best.window.polygon().area() {
			best = t
		}
	}
	return best, best.count() > 0
}

// count is how many sheets the whole grid takes.
func (t tiling) count() int { return len(t.across.middles) * len(t.down.middles) }

// tiled divides a site into as few sheets as can be at the scale that is asked
// for, or else at a legible one, with north up unless a turn saves sheets.
func (d *draft) tiled(asked Scale) (tiling, error) {
	d.joined = true
	defer func() { d.joined = false }()
	best, err := d.tiledAs(d.upright, asked)
	for _, l := range d.turned {
		if t, failed := d.tiledAs(l, asked); failed == nil && (err != nil || len(t.tiles) < len(best.tiles)) {
			best, err = t, nil
		}
	}
	return best, err
}

// tiledAs divides a site as it is laid. Of the scales that take as few sheets
// it has the largest.
func (d *draft) tiledAs(l lie, asked Scale) (tiling, error) {
	scales := []Scale{asked}
	if asked == 0 {
		series, _ := d.series()
		scales = series.down(smallestLegible)
	}
	var best tiling
	frames := d.tileFrames(l)
	for _, s := range scales {
		if t, ok := d.tilingAt(s, l, frames); ok && (best.count() == 0 || t.count() <= best.count()) {
			best = t
		}
	}
	if best.count() == 0 {
		return best, d.noRoom(asked)
	}
	if err := d.fill(&best); err != nil {
		return best, err
	}
	if len(best.tiles) > mostTiles || best.count() > mostCells {
		return best, fmt.Errorf("site %s, %.0f x %.0f m, takes more than %d sheets of %s paper at %s: use a smaller scale, or larger paper",
			d.measured.ID, d.extent.Width(), d.extent.Height(), mostTiles, d.options.Paper.Name, best.scale)
	}
	return best, nil
}

// tileFrames are the ways to divide the paper in which there is room for what
// stands beside a tile.
func (d *draft) tileFrames(l lie) []arrangement {
	d.part = fmt.Sprintf(partWords, mostTiles)
	defer func() { d.part = "" }()
	blocks := d.tileBlocks(locator{tiling: tiling{arrangement: arrangement{lie: l}}})
	return slices.DeleteFunc(d.frames(), func(a arrangement) bool {
		_, _, ok := flow(a.columns, blockGap, false, blocks)
		return !ok
	})
}

// fill keeps the tiles that hold ground of the site, in the order in which one
// reads: from the top, and each row from the left.
func (d *draft) fill(t *tiling) error {
	if t.count() > mostCells {
		return nil
	}
	site, err := d.plat.Ground.Property()
	if err != nil {
		return err
	}
	for _, piece := range site.Pieces() {
		around := lieOf(piece.Polygons()[0].Shell, t.lie.turn).extent
		for row := range t.down.middles {
			for column := range t.across.middles {
				one := tile{column, row}
				if t.index(one) >= 0 || !t.part(one).Meets(around) {
					continue
				}
				ground, err := geo.RegionOf([]geo.Ring{t.ground(one)})
				if err != nil {
					return err
				}
				if ground, err = geo.Intersection(piece, ground); err != nil {
					return err
				}
				if !ground.Empty() {
					t.tiles = append(t.tiles, one)
				}
			}
		}
	}
	slices.SortFunc(t.tiles, func(a, b tile) int {
		return cmp.Or(cmp.Compare(b.row, a.row), cmp.Compare(a.column, b.column))
	})
	return nil
}

// part is what a tile shows between its match lines, as it lies on the sheet.
func (t tiling) part(one tile) geo.Bounds {
	var b geo.Bounds
	b.Min.X, b.Max.X = t.across.edges(one.column)
	b.Min.Y, b.Max.Y = t.down.edges(one.row)
	return b
}

// ground is the part in the frame.
func (t tiling) ground(one tile) geo.Ring {
	b := t.part(one)
	ring := geo.Ring{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
	for i, p := range ring {
		ring[i] = t.lie.onGround(p)
	}
	return ring
}

// view is the window of a tile, in which labels stand between the match lines.
func (t tiling) view(one tile) (view, error) {
	v, err := newView(t.window, t.scale, t.lie, geo.XY{X: t.across.middles[one.column], Y: t.down.middles[one.row]})
	if err != nil {
		return view{}, err
	}
	own, part := t.window, t.part(one)
	low, high := v.laid(part.Min), v.laid(part.Max)
	if t.index(tile{one.column - 1, one.row}) >= 0 {
		own.min.X = low.X
	}
	if t.index(tile{one.column + 1, one.row}) >= 0 {
		own.max.X = high.X
	}
	if t.index(tile{one.column, one.row - 1}) >= 0 {
		own.min.Y = low.Y
	}
	if t.index(tile{one.column, one.row + 1}) >= 0 {
		own.max.Y = high.Y
	}
	inner, err := v.in(own)
	v.part = &inner
	return v, err
}

// index is the number of a tile, or -1 if the site has no ground there.
func (t tiling) index(one tile) int { return slices.Index(t.tiles, one) }
