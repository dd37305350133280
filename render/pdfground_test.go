package render

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"github.com/tidwall/geodesic"

	"example.org/turfplat/zones"
)

// placesOf are the corners of a lot and of its turf that a map shows, on its
// sheet and on the earth.
func placesOf(c mapCase) (points []Point, places []orb.Point) {
	outline, err := c.draft.plat.Ground.Property()
	if err != nil {
		return nil, nil
	}
	for _, p := range slices.Concat(shells(outline), shells(c.draft.plat.Ground.Cover(zones.Turf))) {
		at := c.sheet.ground.view.at(p)
		if c.sheet.ground.window.holds(at) {
			points, places = append(points, at), append(places, c.draft.plat.Site.Frame.Place(p))
		}
	}
	return points, places
}

func metresApart(a, b orb.Point) (metres float64) {
	geodesic.WGS84.Inverse(a.Lat(), a.Lon(), b.Lat(), b.Lon(), &metres, nil, nil)
	return metres
}

func TestGroundOfASheet(t *testing.T) {
	for _, c := range mapCases(t) {
		points, places := placesOf(c)
		if len(points) == 0 {
			t.Errorf("%s shows no corner of its site", c.name)
		}
		for i, p := range points {
			if off := metresApart(c.sheet.ground.place(p), places[i]); off > 1e-6 {
				t.Errorf("%s: the corner %v lies %g m from its place", c.name, places[i], off)
			}
		}
	}
}

// The corners of the viewport on the earth fit those on the page, whatever the
// projection: a reader that takes longitude and latitude for straight is off by
// less than a dot.
func TestViewportIsStraight(t *testing.T) {
	for _, c := range mapCases(t) {
		points, places := placesOf(c)
		corners, ground := viewportOf(t, written(t, writePDF, c.sheet))
		for i, p := range points {
			x := (p.X/mmPerPoint - corners[0].X) / (corners[1].X - corners[0].X)
			y := (p.Y/mmPerPoint - corners[0].Y) / (corners[1].Y - corners[0].Y)
			ul, ll, lr := ground[0], ground[1], ground[2]
			read := orb.Point{ll[0] + x*(lr[0]-ll[0]) + y*(ul[0]-ll[0]), ll[1] + x*(lr[1]-ll[1]) + y*(ul[1]-ll[1])}
			if off := metresApart(read, places[i]); c.sheet.Scale.MM(off) > 0.02 {
				t.Errorf("%s: %v is read as %v, %g m off", c.name, places[i], read, off)
			}
		}
	}
}

var viewportForm = regexp.MustCompile(`/BBox\[([^\]]*)\]/Measure<<.*?/GPTS\[([^\]]*)\]`)

// viewportOf reads the only viewport of a document: two corners in points, four
// places.
func viewportOf(t *testing.T, file []byte) (corners [2]Point, ground []orb.Point) {
	t.Helper()
	m := viewportForm.FindSubmatch(file)
	if m == nil {
		t.Fatal("the document has no viewport")
	}
	read := func(text []byte) (numbers []float64) {
		for _, word := range strings.Fields(string(text)) {
			n, err := strconv.ParseFloat(word, 64)
			if err != nil {
				t.Fatal(err)
			}
			numbers = append(numbers, n)
		}
		return numbers
	}
	box, flat := read(m[1]), read(m[2])
	for i := 0; i < len(flat); i += 2 {
		ground = append(ground, orb.Point{flat[i+1], flat[i]})
	}
	return [2]Point{{box[0], box[1]}, {box[2], box[3]}}, ground
}

var gdalTransform = regexp.MustCompile(`(?m)^([-\d.]+) ([-\d.]+)`)

// General reference software reads the places of corners back from the page.
func TestGDALReadsPlaces(t *testing.T) {
	const within = 0.2 // m
	for _, name := range []string{"orchard-house", "paddock", "strip"} {
		d, sheet := inventedMap(t, name)
		checkWithGDAL(t, mapCase{name, d, sheet}, within)
	}
}

// checkWithGDAL compares the corners of the site on the first page.
func checkWithGDAL(t *testing.T, c mapCase, within float64) {
	t.Helper()
	points, places := placesOf(c)
	const dpi = 150
	var pixels strings.Builder
	for _, p := range points {
		fmt.Fprintf(&pixels, "%.6f %.6f\n", p.X/mmPerInch*dpi, (c.sheet.Height-p.Y)/mmPerInch*dpi)
	}
	out := fed(t, pixels.String(), written(t, writePDF, c.sheet), "gdaltransform", "--config", "GDAL_PDF_DPI", strconv.Itoa(dpi), "FILE")
	read := gdalTransform.FindAllStringSubmatch(out, -1)
	if len(read) != len(points) || len(points) == 0 {
		t.Fatalf("%s: GDAL reads %d places of %d corners:\n%s", c.name, len(read), len(points), out)
	}
	worst := 0.0
	for i, m := range read {
		place := orb.Point{number(t, []byte(m[1])), number(t, []byte(m[2]))}
		worst = max(worst, metresApart(place, places[i]))
	}
	if worst > within || math.IsNaN(worst) {
		t.Errorf("%s: GDAL reads a corner %.3f m off", c.name, worst)
	}
	t.Logf("%s: %d corners read to %.4f m", c.name, len(points), worst)
}
