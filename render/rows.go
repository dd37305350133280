package render

import (
	"math"
	"slices"
)

// A row is where one horizontal line runs inside a polygon: from each even
// number to the next odd one.
type row struct {
	index     int // the line stands at index times the spacing
	crossings []float64
}

// rowsOf cuts a polygon with horizontal lines at whole multiples of the
// spacing, so that neighbouring polygons are cut by the same lines. Lines that
// miss the polygon, or any sheet, are left out.
func rowsOf(p polygon, spacing float64) []row {
	bounds := p.bounds()
	first := int(math.Floor(max(bounds.min.Y, -sheetDiagonal) / spacing))
	last := int(math.Ceil(min(bounds.max.Y, sheetDiagonal) / spacing))
	rows := make([]row, max(0, last-first+1))
	p.edges(func(a, b Point) {
		if a.Y > b.Y {
			a, b = b, a
		}
		from := max(first, int(math.Floor(a.Y/spacing)))
		for k := from; k <= last && float64(k)*spacing < b.Y; k++ {
			if y := float64(k) * spacing; y >= a.Y {
				x := a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y)
				rows[k-first].crossings = append(rows[k-first].crossings, x)
			}
		}
	})
	for i := range rows {
		rows[i].index = first + i
		slices.Sort(rows[i].crossings)
	}
	return slices.DeleteFunc(rows, func(r row) bool { return len(r.crossings) == 0 })
}

// stretches calls visit for each part of the row inside the polygon.
func (r row) stretches(visit func(from, to float64)) {
	for i := 0; i+1 < len(r.crossings); i += 2 {
		visit(r.crossings[i], r.crossings[i+1])
	}
}
