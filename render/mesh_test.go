package render

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Plates that meet have a cell in common, within the window and beyond it.
func TestMeshFindsPlatesThatMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := newMesh(rect{Point{-10, -10}, Point{rapid.Float64Range(-10, 10).Draw(t, "right"), 10}})
		a, b := anyPlate(t, "a"), anyPlate(t, "b")
		if rapid.Bool().Draw(t, "touching") { // at a corner, on lines of the mesh or not
			b = levelPlate(a[2].plus(1, 1), 2, 2)
		}
		m.put(0, m.cells(a, nil))
		m.put(mostLeaders-1, m.cells(b, nil))
		near := m.near(m.cells(a, nil))
		if got := slices.Collect(near.numbers); a.meets(b) && !slices.Equal(got, []int{0, mostLeaders - 1}) {
			t.Fatalf("plates meet, and the mesh finds %v", got)
		}
		m.remove(mostLeaders-1, m.cells(b, nil))
		if near = m.near(m.cells(b, nil)); near[(mostLeaders-1)/64]>>((mostLeaders-1)%64) != 0 {
			t.Fatal("the mesh finds a plate that was taken off")
		}
	})
}

// The mesh tells apart what is far apart.
func TestMeshLeavesOutWhatIsFarOff(t *testing.T) {
	m := newMesh(rect{max: Point{200, 200}})
	m.put(3, m.cells(strokePlate(Point{0, 0}, Point{150, 150}, leaderRoom), nil))
	for _, tt := range []struct {
		at   Point
		want []int
	}{{Point{75, 75}, []int{3}}, {Point{90, 60}, nil}, {Point{170, 170}, nil}} {
		near := m.near(m.cells(levelPlate(tt.at, 5, 5), nil))
		if got := slices.Collect(near.numbers); !slices.Equal(got, tt.want) {
			t.Errorf("at %v the mesh finds %v, want %v", tt.at, got, tt.want)
		}
	}
}
