package geo

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"github.com/tidwall/geodesic"
	"pgregory.net/rapid"
)

// latitudes at which claims about the frame are tried.
var latitudes = []float64{-80, -60, -34, -1, 0, 0.001, 20, 40, 45, 60, 70, 80, 89}

// directions calls visit with unit vectors all round.
func directions(visit func(XY)) {
	for turn := 0.0; turn < 360; turn += 22.5 {
		sin, cos := math.Sincos(turn * degree)
		visit(XY{sin, cos})
	}
}

// spans calls visit with edges of a length whose middle is d from the centre,
// and the geodesic between their ends.
func spans(f Frame, length, d float64, visit func(e edge, geodesicLength, offset float64)) {
	directions(func(to XY) {
		directions(func(along XY) {
			middle, half := to.Times(d), along.Times(length/2)
			e := edge{middle.Minus(half), middle.Plus(half)}
			p, q := f.Place(e.a), f.Place(e.b)
			var true_, azimuth float64
			geodesic.WGS84.Inverse(p.Lat(), p.Lon(), q.Lat(), q.Lon(), &true_, &azimuth, nil)
			var m orb.Point
			geodesic.WGS84.Direct(p.Lat(), p.Lon(), azimuth, true_/2, &m[1], &m[0], nil)
			visit(e, true_, math.Abs(along.Cross(f.project(m).Minus(e.a))))
		})
	})
}

// What the comments on Frame, Perimeter and LineLength say.
func TestEdgesAgainstGeodesics(t *testing.T) {
	for _, tt := range []struct {
		length, d   float64 // of the edge; of its middle from the centre
		offset, rel float64 // from the geodesic in m; of the length
	}{
		{100, 50, 1e-6, 1e-9},
		{100, 1000, 1e-6, 1e-9},
		{100, 5000, 1e-6, 1e-8},
		{1000, 500, 1e-4, 1e-9},
		{1000, 5000, 1e-4, 1e-8},
		{1000, 9500, 1e-4, 1e-8},
		{10000, 5000, 1e-2, 1e-8},
	} {
		for _, lat := range latitudes {
			f := NewFrame(orb.Point{-93, lat})
			rounding := 1e-8 // m, of Place
			if math.Abs(lat) > 70 {
				rounding = 2e-7
			}
			t.Run(fmt.Sprintf("%v m at %v m, lat %v", tt.length, tt.d, lat), func(t *testing.T) {
				spans(f, tt.length, tt.d, func(e edge, want, offset float64) {
					if offset > tt.offset+rounding {
						t.Errorf("%v lies %.3g m from the geodesic", e, offset)
					}
					got := float64(f.LineLength(Line{e.a, e.b}))
					if !near(got, want, rounding, tt.rel) {
						t.Errorf("%v is %.9f m long, on the ellipsoid %.9f", e, got, want)
					}
				})
			})
		}
	}
}

func TestPlaceUndoesXY(t *testing.T) {
	check(t, 1000, func(t *rapid.T) {
		center := orb.Point{rapid.Float64Range(-180, 180).Draw(t, "lon"), rapid.Float64Range(-89, 89).Draw(t, "lat")}
		f := NewFrame(center)
		at := XY{rapid.Float64Range(-10000, 10000).Draw(t, "x"), rapid.Float64Range(-10000, 10000).Draw(t, "y")}.snapped()
		place := f.Place(at)
		if !(place.Lon() >= -180 && place.Lon() <= 180 && math.Abs(place.Lat()) <= 90) {
			t.Fatalf("place = %v", place)
		}
		allowed := 1e-8
		if math.Abs(place.Lat()) > 70 || math.Abs(center.Lat()) > 70 {
			allowed = 2e-7
		}
		if d := f.project(place).Minus(at).Norm(); d > allowed {
			t.Errorf("%v came back %g m away", at, d)
		}
		if d := f.XY(place).Minus(at).Norm(); d > allowed+grain {
			t.Errorf("%v came back %g m away, snapped", at, d)
		}
	})
}

