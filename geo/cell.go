package geo

import (
	"github.com/golang/geo/s2"
	"github.com/paulmach/orb"
)

// cellLevel cells are 7 to 11 m across: one property, seldom two.
const cellLevel = 20

// Cell returns the token of the S2 cell that holds a place: a short name by
// which tables of properties are joined and sorted. Sorted tokens keep
// neighbours together.
func Cell(p orb.Point) string {
	return s2.CellIDFromLatLng(s2.LatLngFromDegrees(p.Lat(), p.Lon())).Parent(cellLevel).ToToken()
}
