package lanes

import (
	"math"

	"example.org/turfplat/geo"
)

// A fieldOfView tells whether one place is seen from another past edges that
// must not be crossed.
type fieldOfView struct {
	edges         [][2]geo.XY
	origin        geo.XY
	cell          float64
	columns, rows int
	in            [][]int32 // edges by cell
}

func newFieldOfView(edges [][2]geo.XY) *fieldOfView {
	f := &fieldOfView{edges: edges, cell: 1}
	b := geo.Region{}.Bounds()
	for _, e := range edges {
		b = b.With(e[0]).With(e[1])
	}
	if b.Empty() {
		return f
	}
	const finest = 256 // cells across
	f.cell = max(2, max(b.Width(), b.Height())/finest)
	f.origin = b.Min
	f.columns, f.rows = int(b.Width()/f.cell)+1, int(b.Height()/f.cell)+1
	f.in = make([][]int32, f.columns*f.rows)
	for i, e := range edges {
		f.along(e[0], e[1], func(c int) bool {
			f.in[c] = append(f.in[c], int32(i))
			return true
		})
	}
	return f
}

// sees reports whether the straight way from a to b crosses no edge. A way may
// start, end or bend on one.
func (f *fieldOfView) sees(a, b geo.XY) bool {
	return f.along(a, b, func(c int) bool {
		for _, i := range f.in[c] {
			if e := f.edges[i]; crosses(a, b, e[0], e[1]) {
				return false
			}
		}
		return true
	})
}

// crosses reports whether the way from a to b passes through the edge from c to
// d. A way through a common end of two edges passes through one of them, if it
// passes between the edges; one that starts or ends on an edge does not.
func crosses(a, b, c, d geo.XY) bool {
	const hair = 1e-7 // m2: ends on the edge but for rounding
	ab, cd := b.Minus(a), d.Minus(c)
	if (ab.Cross(c.Minus(a)) >= 0) == (ab.Cross(d.Minus(a)) >= 0) {
		return false
	}
	r, s := cd.Cross(a.Minus(c)), cd.Cross(b.Minus(c))
	return min(r, s) < -hair && max(r, s) > hair
}

// along visits the cells that an edge passes, row by row, until visit returns
// false, and returns whether it never did.
func (f *fieldOfView) along(a, b geo.XY, visit func(cell int) bool) bool {
	if f.in == nil {
		return true
	}
	if a.Y > b.Y {
		a, b = b, a
	}
	u, v := a.Minus(f.origin).Times(1/f.cell), b.Minus(f.origin).Times(1/f.cell)
	x := func(y float64) float64 { // on the edge at a height
		if v.Y == u.Y {
			return u.X
		}
		return u.X + (v.X-u.X)*min(1, max(0, (y-u.Y)/(v.Y-u.Y)))
	}
	for row := max(0, int(math.Floor(u.Y))); row < f.rows && float64(row) <= v.Y; row++ {
		from, to := x(float64(row)), x(float64(row+1))
		if v.Y == u.Y {
			from, to = u.X, v.X
		}
		const hair = 1e-9
		first, last := int(math.Floor(min(from, to)-hair)), int(math.Floor(max(from, to)+hair))
		for column := max(0, first); column <= min(f.columns-1, last); column++ {
			if !visit(row*f.columns + column) {
				return false
			}
		}
	}
	return true
}
