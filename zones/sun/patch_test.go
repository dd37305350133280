package sun

import (
	"flag"
	"fmt"
	"math"
	"slices"
	"strconv"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

var frame = geo.NewFrame(orb.Point{-93.1, 44.95})

// failer is what testing.T and rapid.T have in common.
type failer interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

// region is the ground inside a ring and outside the others.
func region(t failer, rings ...geo.Ring) geo.Region {
	t.Helper()
	r, err := geo.NonZeroRegionOf(rings)
	if err != nil {
		t.Fatalf("region: %v", err)
	}
	return r
}

func rectangle(west, south, east, north float64) geo.Ring {
	return geo.Ring{{X: west, Y: south}, {X: east, Y: south}, {X: east, Y: north}, {X: west, Y: north}}
}

// fieldOf fills a field over a region by a rule for the hours at a position.
func fieldOf(r geo.Region, step float64, hours func(geo.XY) float64) *Field {
	f := &Field{Grid: GridOver(r.Bounds(), step)}
	f.Values = make([]float64, f.Cells())
	for i, in := range f.within(r) {
		if f.Values[i] = math.NaN(); in {
			f.Values[i] = hours(f.Center(i))
		}
	}
	return f
}

func patchesOf(t failer, f *Field, turf geo.Region) []Patch {
	t.Helper()
	patches, err := Patches(f, turf, frame, DefaultLimits())
	if err != nil {
		t.Fatalf("patches: %v", err)
	}
	return patches
}

// check tries a property on a number of random cases, fewer with -short.
func check(t *testing.T, cases int, property func(*rapid.T)) {
	t.Helper()
	if testing.Short() {
		cases = max(1, cases/10)
	}
	checks := flag.Lookup("rapid.checks")
	defer checks.Value.Set(checks.Value.String())
	checks.Value.Set(strconv.Itoa(cases))
	rapid.Check(t, property)
}

// listed writes patches as people would list them.
func listed(patches []Patch) string {
	text := ""
	for _, p := range patches {
		text += fmt.Sprintf("%s %.1f m2 in %d at %.2f h; ", Exposures[p.Class], float64(frame.Area(p.Region)), len(p.Region.Polygons()), p.Hours)
	}
	return text
}

// checkTiling proves that patches make up the turf and do not overlap.
func checkTiling(t failer, patches []Patch, turf geo.Region) {
	t.Helper()
	var parts []geo.Region
	sum := 0.0
	for _, p := range patches {
		parts = append(parts, p.Region)
		sum += float64(frame.Area(p.Region))
	}
	whole := float64(frame.Area(turf))
	if math.Abs(sum-whole) > 1e-6*whole {
		t.Errorf("patches add up to %.6f m2 of %.6f", sum, whole)
	}
	all, err := geo.Union(parts...)
	if err != nil {
		t.Fatalf("union: %v", err)
	}
	if together := float64(frame.Area(all)); math.Abs(together-whole) > 1e-6*whole {
		t.Errorf("patches together cover %.6f m2 of %.6f", together, whole)
	}
}

// checkWalkable proves that no piece is under the limits but where a whole
// piece of the turf is.
func checkWalkable(t failer, patches []Patch, turf geo.Region) {
	t.Helper()
	for _, p := range patches {
		for _, piece := range p.Region.Pieces() {
			area := float64(frame.Area(piece))
			core, err := piece.Buffer(-1.5 / 2)
			if err != nil {
				t.Fatalf("buffer: %v", err)
			}
			if area >= 14 && !core.Empty() {
				continue
			}
			whole := slices.ContainsFunc(turf.Pieces(), func(r geo.Region) bool {
				return r.Bounds().Grown(1e-5).Meets(piece.Bounds()) && math.Abs(float64(frame.Area(r))-area) < 1e-4
			})
			if !whole {
				t.Errorf("piece of %s, %.2f m2, empty core %t, is under the limits: %s", Exposures[p.Class], area, core.Empty(), listed(patches))
			}
		}
	}
}

func TestPatches(t *testing.T) {
	lawn := rectangle(0, 0, 20, 20)
	east := func(limit, wide float64) func(geo.XY) float64 { // hours fall from west to east
		return func(p geo.XY) float64 { return 6 - (p.X-limit)/wide }
	}
	spot := func(x, y, radius, inside, outside float64) func(geo.XY) float64 {
		return func(p geo.XY) float64 {
			if math.Hypot(p.X-x, p.Y-y) < radius {
				return inside
			}
			return outside
		}
	}
	stepped := func(first, hours, second, then float64) func(geo.XY) float64 { // from west to east
		return func(p geo.XY) float64 {
			switch {
			case p.X < first:
				return 8
			case p.X < second:
				return hours
			}
			return then
		}
	}
	for _, tt := range []struct {
		name  string
		turf  []geo.Ring
		hours func(geo.XY) float64
		want  string
	}{
		{"all in the sun", []geo.Ring{lawn}, spot(0, 0, 0, 0, 9), "full 400.0 m2 in 1 at 9.00 h; "},
		{"half and half", []geo.Ring{lawn}, east(10, 5), "full 200.0 m2 in 1 at 7.00 h; part 200.0 m2 in 1 at 5.00 h; "},
		{"two limits in a lawn", []geo.Ring{lawn}, east(5, 5), "full 100.0 m2 in 1 at 6.50 h; part 200.0 m2 in 1 at 5.00 h; shade 100.0 m2 in 1 at 3.50 h; "},
		{"a limit between cells", []geo.Ring{lawn}, east(10.13, 5), "full 202.7 m2 in 1 at 7.03 h; part 197.3 m2 in 1 at 5.03 h; "},
		{"under a tree", []geo.Ring{lawn}, spot(10, 10, 4, 3, 8), "full 350.5 m2 in 1 at 7.99 h; shade 49.5 m2 in 1 at 3.00 h; "},
		{"a spot too small", []geo.Ring{lawn}, spot(10, 10, 2, 3, 8), "full 400.0 m2 in 1 at 7.84 h; "},
		{"a strip too narrow along a wall", []geo.Ring{lawn}, east(1, 0.1), "deep 400.0 m2 in 1 at -84.00 h; "},
		{"two strips too narrow, wide enough together", []geo.Ring{lawn}, stepped(18, 5, 19, 2.5), "full 360.0 m2 in 1 at 8.00 h; shade 40.0 m2 in 1 at 3.75 h; "},
		{"two strips too narrow together", []geo.Ring{lawn}, stepped(19, 5, 19.5, 2.5), "full 400.0 m2 in 1 at 7.79 h; "},
		{"two lawns", []geo.Ring{lawn, rectangle(9, -1, 11, 21)}, east(10, 5), "full 180.0 m2 in 1 at 7.10 h; part 180.0 m2 in 1 at 4.90 h; "},
		{"an island too small, alone", []geo.Ring{rectangle(0, 0, 2, 2)}, east(1, 5), "part 4.0 m2 in 1 at 6.00 h; "},
		{"a lawn narrower than the least patch", []geo.Ring{rectangle(0, 0, 40, 1)}, east(20, 5), "full 40.0 m2 in 1 at 6.00 h; "},
		{"less than a cell", []geo.Ring{rectangle(0.3, 0.3, 0.4, 0.4)}, east(0, 5), ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			turf := region(t, tt.turf...)
			patches := patchesOf(t, fieldOf(turf, 0.5, tt.hours), turf)
			if got := listed(patches); got != tt.want {
				t.Errorf("patches\n%s\nwant\n%s", got, tt.want)
			}
			if len(patches) > 0 {
				checkTiling(t, patches, turf)
				checkWalkable(t, patches, turf)
			}
		})
	}
}

// A yard of 40 m by 40 m in cells of 0.25 m, under four trees.
func BenchmarkPatches(b *testing.B) {
	turf, err := geo.NonZeroRegionOf([]geo.Ring{rectangle(0, 0, 40, 40), rectangle(12, 12, 24, 20)})
	if err != nil {
		b.Fatal(err)
	}
	f := fieldOf(turf, 0.25, func(p geo.XY) float64 {
		h := 10.0
		for _, tree := range []geo.XY{{X: 8, Y: 30}, {X: 16, Y: 32}, {X: 30, Y: 10}, {X: 35, Y: 35}} {
			h -= 8 / (1 + math.Exp(math.Hypot(p.X-tree.X, p.Y-tree.Y)-5))
		}
		return h + 0.3*math.Sin(12.9898*p.X+78.233*p.Y)
	})
	for b.Loop() {
		if _, err := Patches(f, turf, frame, DefaultLimits()); err != nil {
			b.Fatal(err)
		}
	}
}
