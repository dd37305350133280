package lanes

import (
	"math"
	"testing"

	"example.org/turfplat/geo"
)

// bareFiller fills ground without laps, so that lanes are all that serves it.
func bareFiller(spacing float64) filler {
	return filler{spacing: spacing, turnWay: CommonPractice().turnWay(), bare: true}
}

// heading is the angle of a filling's first row in degrees, 0 to 180.
func (f filling) heading() float64 {
	row := f.stints[0].rows[0]
	way := row[1].Minus(row[0])
	return math.Mod(math.Atan2(way.Y, way.X)*180/math.Pi+360, 180)
}

func (f filling) count() int {
	n := 0
	for _, s := range f.stints {
		n += len(s.rows)
	}
	return n
}

// Where rows of all headings fit their ground alike, they lie along the edge of
// the hull to which the least width is square (Houle & Toussaint 1988), and are
// as many as it takes.
func TestHeadings(t *testing.T) {
	hexagon := math.Sqrt(3) / 2
	for _, tt := range []struct {
		name    string
		ring    geo.Ring
		width   float64
		heading float64
		every   float64 // degrees from one heading as good to the next
	}{
		{"rectangle", rectangle(0, 0, 30, 20), 20, 0, 180},
		{"rectangle, turned by 30", turnedBy(math.Pi/6, []geo.Ring{rectangle(0, 0, 30, 20)})[0], 20, 30, 180},
		{"3-4-5 triangle", geo.Ring{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 0, Y: 3}}, 2.4, 143.130102, 180},
		{"equilateral", geo.Ring{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 5, Y: 10 * hexagon}}, 10 * hexagon, 0, 60},
		{"hexagon", regular(6, 0, 0, 10), 20 * hexagon, 0, 60},
		{"pentagon", regular(5, 0, 0, 10), 18.090169944, 18, 36},
		{"L", geo.Ring{{X: -15, Y: -10}, {X: 15, Y: -10}, {X: 15, Y: 2}, {X: 3, Y: 2}, {X: 3, Y: 14}, {X: -15, Y: 14}}, 24, 0, 180},
		{"64-gon", regular(64, 0, 0, 20), 39.951818248, 2.8125, 5.625},
		{"parallelogram", geo.Ring{{X: 0, Y: 0}, {X: 40, Y: 0}, {X: 50, Y: 10}, {X: 10, Y: 10}}, 10, 0, 180},
	} {
		for _, part := range []float64{8, 20} {
			spacing := tt.width / part
			f := bareFiller(spacing).straight([]geo.Ring{tt.ring})
			if want := int(math.Ceil(part)); f.count() != want {
				t.Errorf("%s: %d rows %.3f m apart, want %d", tt.name, f.count(), spacing, want)
			}
			off := math.Mod(f.heading()-tt.heading+360, tt.every)
			if off > 1e-3 && off < tt.every-1e-3 {
				t.Errorf("%s: heading %.4f, want %.4f or one every %v degrees from it", tt.name, f.heading(), tt.heading, tt.every)
			}
		}
	}
}

// Cells share out their ground: no more, no less.
func TestCells(t *testing.T) {
	for _, s := range generated(t) {
		for _, angle := range []float64{0, 0.4, 1.9} {
			var sum float64
			cells := cellsOf(ringsOf(s.yard.Plots[0].Turf), headingOf(angle))
			for _, c := range cells {
				sum += c.area()
				for i := 1; i < len(c); i++ {
					if c[i].v0 != c[i-1].v1 {
						t.Errorf("%s: a cell ends at %v and goes on at %v", s.name, c[i-1].v1, c[i].v0)
					}
				}
			}
			near(t, s.name+" in cells", sum, areaOf([]geo.Region{s.yard.Plots[0].Turf}), 1e-5, 0)
		}
	}
	// a bed in the middle makes four cells: below, to both sides, above
	y := yardOfRings(t, []geo.Ring{rectangle(0, 0, 30, 20)}, []geo.Ring{regular(9, 15, 10, 3)})
	if n := len(cellsOf(ringsOf(y.Plots[0].Turf), headingOf(0.1))); n != 4 {
		t.Errorf("%d cells round a bed, want 4", n)
	}
}
