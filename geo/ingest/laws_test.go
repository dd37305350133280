package ingest

import (
	"bytes"
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// standing are the problems that writing a site does not mend.
var standing = []string{
	"geometry_missing", "geometry_empty", "crs_old", "id_type", "id_repeated", "member_repeated", "axes_doubtful", "decimals_few",
}

// checkWrites: what a site writes, on many lines or one, reads back the same
// with nothing to repair, and writes the same again.
func checkWrites(t rapid.TB, c *Collection) {
	t.Helper()
	var lines, line bytes.Buffer
	if err := c.WriteGeoJSON(&lines); err != nil {
		t.Fatalf("cannot be written: %v", err)
	}
	if err := c.WriteGeoJSONLine(&line); err != nil {
		t.Fatalf("cannot be written: %v", err)
	}
	if bytes.Count(line.Bytes(), []byte{'\n'}) != 1 || !bytes.Equal(withoutLines(lines.Bytes()), withoutLines(line.Bytes())) {
		t.Errorf("many lines differ from one: %.300s\n%.300s", lines.Bytes(), line.Bytes())
	}
	again := readOne(t, lines.String())
	sameGeometries(t, again, c)
	for _, p := range again.Problems {
		if !slices.Contains(standing, p.Code) {
			t.Errorf("reads back with %v %v", p.Severity, p)
		}
	}
	var twice bytes.Buffer
	if err := again.WriteGeoJSON(&twice); err != nil || !bytes.Equal(twice.Bytes(), lines.Bytes()) {
		t.Errorf("the second writing differs (%v): %.300s\n%.300s", err, twice.Bytes(), lines.Bytes())
	}
}

func withoutLines(text []byte) []byte { return bytes.ReplaceAll(text, []byte{'\n'}, nil) }

// star draws a ring around a centre, open and counter-clockwise, without
// crossings; it may lie across the antimeridian.
func star(t *rapid.T) orb.Ring {
	n := rapid.IntRange(3, 30).Draw(t, "corners")
	anywhere := rapid.Float64Range(-180, 180)
	lon := rapid.OneOf(anywhere, rapid.SampledFrom([]float64{-180, 180, 0})).Draw(t, "lon")
	lat := rapid.Float64Range(-89, 89).Draw(t, "lat")
	size := math.Pow(10, rapid.Float64Range(-6, -1).Draw(t, "size"))
	ring := make(orb.Ring, n)
	for i := range ring {
		r := size * rapid.Float64Range(0.3, 1).Draw(t, "radius")
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		ring[i] = orb.Point{rounded(wrap(lon + r*cos)), rounded(lat + r*sin)}
	}
	return ring
}

// polygonText is a polygon as somebody else writes it.
func polygonText(ring orb.Ring) string {
	return `{"type":"Polygon","coordinates":` + string(appendPolygon(nil, orb.Polygon{ring})) + `}`
}

// TestRingLaws: however a ring is given (turned round, begun elsewhere, open,
// with repeats, drawn past 180), it is read as the same ring.
func TestRingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ring := star(t)
		want := slices.Clone(ring)
		k := rapid.IntRange(0, len(ring)-1).Draw(t, "start")
		given := slices.Concat(ring[k:], ring[:k])
		if rapid.Bool().Draw(t, "clockwise") {
			slices.Reverse(given)
		}
		if rapid.Bool().Draw(t, "repeats") {
			given = slices.Insert(given, 1, given[0], given[0])
		}
		if rapid.Bool().Draw(t, "closed") {
			given = append(given, given[0])
		}
		c := readOne(t, polygonText(given))
		if c.Refused() {
			t.Fatalf("refused: %v", c.Problems)
		}
		got := c.Features[0].Geometry.(orb.Polygon)[0]
		if got[0] != got[len(got)-1] {
			t.Errorf("not closed: %v", got)
		}
		if !slices.Equal(fromLeast(got[:len(got)-1]), fromLeast(want)) {
			t.Errorf("got %v, want %v", got, want)
		}
		checkWrites(t, c)
	})
}

// fromLeast is an open ring begun at its least position.
func fromLeast(r orb.Ring) orb.Ring {
	least := 0
	for i, p := range r {
		if slices.Compare(p[:], r[least][:]) < 0 {
			least = i
		}
	}
	return slices.Concat(r[least:], r[:least])
}

// TestNewGeometryLaw: geometry made here, in whatever winding and with however
// many digits, reads back within half of the last decimal.
func TestNewGeometryLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ring := star(t)
		for i := range ring {
			ring[i][1] += rapid.Float64Range(-1e-10, 1e-10).Draw(t, "digits")
		}
		if rapid.Bool().Draw(t, "clockwise") {
			slices.Reverse(ring)
		}
		c := readOne(t, written(t, lonely(orb.Polygon{ring})))
		if slices.ContainsFunc(c.Problems, func(p Problem) bool { return p.Code != "axes_doubtful" }) { // near the poles
			t.Fatalf("reads back with %v", c.Problems)
		}
		got := c.Features[0].Geometry.(orb.Polygon)[0]
		for i, p := range got[:len(got)-1] {
			q := ring[i]
			if i > 0 && got[1] != settledAt(ring[1]) {
				q = ring[len(ring)-i] // it was turned round
			}
			const within = 5e-14 + 2.9e-14 // half of the last decimal, and what doubles up to 180 are apart
			if math.Abs(p.Lon()-q.Lon()) > within || math.Abs(p.Lat()-q.Lat()) > within {
				t.Errorf("position %d: got %v, want %v", i, p, q)
			}
		}
		checkWrites(t, c)
	})
}

func settledAt(p orb.Point) orb.Point { return orb.Point{rounded(p.Lon()), rounded(p.Lat())} }
