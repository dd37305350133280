package render

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/sun"
)

// An inventedSite is a property made up for a test, in metres east and north
// of its corner.
type inventedSite struct {
	header   map[string]any
	features []inventedFeature
	place    orb.Point // of the corner
}

type inventedFeature struct {
	props map[string]any
	shape string // Polygon, LineString or Point
	at    []geo.XY
}

// put adds an object; facts are pairs of names and values.
func (s *inventedSite) put(kind, id, name, shape string, at []geo.XY, facts ...any) {
	props := map[string]any{"kind": kind, "id": id}
	if name != "" {
		props["name"] = name
	}
	for i := 0; i+1 < len(facts); i += 2 {
		props[facts[i].(string)] = facts[i+1]
	}
	s.features = append(s.features, inventedFeature{props, shape, at})
}

func (s *inventedSite) area(kind, id, name string, at []geo.XY, facts ...any) {
	s.put(kind, id, name, "Polygon", at, facts...)
}

func (s *inventedSite) line(kind, id, name string, at []geo.XY, facts ...any) {
	s.put(kind, id, name, "LineString", at, facts...)
}

func (s *inventedSite) point(kind, id, name string, x, y float64, facts ...any) {
	s.put(kind, id, name, "Point", []geo.XY{{X: x, Y: y}}, facts...)
}

// xy pairs up coordinates.
func xy(flat ...float64) []geo.XY {
	at := make([]geo.XY, len(flat)/2)
	for i := range at {
		at[i] = geo.XY{X: flat[2*i], Y: flat[2*i+1]}
	}
	return at
}

func oblong(x0, y0, x1, y1 float64) []geo.XY { return xy(x0, y0, x1, y0, x1, y1, x0, y1) }

// blob is a bed of no straight edge.
func blob(x, y, radius float64) []geo.XY {
	var at []geo.XY
	for i := range 24 {
		angle := 2 * math.Pi * float64(i) / 24
		r := radius * (1 + 0.18*math.Sin(3*angle) + 0.09*math.Cos(5*angle))
		at = append(at, geo.XY{X: x + r*math.Cos(angle), Y: y + r*math.Sin(angle)})
	}
	return at
}

