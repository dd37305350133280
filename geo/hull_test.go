package geo

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestHullOfFewPlaces(t *testing.T) {
	a, b, c := XY{0, 0}, XY{2, 0}, XY{4, 0}
	for _, tt := range []struct {
		name   string
		places []XY
		want   Ring
	}{
		{"none", nil, nil},
		{"one", []XY{b}, Ring{b}},
		{"one twice", []XY{b, b}, Ring{b}},
		{"two", []XY{b, a}, Ring{a, b}},
		{"on a line", []XY{c, a, b, b}, Ring{a, c}},
		{"a triangle clockwise", []XY{a, {1, 3}, c}, Ring{a, c, {1, 3}}},
	} {
		if got := Hull(tt.places); !slices.Equal(got, tt.want) {
			t.Errorf("hull of %s is %v, want %v", tt.name, got, tt.want)
		}
	}
}

// No place lies outside a hull, each corner of it is one of them, and it turns
// left everywhere. Places on a small grid often lie on a line.
func TestHullHoldsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		on := rapid.Float64Range(-9, 9)
		if rapid.Bool().Draw(t, "on a grid") {
			on = rapid.Map(rapid.IntRange(-3, 3), func(i int) float64 { return float64(i) })
		}
		places := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) XY { return XY{on.Draw(t, "x"), on.Draw(t, "y")} }), 3, 30).Draw(t, "places")
		hull := Hull(places)
		for i, a := range hull {
			b := hull.next(i)
			if !slices.Contains(places, a) {
				t.Fatalf("corner %v is none of the places", a)
			}
			if n := len(hull); n > 2 && b.Minus(a).Cross(hull[(i+2)%n].Minus(b)) < -1e-9 {
				t.Fatalf("hull turns right at %v", b)
			}
			for _, p := range places {
				if b.Minus(a).Cross(p.Minus(a)) < -1e-9 {
					t.Fatalf("%v lies outside the edge from %v to %v", p, a, b)
				}
			}
		}
		before := Ring{{7, 7}, {-7, 3}}
		if got := AppendHull(slices.Clone(before), slices.Clone(places)); !slices.Equal(got, slices.Concat(before, hull)) {
			t.Fatalf("appended to %v: %v, want %v behind it", before, got, hull)
		}
	})
}
