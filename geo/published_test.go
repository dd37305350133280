package geo

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"slices"
	"testing"

	"github.com/paulmach/orb"
)

// publishedPolygon is one row of testdata/geodesy/polygons.json, which names
// its source.
type publishedPolygon struct {
	ID        string
	Area      float64     `json:"area_m2"`
	Perimeter float64     `json:"perimeter_m"`
	Rings     orb.Polygon // open rings
}

func (p publishedPolygon) places() []orb.Point {
	var all []orb.Point
	for _, r := range p.Rings {
		all = append(all, r...)
	}
	return all
}

func publishedPolygons(t *testing.T) []publishedPolygon {
	t.Helper()
	data, err := os.ReadFile("../testdata/geodesy/polygons.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct{ Polygons []publishedPolygon }
	if err := json.Unmarshal(data, &file); err != nil {
		t.Fatal(err)
	}
	if len(file.Polygons) != 46 {
		t.Fatalf("read %d polygons, want 46", len(file.Polygons))
	}
	return file.Polygons
}

// near reports whether a value is within the greater of two tolerances.
func near(got, want, abs, rel float64) bool {
	return math.Abs(got-want) <= max(abs, rel*math.Abs(want))
}

func TestAreaAndPerimeterOfPublishedPolygons(t *testing.T) {
	for _, p := range publishedPolygons(t) {
		t.Run(p.ID, func(t *testing.T) {
			f := NewFrame(Center(slices.Values(p.places())))
			r := tracedRegion(t, f.Rings(p.Rings), p.ID == "wander400")
			if got := float64(f.Area(r)); !near(got, p.Area, 1e-3, 1e-7) {
				t.Errorf("area = %.9f m2, want %.9f", got, p.Area)
			}
			if got := float64(f.Perimeter(r)); !near(got, p.Perimeter, 1e-6, 1e-9) {
				t.Errorf("perimeter = %.9f m, want %.9f", got, p.Perimeter)
			}
			witness := 0.0
			for i, ring := range p.Rings {
				a, _ := GeodesicPolygon(ring)
				if i > 0 {
					a = -a
				}
				witness += float64(a)
			}
			if !near(witness, p.Area, 1e-3, 3e-6) {
				t.Errorf("geodesic witness = %.9f m2, want %.9f", witness, p.Area)
			}
		})
	}
}

// tracedRegion is RegionOf. A ring that is known to cross itself must be
// refused; its traverse sum is still what was published.
func tracedRegion(t *testing.T, rings []Ring, crosses bool) Region {
	t.Helper()
	r, err := RegionOf(rings)
	if !crosses {
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	var crossing *CrossingError
	if !errors.As(err, &crossing) || crossing.Count != 7 {
		t.Errorf("error = %v, want one of 7 crossings", err)
	}
	return regionOf([]Polygon{{Shell: rings[0]}})
}

// The published table must tell a sphere and a transverse Mercator grid from
// the ellipsoid: each wrong method has to fail it on lawns at most latitudes.
func TestWrongMethodsFailThePublishedPolygons(t *testing.T) {
	const meanRadius, equatorialRadius = 6371008.771415, 6378137.0
	sphere := func(radius float64) func(publishedPolygon) float64 {
		return func(p publishedPolygon) float64 {
			l := ellipsoid{a: radius, e2: 1e-12}
			f := newFrameOn(l, Center(slices.Values(p.places())))
			return planar(p, f.project)
		}
	}
	for name, wrong := range map[string]func(publishedPolygon) float64{
		"sphere of the mean radius":       sphere(meanRadius),
		"sphere of the equatorial radius": sphere(equatorialRadius),
		"UTM grid":                        func(p publishedPolygon) float64 { return planar(p, utm) },
	} {
		failed := 0
		polygons := publishedPolygons(t)
		for _, p := range polygons {
			if !near(wrong(p), p.Area, 1e-3, 1e-7) {
				failed++
			}
		}
		if failed < len(polygons)-4 { // a few lie where the method happens to be true to scale
			t.Errorf("%s fails only %d of %d published areas", name, failed, len(polygons))
		}
	}
}

func planar(p publishedPolygon, project func(orb.Point) XY) float64 {
	sum := 0.0
	for _, r := range p.Rings {
		ring := make(Ring, len(r))
		for i, q := range r {
			ring[i] = project(q)
		}
		sum += ring.signedArea()
	}
	return sum
}

// utm projects to the place's UTM zone (Snyder 1987, eq. 8-9 to 8-15, to the
// fourth order, which is 1e-9 of a lawn's area).
func utm(p orb.Point) XY {
	const k0 = 0.9996
	zone := math.Floor((p.Lon() + 180) / 6)
	lat, l := p.Lat()*degree, (p.Lon()-(zone*6-177))*degree
	sin, cos := math.Sincos(lat)
	ep2 := wgs84.e2 / (1 - wgs84.e2)
	n := wgs84.a / math.Sqrt(1-wgs84.e2*sin*sin)
	t2, c, a := sin*sin/(cos*cos), ep2*cos*cos, l*cos
	x := k0 * n * (a + (1-t2+c)*a*a*a/6 + (5-18*t2+t2*t2+72*c-58*ep2)*math.Pow(a, 5)/120)
	y := k0 * (meridianArc(lat) + n*sin/cos*(a*a/2+(5-t2+9*c+4*c*c)*math.Pow(a, 4)/24))
	return XY{x, y}
}

// meridianArc is Snyder's eq. 3-21.
func meridianArc(lat float64) float64 {
	e2 := wgs84.e2
	e4, e6 := e2*e2, e2*e2*e2
	return wgs84.a * ((1-e2/4-3*e4/64-5*e6/256)*lat - (3*e2/8+3*e4/32+45*e6/1024)*math.Sin(2*lat) +
		(15*e4/256+45*e6/1024)*math.Sin(4*lat) - 35*e6/3072*math.Sin(6*lat))
}

// Planimeter tests of the GeographicLib JavaScript package (Karney 2013),
// those that are simple polygons; points are latitude, longitude, tolerances
// as published.
func TestPlanimeter(t *testing.T) {
	for _, tt := range []struct {
		name                string
		points              [][2]float64
		perimeter, perimTol float64
		area, areaTol       float64
	}{
		{"0a", [][2]float64{{89, 0}, {89, 90}, {89, 180}, {89, 270}}, 631819.8745, 1e-4, 24952305678, 1},
		{"0b", [][2]float64{{-89, 0}, {-89, 90}, {-89, 180}, {-89, 270}}, 631819.8745, 1e-4, 24952305678, 1},
		{"0c", [][2]float64{{0, -1}, {-1, 0}, {0, 1}, {1, 0}}, 627598.2731, 1e-4, 24619419146, 1},
		{"0d", [][2]float64{{90, 0}, {0, 0}, {0, 90}}, 30022685, 1, 63758202715511, 1},
		{"5", [][2]float64{{89, 0.1}, {89, 90.1}, {89, -179.9}}, 539297, 1, 12476152838.5, 1},
		{"15", [][2]float64{{2, 1}, {1, 2}, {3, 3}}, 652827.2021630231, 1e-6, 18454562325.45119, 0.5},
		{"one-degree square", [][2]float64{{0, 0}, {0, 1}, {1, 1}, {1, 0}}, 443770.917248302, 1e-6, 12308778361.469452, 0.5},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var places []orb.Point
			for _, p := range tt.points {
				places = append(places, orb.Point{p[1], p[0]})
			}
			area, perimeter := GeodesicPolygon(places)
			if math.Abs(float64(area)-tt.area) > tt.areaTol {
				t.Errorf("area = %.6f m2, want %.6f", float64(area), tt.area)
			}
			if math.Abs(float64(perimeter)-tt.perimeter) > tt.perimTol {
				t.Errorf("perimeter = %.6f m, want %.6f", float64(perimeter), tt.perimeter)
			}
		})
	}
}