// geoJSON writes the site as a site file.
func (s *inventedSite) geoJSON(t testing.TB) string {
	frame := geo.NewFrame(s.place)
	var features []any
	for _, f := range s.features {
		var positions []orb.Point
		for _, p := range f.at {
			positions = append(positions, frame.Place(p))
		}
		var coordinates any = positions
		switch f.shape {
		case "Polygon":
			coordinates = []any{append(positions, positions[0])}
		case "Point":
			coordinates = positions[0]
		}
		features = append(features, map[string]any{"type": "Feature", "properties": f.props,
			"geometry": map[string]any{"type": f.shape, "coordinates": coordinates}})
	}
	text, err := json.Marshal(map[string]any{"type": "FeatureCollection", "site": s.header, "features": features})
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// surveyed reads a site file and lays it out.
func surveyed(t testing.TB, text, name string) (*zones.Plat, zones.Measurement) {
	t.Helper()
	return laidOut(t, text, name, nil)
}

// lit lays a site out with its sun, over the summer half of the year.
func lit(t testing.TB, text, name string) (*zones.Plat, zones.Measurement) {
	t.Helper()
	season, err := sun.ParseSeason("04-15..10-15")
	if err != nil {
		t.Fatal(err)
	}
	return laidOut(t, text, name, &zones.SunRequest{
		Season: func(float64) sun.Season { return season }, Limits: sun.DefaultLimits(), MinElevation: sun.LeastElevation})
}

func laidOut(t testing.TB, text, name string, light *zones.SunRequest) (*zones.Plat, zones.Measurement) {
	t.Helper()
	for c := range ingest.GeoJSON(strings.NewReader(text), name, ingest.DefaultLimits) {
		s := zones.NewSite(c, zones.Reading{Key: zones.DefaultMapKey(), Sun: light})
		p := zones.Survey(s)
		if p == nil {
			t.Fatalf("%s is refused: %v", name, s.Problems)
		}
		return p, p.Measurement()
	}
	t.Fatalf("%s holds no site", name)
	return nil, zones.Measurement{}
}

func drafted(t testing.TB, s *inventedSite, o MapOptions) (*draft, *Sheet) {
	t.Helper()
	p, m := surveyed(t, s.geoJSON(t), "invented.geojson")
	d, err := siteDraft(p, m, o)
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := d.sheet()
	if err != nil {
		t.Fatal(err)
	}
	return d, sheet
}

// orchardHouse is a lot of 36 x 48 m, 118 x 157 ft, with one of everything.
func orchardHouse() *inventedSite {
	s := &inventedSite{place: orb.Point{-96.2, 41.3}, header: map[string]any{
		"id": "orchard-house", "name": "Orchard House", "units": "us", "revision": 3}}
	s.area("outline", "lot", "", oblong(0, 0, 36, 48), "sigma_m", 0.1)
	s.area("building", "house", "House", xy(9, 18, 27, 18, 27, 30, 21, 30, 21, 33, 9, 33))
	s.area("building", "garage", "Garage", oblong(27, 14, 34, 24))
	s.area("hardscape", "drive", "Drive", oblong(28, -4, 33, 14))
	s.line("hardscape", "walk", "Front walk", xy(14, 0, 14, 18), "width_m", 1.5)
	s.area("hardscape", "patio", "Patio", oblong(11, 33, 19, 38))
	s.area("bed", "front-bed", "Foundation bed", oblong(16, 15.5, 27, 18))
	s.area("bed", "island", "Island bed", blob(6, 8, 2.6))
	s.area("bed", "border", "Shrub border", xy(0, 44, 18, 46, 18, 48, 0, 48))
	s.area("pool", "pool", "Pool", oblong(23, 37, 30, 41))
	s.area("water", "pond", "Pond", blob(6.5, 37, 1.9), "setback_m", 1.5)
	s.area("synthetic", "putting", "Putting green", blob(31, 31, 2.6))
	s.area("bare", "gravel", "Gravel", oblong(28, 25, 34, 28))
	s.area("rough", "meadow", "Meadow strip", oblong(30, 43, 36, 48))
	s.area("zone", "front", "Front", oblong(-1, -1, 37, 18), "exposure", "full", "species", "Kentucky bluegrass")
	s.area("zone", "side", "West side", oblong(-1, 18, 9, 33), "exposure", "part", "species", "tall fescue", "slope_percent", 12)
	s.area("keepout", "pond-edge", "Pond edge", blob(6.5, 37, 3.9))
	s.line("cutline", "cut", "", xy(20, 30, 20, 48))
	s.line("fence", "fence", "", xy(0, 20, 0, 48, 36, 48, 36, 20))
	s.line("wall", "wall", "", xy(21, 33, 21, 44))
	s.line("hedge", "hedge", "", xy(1, 1, 1, 13), "width_m", 1)
	s.point("tree", "oak", "Oak", 20, 8, "crown_m", 8)
	s.point("tree", "spruce", "", 33, 39, "crown_m", 5, "leaf", "evergreen")
	s.area("tree", "grove", "", oblong(2, 40, 12, 44))
	s.point("hazard", "valve", "Valve box", 12, 6)
	s.point("hazard", "head-1", "", 25, 10)
	s.point("hazard", "head-2", "", 25.4, 10)
	s.point("access", "gate", "Side gate, 4 ft", 0, 20)
	s.point("start", "start", "Start", 30, 2)
	s.point("refill", "refill", "", 30.5, 10)
	s.line("hardscape", "street", "Cider Street", xy(-60, -8, 90, -8), "width_m", 8)
	s.area("building", "next-door", "", oblong(44, 16, 58, 30))
	return s
}

// mill is a crowded property of 90 x 60 m in metric units: many objects, small
// zones, long names and names in several scripts.
func mill() *inventedSite {
	s := &inventedSite{place: orb.Point{9.5, 47.2}, header: map[string]any{
		"id": "mill", "name": "Alte Mühle — Сад und 庭園 with a name that goes on and on, well beyond any title", "units": "metric"}}
	s.area("outline", "lot", "", xy(0, 0, 90, 0, 90, 60, 30, 66, 0, 60), "sigma_m", 0.05)
	for i := range 40 {
		x, y := 6+8.6*float64(i%10), 8+12*float64(i/10)
		name := fmt.Sprintf("Bed of roses number %d", i+1)
		if i%3 == 0 {
			name = ""
		}
		s.area("bed", fmt.Sprintf("bed-%02d", i), name, blob(x, y, 1.5))
	}
	for i := range 6 {
		x := 5 + 14*float64(i)
		s.area("building", fmt.Sprintf("shed-%d", i), []string{"", "Kiln", "Store", "", "Müllerhaus", "庭"}[i], oblong(x, 50, x+6, 57))
	}
	for i := range 14 {
		x := 2 + 6.2*float64(i)
		s.area("zone", fmt.Sprintf("strip-%02d", i), fmt.Sprintf("Strip %d along the old mill race", i+1), oblong(x, 28, x+2.2, 31.5), "exposure", []string{"full", "part", "shade", "deep"}[i%4])
	}
	s.area("zone", "north", "North lawn", oblong(-1, 36, 91, 67), "slope_percent", 4)
	s.area("zone", "south", "South lawn", oblong(-1, -1, 91, 24), "apply", false)
	s.line("hardscape", "race", "Mill race path", xy(0, 34, 90, 34), "width_m", 1.5)
	for i := range 20 {
		s.point("tree", fmt.Sprintf("tree-%d", i), "", 4+4.3*float64(i), 62-2*float64(i%3), "crown_m", 3+float64(i%4))
	}
	for i := range 12 {
		s.point("hazard", fmt.Sprintf("head-%d", i), "", 10+6*float64(i), 20+0.3*float64(i))
	}
	return s
}

// strip is a long thin park of 180 x 14 m that runs from the south-west to the
// north-east, in metric units.
func strip() *inventedSite {
	s := &inventedSite{place: orb.Point{2.3, 48.9}, header: map[string]any{"id": "strip", "name": "Railway strip", "units": "metric", "revision": 1}}
	const bearing = 50 // degrees
	sin, cos := math.Sincos((90 - bearing) * math.Pi / 180)
	along := func(flat ...float64) []geo.XY {
		at := xy(flat...)
		for i, p := range at {
			at[i] = geo.XY{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos}
		}
		return at
	}
	s.area("outline", "lot", "", along(0, 0, 180, 0, 180, 14, 0, 14), "sigma_m", 0.1)
	s.line("hardscape", "path", "Cinder path", along(0, 4, 90, 6, 180, 4), "width_m", 2)
	s.area("building", "hut", "Platelayers' hut", along(84, 9, 92, 9, 92, 13, 84, 13))
	s.area("bed", "bed", "Rose bed", along(130, 8, 150, 8, 150, 11, 130, 11))
	for i := range 3 {
		x := 60 * float64(i)
		s.area("zone", fmt.Sprintf("part-%d", i), []string{"West end", "Middle", "East end"}[i], along(x, -1, x+60, -1, x+60, 15, x, 15), "exposure", []string{"full", "part", "full"}[i])
	}
	for i := range 6 {
		at := along(15+30*float64(i), 10)[0]
		s.point("tree", fmt.Sprintf("tree-%d", i), "", at.X, at.Y, "crown_m", 5)
	}
	s.line("fence", "fence", "", along(0, 14, 180, 14))
	gate, tap := along(0, 5)[0], along(93, 2)[0]
	s.point("access", "gate", "Gate", gate.X, gate.Y)
	s.point("refill", "tap", "", tap.X, tap.Y)
	s.line("hardscape", "street", "Station Road", along(-40, -7, 230, -7), "width_m", 7)
	return s
}

// paddock is traced turf without an outline.
func paddock() *inventedSite {
	s := &inventedSite{place: orb.Point{150.1, -34.2}, header: map[string]any{"id": "paddock", "name": "Lower paddock", "units": "metric", "revision": 1}}
	s.area("turf", "turf", "", xy(0, 0, 60, 4, 66, 30, 20, 34, 2, 22), "source", "walked")
	s.area("bed", "bed", "", blob(30, 15, 4))
	s.area("building", "shed", "Shed", oblong(50, 20, 70, 28))
	return s
}

// paced is a lawn with a bed in it, both walked round, with the fixes of two
// laps and of one.
func paced() *inventedSite {
	s := &inventedSite{place: orb.Point{-84.3, 39.9}, header: map[string]any{"id": "paced", "name": "Paced lawn", "units": "us", "revision": 1}}
	frame := geo.NewFrame(s.place)
	fixes := func(ring []geo.XY, laps int, off float64) []orb.Point {
		var all []orb.Point
		for lap := range laps {
			for i, a := range ring {
				b := ring[(i+1)%len(ring)]
				for k := range 8 {
					phase := float64(13*i + 5*k + 29*lap)
					all = append(all, frame.Place(geo.XY{
						X: a.X + (b.X-a.X)*float64(k)/8 + off*math.Sin(phase), Y: a.Y + (b.Y-a.Y)*float64(k)/8 + off*math.Cos(1.7*phase)}))
				}
			}
		}
		return all
	}
	lawn, bed := xy(0, 0, 18, -2, 34, 0, 35, 14, 22, 22, 2, 20), xy(9, 7, 16, 6, 17, 12, 10, 13)
	s.area("turf", "lawn", "South lawn", lawn, "source", "walked", "sigma_m", 0.4, "laps", 2, "fixes", fixes(lawn, 2, 0.5))
	s.area("bed", "bed", "Iris bed", bed, "source", "walked", "sigma_m", 0.5, "laps", 1, "fixes", fixes(bed, 1, 0.3))
	return s
}

// courtyard is turf round a house and in its narrow court, shaded in all
// degrees, with trees, a fence, a hedge and a neighbour that stands high.
func courtyard() *inventedSite {
	s := &inventedSite{place: orb.Point{12.4, 51.3}, header: map[string]any{"id": "courtyard", "name": "Courtyard house", "units": "metric", "revision": 2}}
	s.area("outline", "lot", "", oblong(0, 0, 44, 36), "sigma_m", 0.1)
	s.area("building", "house", "House", xy(12, 8, 32, 8, 32, 28, 27, 28, 27, 13, 17, 13, 17, 28, 12, 28), "height_m", 9)
	s.area("turf", "garden", "", xy(1, 1, 43, 1, 43, 35, 1, 35, 1, 20))
	s.area("hardscape", "drive", "Drive", oblong(32, -4, 37, 12))
	s.area("bed", "border", "Border", oblong(2, 31, 16, 34))
	s.point("tree", "beech", "Beech", 7, 8, "crown_m", 10, "height_m", 14)
	s.point("tree", "fir", "", 38, 29, "crown_m", 5, "leaf", "evergreen")
	s.line("fence", "fence", "", xy(0, 36, 44, 36, 44, 0), "height_m", 1.8)
	s.line("hedge", "hedge", "", xy(0.5, 12, 0.5, 30), "width_m", 1)
	s.area("building", "tower", "", oblong(45, 4, 58, 24), "building:levels", 5)
	s.line("hardscape", "street", "Tanner Street", xy(-40, -7, 90, -7), "width_m", 6)
	return s
}

// terrace is a lot of 44 x 34 m with names in Hebrew and Arabic, long ones too,
// and with figures, units and Latin letters in them.
func terrace() *inventedSite {
	s := &inventedSite{place: orb.Point{7.4, 43.9}, header: map[string]any{
		"id": "terrace", "name": "בית הגפן, מדרגה 12 — بيت الكرمة على المنحدر الجنوبي", "units": "metric", "revision": 2}}
	s.area("outline", "lot", "", oblong(0, 0, 44, 34), "sigma_m", 0.1)
	s.area("building", "house", "בית הגפן", oblong(14, 14, 28, 24))
	s.area("hardscape", "drive", "חניה 2.5 m", oblong(28, -3, 32, 18))
	s.area("bed", "roses", "ورود", blob(7, 8, 2.5))
	s.area("bed", "herbs", "ערוגת תבלינים לאורך הקיר הישן של החממה", oblong(2, 30, 20, 33))
	s.area("pool", "pool", "מַעְיָן", oblong(35, 26, 41, 31))
	s.area("zone", "front", "גינה 3 ליד השער", oblong(-1, -1, 45, 14), "exposure", "full", "species", "tall fescue")
	s.area("zone", "west", "الحديقة الخلفية", oblong(-1, 14, 14, 35), "exposure", "part", "slope_percent", 6)
	s.area("zone", "back", "North lawn / גינה 2", oblong(14, 24, 32, 35))
	s.area("zone", "strip", "أرض العشب الطويلة جدا بمحاذاة جدار البيت الزجاجي القديم، شرق المضخة 40 m", oblong(32, 14, 45, 35), "apply", false)
	s.point("tree", "olive", "شجرة 5 m", 9, 25, "crown_m", 6)
	s.point("hazard", "valve", "مضخة", 20, 6)
	s.point("access", "gate", "שער 1.2 m", 0, 4)
	s.point("start", "start", "", 30, 2)
	s.point("refill", "tap", "ברז (חם)", 13, 19)
	s.line("hardscape", "street", "רחוב הגפן / شارع الكرمة", xy(-40, -7, 90, -7), "width_m", 6)
	return s
}

var inventedSites = map[string]struct {
	site    func() *inventedSite
	options MapOptions
}{
	"courtyard":     {courtyard, MapOptions{}},
	"orchard-house": {orchardHouse, MapOptions{}},
	"mill":          {mill, MapOptions{}},
	"paced":         {paced, MapOptions{Fixes: true}},
	"paddock":       {paddock, MapOptions{Mono: true}},
	"strip":         {strip, MapOptions{}},
	"terrace":       {terrace, MapOptions{}},
}
