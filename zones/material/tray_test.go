package material

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

var halfCentre = TrayShare.Share()

// Computed: half of the centre's 6.0 g lies on pan 4 to the left and between
// 12 and 13 to the right, so that the swath is 8.1 ft. The rule is that of
// Landschoot, Penn State, 2016.
func TestSwathOfTrays(t *testing.T) {
	row := TrayRow{Catch: []float64{0, .5, 1.1, 2, 3, 4.1, 5, 5.9, 6, 5.8, 5.1, 4, 3.1, 2.1, 1, .4, 0}, Centre: 8, Pitch: length("1 ft")}
	s := must(row.Swath(halfCentre))
	near(t, "left", s.Left.Feet(), 4, 1e-12)
	near(t, "right", s.Right.Feet(), 4.1, 1e-12)
	near(t, "swath", s.Width().Feet(), 8.1, 1e-12)
	cv := must(row.Variation(s.Width()))
	wide := must(row.Variation(1.5 * s.Width()))
	if !(cv < 0.05 && wide > 2*cv) {
		t.Errorf("variation %.3f at the swath and %.3f at half as much again", cv, wide)
	}
}

func TestTraysRefused(t *testing.T) {
	for _, tt := range []struct {
		row  TrayRow
		want string
	}{
		{TrayRow{[]float64{1, 2, 1}, 3, 1}, "the row has no tray on the path, or no pitch (state which tray stood on the path and how far apart they were)"},
		{TrayRow{[]float64{1, 2, 1}, 1, 0}, "the row has no tray on the path, or no pitch (state which tray stood on the path and how far apart they were)"},
		{TrayRow{[]float64{1, 0, 1}, 1, 1}, "the tray on the path caught nothing (run the spreader along the row's centre)"},
		{TrayRow{[]float64{1, 2, -1}, 1, 1}, "tray 3 caught -1"},
		{TrayRow{[]float64{1, 2, math.NaN()}, 1, 1}, "tray 3 caught NaN"},
		{TrayRow{[]float64{1.5, 2, 0}, 1, 1}, "the catch does not fall to 50 % of the centre's before the row ends (lay trays farther out)"},
	} {
		_, err := tt.row.Swath(halfCentre)
		checkError(t, tt.want, err, tt.want)
	}
	row := TrayRow{[]float64{0, 1, 0}, 1, 1}
	_, err := TrayRow{Catch: []float64{1}, Pitch: 1}.Variation(1e9)
	checkError(t, "lanes out of reach", err, "the catch does not reach from lane to lane (lay lanes closer)")
	_, err = TrayRow{Catch: []float64{1}}.Variation(1)
	checkError(t, "no pitch", err, "the row has no tray on the path, or no pitch (state which tray stood on the path and how far apart they were)")
	_, err = row.Swath(1)
	checkError(t, "all of it", err, "the swath ends at a part of the centre's catch")
	_, err = row.Variation(geo.Length(math.Inf(1)))
	checkError(t, "endless spacing", err, "there is no such distance between lanes (state a swath)")
	_, err = row.Variation(0)
	checkError(t, "no spacing", err, "there is no such distance between lanes (state a swath)")
}

// triangle is the catch of a pattern that falls evenly to nothing over so many
// pitches on each side.
func triangle(half int) TrayRow {
	row := TrayRow{Centre: half, Pitch: 0.3}
	for i := range 2*half + 1 {
		row.Catch = append(row.Catch, float64(half)-math.Abs(float64(i-half)))
	}
	return row
}

// Triangles laid half their base apart are level, and so are two of them in
// each other's middle; with gaps between them they are not: of a triangle on
// its own base the deviation is 1/sqrt(3) of the mean.
func TestVariationOfTriangles(t *testing.T) {
	row := triangle(6)
	swath := must(row.Swath(halfCentre)).Width()
	near(t, "swath", float64(swath), 6*0.3, 1e-12)
	for _, spacing := range []float64{1, 0.5, 0.25} {
		printed(t, "level", must(row.Variation(swath*geo.Length(spacing))), 0, 1e-12)
	}
	near(t, "apart", must(row.Variation(2*swath)), 1/math.Sqrt(3), 1e-4)
}

// A skewed pattern is walked there and back: its mirror image has the same
// variation, and lanes at the swath still join.
func TestVariationOfMirrorImage(t *testing.T) {
	check(t, 100, func(t *rapid.T) {
		half := rapid.IntRange(2, 8).Draw(t, "half")
		row := TrayRow{Centre: half, Pitch: 1}
		for range 2*half + 1 {
			row.Catch = append(row.Catch, rapid.Float64Range(0.1, 9).Draw(t, "catch"))
		}
		mirror := TrayRow{Centre: half, Pitch: 1}
		for i := range row.Catch {
			mirror.Catch = append(mirror.Catch, row.Catch[2*half-i])
		}
		spacing := geo.Length(rapid.Float64Range(0.5, float64(half)).Draw(t, "spacing"))
		printed(t, "mirrored", must(mirror.Variation(spacing)), must(row.Variation(spacing)), 1e-9)
	})
}
