package render

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// What comes off adds up: traced turf less all kinds is the net turf, and each
// kind is the sum of its objects.
func TestTallyAddsUp(t *testing.T) {
	for _, c := range mapCases(t) {
		left := c.draft.tally.traced.AreaM2 - c.draft.measured.TracedTurf.OutsideOutlineM2
		for _, k := range c.draft.tally.kinds {
			left -= k.measure.AreaM2
			var named float64
			for _, o := range k.objects {
				named += o.measure.AreaM2
			}
			if named > k.measure.AreaM2+1e-6 {
				t.Errorf("%s: objects of %s take off %.3f m2, all of it %.3f", c.name, k.look.word, named, k.measure.AreaM2)
			}
		}
		if net := c.draft.tally.net.AreaM2; math.Abs(left-net) > 1e-6 {
			t.Errorf("%s: %.6f m2 are left, net turf is %.6f", c.name, left, net)
		}
	}
}

func TestObjectsAreGrouped(t *testing.T) {
	d, _ := inventedMap(t, "mill")
	beds := d.tally.kinds[slices.IndexFunc(d.tally.kinds, func(k kindTally) bool { return k.look.word == "Bed" })]
	if beds.count != 40 {
		t.Fatalf("%d beds", beds.count)
	}
	for _, tt := range []struct {
		most, rows int
		last       string
	}{{0, 1, "Beds (40)"}, {1, 3, "\t39 more beds"}, {39, 41, "\t1 more bed"}, {40, 41, ""}, {1000, 41, ""}} {
		rows := beds.rows(d.figures, 1000, tt.most)
		last := rows[len(rows)-1][0]
		if len(rows) != tt.rows || tt.last != "" && last != tt.last {
			t.Errorf("with %d objects listed there are %d rows, the last %q; want %d, %q", tt.most, len(rows), last, tt.rows, tt.last)
		}
	}
}

func TestKindsTakeTurns(t *testing.T) {
	objects := func(n int) kindTally { return kindTally{objects: make([]ownMeasure, n)} }
	for _, tt := range []struct {
		rows int
		want string
	}{{0, "[0 0 0]"}, {2, "[1 0 1]"}, {4, "[2 0 2]"}, {6, "[2 0 4]"}, {100, "[2 0 5]"}} {
		kinds := tally{kinds: []kindTally{objects(2), objects(0), objects(5)}}
		got := []int{kinds.listed(0, tt.rows), kinds.listed(1, tt.rows), kinds.listed(2, tt.rows)}
		if fmt.Sprint(got) != tt.want {
			t.Errorf("%d rows are shared as %v, want %s", tt.rows, got, tt.want)
		}
	}
}

// A table that goes on in the next column loses no row and repeats its heads.
func TestTablesGoOn(t *testing.T) {
	table := table{columns: []column{{head: "Name"}, {head: "ft²", anchor: End}}, totals: [][]string{{"All", "9"}}, size: tableSize}
	for i := range 30 {
		table.rows = append(table.rows, []string{fmt.Sprintf("row %02d", i), "1"})
	}
	columns := []rect{{Point{0, 0}, Point{60, 80}}, {Point{65, 0}, Point{125, 80}}, {Point{130, 0}, Point{190, 80}}}
	elements, left, ok := flow(columns, 4, true, []block{table})
	if !ok {
		t.Fatal("there is no room")
	}
	var words []string
	for _, text := range textsOf(elements) {
		words = append(words, text.String)
		if text.At.Y < 0 || text.At.Y > 80 {
			t.Errorf("%q stands at %g, outside its column", text.String, text.At.Y)
		}
	}
	all := strings.Join(words, " ")
	for i := range 30 {
		if row := fmt.Sprintf("row %02d", i); strings.Count(all, row) != 1 {
			t.Errorf("%s is there %d times", row, strings.Count(all, row))
		}
	}
	if strings.Count(all, "Name") != 2 || strings.Count(all, "All") != 1 || left[2] != 80 {
		t.Errorf("heads and totals are wrong in %q, left %v", all, left)
	}
	if _, _, ok := flow(columns, 4, false, []block{table}); ok {
		t.Error("a whole table of 30 rows fits a column of 80 mm")
	}
	if _, _, ok := flow(columns[:1], 4, true, []block{table}); ok {
		t.Error("30 rows fit a column of 80 mm")
	}
}

// Columns are no deeper than their blocks need, and tables stay whole where
// they can.
func TestColumnsAreEven(t *testing.T) {
	small := table{columns: []column{{head: "Small"}}, rows: make([][]string, 7), size: tableSize}
	columns := []rect{{Point{0, 0}, Point{60, 80}}, {Point{65, 0}, Point{125, 80}}}
	elements, left := evenFlow(columns, 4, []block{small, small})
	heads := 0
	for _, text := range textsOf(elements) {
		if text.String == "Small" {
			heads++
		}
	}
	if heads != 2 || left[0] != left[1] {
		t.Errorf("two tables have %d heads, %v is left", heads, left)
	}
}
