package sun

import (
	"slices"

	"example.org/turfplat/geo"
)

// A view is one spot and what may stand before the sun there.
type view struct {
	casters []caster
	ground  Slope
	cell    *raster // of one cell, round the spot
}

// A cover is an obstacle that stands before the sun.
type cover struct {
	obstacle int
	pass     float64
}

func (s Scene) viewFrom(at geo.XY) view {
	const side = 1e-3 // m; any will do
	g := Grid{Origin: geo.XY{X: at.X - side/2, Y: at.Y - side/2}, Step: side, Columns: 1, Rows: 1}
	v := view{casters: s.casters(), cell: newRaster(g, 0, 1)}
	if i := slices.IndexFunc(s.Slopes, func(slope Slope) bool { return slope.Ground.Contains(at) }); i >= 0 {
		v.ground = s.Slopes[i]
	}
	return v
}

// before returns what stands before the sun, by obstacle: the shadows cast on
// the one cell. Behind the ground nothing else counts.
func (v view) before(b beam) []cover {
	reach, above := v.ground.reach(b)
	if !above {
		return []cover{{Ground, 0}}
	}
	var covers []cover
	for i, c := range v.casters {
		v.cell.clear()
		c.cast(v.cell, reach, b.inLeaf)
		if len(v.cell.rows[0]) > 0 {
			covers = append(covers, cover{i, v.cell.rows[0][0].pass})
		}
	}
	return covers
}

// passing returns the share of sun that comes through all covers.
func passing(covers []cover) float64 {
	pass := 1.0
	for _, c := range covers {
		pass *= c.pass
	}
	return pass
}