// Worked examples of the projection.
func TestProjectionExamples(t *testing.T) {
	for _, tt := range []struct {
		source        string
		on            ellipsoid
		center, place orb.Point
		offset, want  XY
	}{
		{"Snyder 1987, USGS PP 1395, pp. 333-336, Clarke 1866", ellipsoid{6378206.4, 0.00676866},
			orb.Point{-100, 40}, orb.Point{-110, 30}, XY{}, XY{-965932.11, -1056814.93}},
		{"IOGP 373-7-2, method 9820, GRS 80", flattened(6378137, 298.257222101),
			orb.Point{10, 52}, orb.Point{5, 50}, XY{4321000, 3210000}, XY{3962799.45, 2999718.85}},
		{"Snyder 1987, polar aspect, International ellipsoid", flattened(6378388, 297),
			orb.Point{-100, 90}, orb.Point{5, 80}, XY{}, XY{1077459.7, 288704.5}},
	} {
		f := newFrameOn(tt.on, tt.center)
		got := f.project(tt.place).Plus(tt.offset)
		tolerance := 0.01
		if tt.center.Lat() == 90 {
			tolerance = 0.06 // printed to 0.1 m
		}
		if got.Minus(tt.want).Norm() > tolerance {
			t.Errorf("%s: got %.4f, want %.4f", tt.source, got, tt.want)
		}
		back := f.Place(f.project(tt.place))
		if math.Abs(back[0]-tt.place[0]) > 1e-12 || math.Abs(back[1]-tt.place[1]) > 1e-12 {
			t.Errorf("%s: came back as %v", tt.source, back)
		}
	}
}
