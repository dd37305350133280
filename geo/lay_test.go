package geo

import (
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

func TestAreasAreThoseOfThePartition(t *testing.T) {
	check(t, 500, func(t *rapid.T) {
		a, b, _ := drawMeeting(t)
		if rapid.Bool().Draw(t, "wide") {
			a, b = a.scaled(1000), b.scaled(1000)
		}
		f := NewFrame(orb.Point{10, 50})
		o, err := Lay(a, b)
		if err != nil {
			t.Fatal(err)
		}
		defer o.Release()
		class := func(holders []int) int { return 2*(2-len(holders)) + holders[0] } // both, then either alone
		areas := o.Areas(f, 4, class)
		for k, r := range o.Partition(4, class) {
			if got, want := float64(areas[k]), float64(f.Area(r)); !near(got, want, 1e-6, 1e-12) {
				t.Errorf("class %d: %.9f m2, its region %.9f", k, got, want)
			}
		}
	})
}

// scaled moves all edges of a region away from the middle of the frame.
func (r Region) scaled(by float64) Region {
	var polygons []Polygon
	for _, p := range r.polygons {
		g := Polygon{Shell: p.Shell.scaled(by)}
		for _, h := range p.Holes {
			g.Holes = append(g.Holes, h.scaled(by))
		}
		polygons = append(polygons, g)
	}
	return regionOf(polygons)
}

func (r Ring) scaled(by float64) Ring {
	w := make(Ring, len(r))
	for i, p := range r {
		w[i] = p.Times(by)
	}
	return w
}
