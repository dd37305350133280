package render

import (
	"math"
	"testing"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
)

// spreadWork is a spreader of a triangular pattern.
func spreadWork(t testing.TB, swath float64, mode lanes.Mode) lanes.Work {
	t.Helper()
	p, err := lanes.Shaped("triangle", swath)
	if err != nil {
		t.Fatal(err)
	}
	return lanes.Work{Pattern: p, Mode: mode, Shield: lanes.Right, Practice: lanes.CommonPractice()}
}

// laneDrawing lays lanes over a site and drafts the sheet of them.
func laneDrawing(t testing.TB, w lanes.Work) drawing {
	return func(p *zones.Plat, m zones.Measurement, o MapOptions) (*draft, error) {
		t.Helper()
		walked := walkedOn(t, p, w)
		return laneDraft(p, m, walked.Plan, walked.Summary, o)
	}
}

// A laneSite is an invented site with what is spread on it.
type laneSite struct {
	site    func() *inventedSite
	swath   float64 // m
	mode    lanes.Mode
	filling float64 // m2
	options MapOptions
}

func (s laneSite) draw(t *testing.T, name string, paper Paper) mapCase {
	t.Helper()
	p, m := surveyed(t, s.site().geoJSON(t), name)
	w := spreadWork(t, s.swath, s.mode)
	w.Filling = s.filling
	o := s.options
	o.Paper = paper
	return mapCaseOf(t, name, laneDrawing(t, w), p, m, o)
}

// laneSites are yards of the kinds that lanes have trouble with.
var laneSites = map[string]laneSite{
	"lanes-orchard-house": {site: orchardHouse, swath: 3.048, mode: lanes.Tight, filling: 300},
	"lanes-island":        {site: islandBed, swath: 2.5, mode: lanes.Single},
	"lanes-u":             {site: uShape, swath: 3, mode: lanes.Cross, options: MapOptions{Mono: true}},
	"lanes-three":         {site: threeLawns, swath: 2, mode: lanes.Single, filling: 150},
	"lanes-strip":         {site: narrowStrips, swath: 2.5, mode: lanes.Single},
	"lanes-mill":          {site: mill, swath: 2.5, mode: lanes.Tight},
}

func lawnSite(id, name string) *inventedSite {
	return &inventedSite{place: orb.Point{-93.1, 44.95}, header: map[string]any{"id": id, "name": name, "units": "us", "revision": 1}}
}

// islandBed is a lawn with a bed and a pond in it, a tree in the middle, and a
// drive along one side.
func islandBed() *inventedSite {
	s := lawnSite("island", "Lawn with an island bed")
	s.area("outline", "lot", "", oblong(0, 0, 44, 30))
	s.area("hardscape", "drive", "Drive", oblong(40, 0, 44, 30))
	s.area("turf", "lawn", "", oblong(0, 0, 44, 30))
	s.area("bed", "island", "Island bed", blob(12, 19, 3))
	s.area("water", "pond", "Pond", blob(29, 9, 2.5), "setback_m", 3)
	s.point("tree", "oak", "Oak", 22.4, 16.2, "crown_m", 7)
	s.point("start", "start", "", 39, 1)
	s.point("refill", "refill", "", 42, 14)
	return s
}

func uShape() *inventedSite {
	s := lawnSite("u", "Lawn round a house")
	s.area("outline", "lot", "", oblong(0, 0, 34, 30))
	s.area("building", "house", "House", oblong(11, 11, 24, 30))
	s.area("turf", "lawn", "", oblong(0, 0, 34, 30))
	s.area("zone", "west", "West", oblong(0, 0, 11, 30))
	s.point("access", "gate", "Gate", 17, 0)
	return s
}

// threeLawns are apart from each other by a walk and a drive, one of them a
// triangle.
func threeLawns() *inventedSite {
	s := lawnSite("three", "Three lawns")
	s.area("outline", "lot", "", oblong(-2, -2, 52, 26))
	for i, ring := range [][]geo.XY{oblong(0, 0, 15, 12), xy(19, 0, 34, 0, 34, 20), oblong(38, 0, 50, 24)} {
		s.area("turf", []string{"a", "b", "c"}[i], "", ring)
		s.area("zone", "zone-"+[]string{"a", "b", "c"}[i], []string{"West", "Corner", "East"}[i], ring)
	}
	s.area("hardscape", "walk", "Walk", oblong(15, 0, 19, 26))
	s.area("hardscape", "drive", "Drive", oblong(34, 0, 38, 26))
	s.point("access", "gate", "", 17, -1)
	return s
}

// narrowStrips are a lawn with strips of 1.2 m and 2 m along a house.
func narrowStrips() *inventedSite {
	s := lawnSite("strips", "Strips along a house")
	s.area("building", "house", "House", oblong(0, 0, 30, 10))
	s.area("turf", "thin", "", oblong(0, -1.2, 30, 0))
	s.area("turf", "narrow", "", oblong(0, 10, 30, 12))
	s.area("turf", "lawn", "", xy(34, -4, 50, -4, 50, 10*math.Sqrt2, 34, 12))
	return s
}