func TestFramesAtTheEndsOfTheEarth(t *testing.T) {
	for _, center := range []orb.Point{{0, 90}, {12, -90}, {0, 89.9999999}, {180, 0}, {-180, 0}, {180, -16}} {
		f := NewFrame(center)
		directions(func(to XY) {
			at := to.Times(100)
			allowed := 1e-8
			if math.Abs(center.Lat()) > 89 {
				allowed = 1e-4 // doubles of the sine of the latitude
			}
			if d := f.project(f.Place(at)).Minus(at).Norm(); d > allowed {
				t.Errorf("frame at %v: %v came back %g m away", center, at, d)
			}
		})
		if c := f.Place(XY{}); c != center || f.Center() != center {
			t.Errorf("centre %v came back as %v", center, c)
		}
	}
}

// A lawn on the antimeridian is the lawn it would be anywhere else.
func TestAntimeridian(t *testing.T) {
	for _, lat := range []float64{-34, 0, 52} {
		ring := func(lon float64) orb.Ring {
			var r orb.Ring
			for _, p := range rectangle(-4e-4, -2e-4, 4e-4, 2e-4) {
				r = append(r, orb.Point{math.Remainder(lon+p.X, 360), lat + p.Y})
			}
			return r
		}
		measure := func(r orb.Ring) (float64, float64) {
			f := NewFrame(Center(slices.Values(r)))
			region := regionFrom(t, f.Ring(r))
			return float64(f.Area(region)), float64(f.Perimeter(region))
		}
		area, perimeter := measure(ring(0))
		for _, lon := range []float64{180, -180, 179.9998, -179.9997} {
			a, p := measure(ring(lon))
			if !near(a, area, 2e-5, 0) || !near(p, perimeter, 1e-6, 0) { // degrees near 180 hold 3e-9 m
				t.Errorf("at %v, %v: %.6f m2 and %.6f m, want %.6f and %.6f", lon, lat, a, p, area, perimeter)
			}
		}
	}
}

func TestCenter(t *testing.T) {
	for _, tt := range []struct {
		name   string
		places []orb.Point
		want   orb.Point
	}{
		{"none", nil, orb.Point{0, 0}},
		{"one", []orb.Point{{-93.1, 44.9}}, orb.Point{-93.1, 44.9}},
		{"two", []orb.Point{{-93, 44}, {-94, 45}}, orb.Point{-93.5, 44.5}},
		{"Greenwich", []orb.Point{{-0.5, 51}, {1, 52}}, orb.Point{0.25, 51.5}},
		{"antimeridian", []orb.Point{{179.5, -17}, {-179, -16}}, orb.Point{-179.75, -16.5}},
		{"on the antimeridian, both ways of writing it", []orb.Point{{180, 1}, {-180, 3}}, orb.Point{180, 2}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := Center(slices.Values(tt.places)); got != tt.want {
				t.Errorf("center = %v, want %v", got, tt.want)
			}
			slices.Reverse(tt.places)
			if got := Center(slices.Values(tt.places)); got != tt.want {
				t.Errorf("center of the places in reverse = %v, want %v", got, tt.want)
			}
		})
	}
}

// Beyond 10 km a region is measured along geodesics; its edges, divided each
// kilometre, keep the frame within 1e-6 of that.
func TestWideSquares(t *testing.T) {
	for _, lat := range latitudes {
		for _, side := range []float64{12_000, 25_000, 40_000} {
			for _, lon := range []float64{-93, 180} {
				f := NewFrame(orb.Point{lon, lat})
				corners := f.Places(rectangle(-side/2, -side/2, side/2, side/2))
				wantArea, wantPerimeter := GeodesicPolygon(corners)
				r := regionFrom(t, f.Ring(corners))
				if !Wide(r.Bounds()) {
					t.Errorf("%v m is not wide", side)
				}
				if n := len(r.Polygons()[0].Shell); n < int(4*side/longEdge) {
					t.Errorf("%v m at %v, %v: %d vertices", side, lon, lat, n)
				}
				if !near(r.PlanarArea(), float64(wantArea), 0, 1e-6) || !near(float64(f.Area(r)), float64(wantArea), 0, 1e-8) {
					t.Errorf("%v m at %v, %v: %.1f m2 in the frame, %.1f along geodesics, want %.1f", side, lon, lat, r.PlanarArea(), float64(f.Area(r)), float64(wantArea))
				}
				if !near(float64(f.Perimeter(r)), float64(wantPerimeter), 0, 1e-8) {
					t.Errorf("%v m at %v, %v: perimeter %.4f m, want %.4f", side, lon, lat, float64(f.Perimeter(r)), float64(wantPerimeter))
				}
			}
		}
	}
}

func TestWideRegionWithAHole(t *testing.T) {
	f := NewFrame(orb.Point{10, 50})
	whole, hole := regionFrom(t, rectangle(-9000, -9000, 9000, 9000)), regionFrom(t, rectangle(-3000, -3000, 3000, 3000))
	pierced := must[Region](t)(Difference(whole, hole))
	area, _ := GeodesicPolygon(f.Places(hole.polygons[0].Shell))
	if got, want := f.Area(pierced), f.Area(whole)-area; !near(float64(got), float64(want), 1e-3, 0) {
		t.Errorf("area = %.4f m2, want %.4f", float64(got), float64(want))
	}
}

func TestRingDividesLongEdges(t *testing.T) {
	f := NewFrame(orb.Point{10, 50})
	open := orb.Ring(f.Places(rectangle(0, 0, 2500, 900)))
	closed := append(slices.Clone(open), open[0])
	if got := f.Ring(open); len(got) != 8 || !slices.Equal(got, f.Ring(closed)) {
		t.Errorf("open ring: %d vertices, closed ring: %d; want 8", len(got), len(f.Ring(closed)))
	}
	if got := f.Ring(orb.Ring{{-170, 10}, {0, 10}, {170, 80}, {-170, 10}}); len(got) != 3*mostParts {
		t.Errorf("round the globe: %d vertices, want %d", len(got), 3*mostParts)
	}
	if got := f.Ring(nil); len(got) != 0 {
		t.Errorf("empty ring: %v", got)
	}
}

func TestLineDropsRepeats(t *testing.T) {
	f := NewFrame(orb.Point{10, 50})
	if got := f.Line(orb.LineString{{10, 50}, {10, 50}, {10.001, 50}, {10.001, 50}, {10, 50}}); len(got) != 3 {
		t.Errorf("line = %v, want 3 positions", got)
	}
}

// What is written is wound as RFC 7946 3.1.6 asks, and closed.
func TestMultiPolygon(t *testing.T) {
	f := NewFrame(orb.Point{10, 50})
	r := regionFrom(t, reversed(rectangle(0, 0, 20, 20)), rectangle(5, 5, 9, 9))
	m := f.MultiPolygon(r)
	if len(m) != 1 || len(m[0]) != 2 {
		t.Fatalf("multipolygon = %v", m)
	}
	if m[0][0].Orientation() != orb.CCW || m[0][1].Orientation() != orb.CW {
		t.Errorf("shell is wound %v, hole %v", m[0][0].Orientation(), m[0][1].Orientation())
	}
	for _, ring := range m[0] {
		if !ring.Closed() {
			t.Errorf("ring is not closed: %v", ring)
		}
	}
	same(t, "area read back", regionFrom(t, f.Rings(m[0])...).PlanarArea(), r.PlanarArea())
}

func TestUnits(t *testing.T) {
	// NIST Handbook 44, appendix C (from memory); 0.3048 m: 85 FR 62698.
	for _, tt := range []struct {
		name      string
		got, want float64
	}{
		{"foot", Length(0.3048).Feet(), 1},
		{"square foot", Area(0.09290304).SquareFeet(), 1},
		{"acre", Area(4046.8564224).Acres(), 1},
		{"thousand square feet", Area(92.90304).SquareFeet(), 1000},
	} {
		if !near(tt.got, tt.want, 0, 1e-15) {
			t.Errorf("%s: %.17g, want %v", tt.name, tt.got, tt.want)
		}
	}
}

// What is laid into no frame is no number, and so does not pass for one.
func TestZeroFrameMeasuresNothing(t *testing.T) {
	var none Frame
	corner := orb.Point{-93, 45}
	at := none.XY(corner)
	for name, v := range map[string]float64{
		"x": at.X, "y": at.Y, "longitude": none.Place(XY{1, 1}).Lon(),
	} {
		if !math.IsNaN(v) {
			t.Errorf("%s is %v", name, v)
		}
	}
	if l := float64(none.LineLength(Line{{0, 0}, {1, 1}})); !math.IsInf(l, 1) {
		t.Errorf("a length is %v", l)
	}
	ring := none.Ring(orb.Ring{corner, {-92.999, 45}, {-92.999, 45.001}, corner})
	if r, err := RegionOf([]Ring{ring}); err == nil && !math.IsNaN(float64(none.Area(r))) {
		t.Errorf("the area is %v", none.Area(r))
	}
}
