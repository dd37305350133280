package zones

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

const (
	lawRel = 1e-6
	lawAbs = 1e-4 // m2

	micrometre = 1e-6 // m: by so much decimals of degrees move an edge
)

// checkIdentities proves the sums that a survey promises.
func checkIdentities(t failer, m Measurement) {
	t.Helper()
	turf := m.Covers[Turf].AreaM2
	if m.Outline != nil {
		covers := m.Unknown.AreaM2
		for _, k := range CoverKinds {
			covers += m.Covers[k].AreaM2
		}
		near(t, "covers and unknown ground", covers, m.Outline.AreaM2, lawRel, lawAbs)
	}
	left := m.TracedTurf.AreaM2 - m.TracedTurf.OutsideOutlineM2
	for _, d := range m.Deductions {
		left -= d.AreaM2
	}
	near(t, "traced turf less what is outside and deductions", left, turf, 0, max(lawRel*m.TracedTurf.AreaM2, lawAbs))
	zones := 0.0
	for _, z := range m.Zones {
		zones += z.AreaM2
	}
	near(t, "zones", zones, turf, lawRel, lawAbs)
}

// checkDisjoint proves that no two covers, and no two zones, overlap, which
// they do not if together they cover as much as they add up to, and that all
// lies inside the outline.
func checkDisjoint(t failer, p *Plat) {
	t.Helper()
	area := func(r geo.Region) float64 { return float64(p.Site.Frame.Area(r)) }
	together := func(what string, parts []geo.Region) geo.Region {
		t.Helper()
		sum := 0.0
		for _, r := range parts {
			sum += area(r)
		}
		all, err := geo.Union(parts...)
		if err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		near(t, what+" together", area(all), sum, lawRel, lawAbs)
		return all
	}
	var zones []geo.Region
	for _, z := range p.Zones {
		zones = append(zones, z.Region)
	}
	together("zones", zones)
	covers := []geo.Region{p.Ground.Unknown}
	for _, c := range p.Ground.Covers {
		covers = append(covers, c.Region)
	}
	all := together("covers", covers)
	if p.Ground.Outline.Empty() {
		return
	}
	out, err := geo.Difference(all, p.Ground.Outline)
	if err != nil {
		t.Fatalf("covers outside the outline: %v", err)
	}
	near(t, "covers outside the outline", area(out), 0, 0, lawAbs)
}

// checkSameAreas compares the areas of two surveys of one property.
func checkSameAreas(t failer, got, want Measurement, rel float64) {
	t.Helper()
	same := func(what string, got, want float64) {
		t.Helper()
		near(t, what, got, want, rel, 1e-6)
	}
	if (got.Outline == nil) != (want.Outline == nil) {
		t.Fatalf("outline %v, want %v", got.Outline, want.Outline)
	}
	if want.Outline != nil {
		same("outline", got.Outline.AreaM2, want.Outline.AreaM2)
	}
	same("traced turf", got.TracedTurf.AreaM2, want.TracedTurf.AreaM2)
	same("traced turf outside", got.TracedTurf.OutsideOutlineM2, want.TracedTurf.OutsideOutlineM2)
	same("unknown", got.Unknown.AreaM2, want.Unknown.AreaM2)
	for _, k := range CoverKinds {
		same(string(k), got.Covers[k].AreaM2, want.Covers[k].AreaM2)
	}
	checkSameDeductions(t, got.Deductions, want.Deductions, rel)
}

// checkSameEdges compares lengths, errors and pieces, which hang on whether
// edges that all but coincide do so to the last digit. They do where both
// surveys read the same degrees.
func checkSameEdges(t failer, got, want Measurement) {
	t.Helper()
	same := func(what string, got, want float64) {
		t.Helper()
		near(t, what, got, want, 1e-9, 1e-6)
	}
	for _, k := range CoverKinds {
		g, w := got.Covers[k], want.Covers[k]
		same("perimeter of "+string(k), g.PerimeterM, w.PerimeterM)
		near(t, "sigma of "+string(k), g.SigmaM2, w.SigmaM2, 1e-5, 1e-6)
		if g.Pieces != w.Pieces {
			t.Errorf("%s: %d pieces, want %d", k, g.Pieces, w.Pieces)
		}
	}
	same("edge with hardscape", got.Edges.TurfHardscapeM, want.Edges.TurfHardscapeM)
	same("edge with beds", got.Edges.TurfBedM, want.Edges.TurfBedM)
	same("trim", got.Edges.TrimM, want.Edges.TrimM)
	for i, w := range want.Zones {
		same("perimeter of zone "+w.ID, got.Zones[i].PerimeterM, w.PerimeterM)
	}
}

func checkSameDeductions(t failer, got, want []Deduction, rel float64) {
	t.Helper()
	areas := make(map[string]float64)
	for _, d := range want {
		areas[d.Feature] += d.AreaM2
	}
	for _, d := range got {
		near(t, "deduction of "+d.Feature, d.AreaM2, areas[d.Feature], rel, 1e-6)
		delete(areas, d.Feature)
	}
	for feature, area := range areas {
		near(t, "deduction of "+feature, 0, area, 0, 1e-6)
	}
}

func checkSameZones(t failer, got, want []ZoneMeasure, rel float64) {
	t.Helper()
	checkZones(t, got, want, rel, func(w ZoneMeasure) float64 { return w.PerimeterM })
}

// checkZones compares zones; all of the edges of one may move by a micrometre,
// those too that do not count for its perimeter.
func checkZones(t failer, got, want []ZoneMeasure, rel float64, edges func(want ZoneMeasure) float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("zones\n%s\nwant\n%s", listed(got), listed(want))
	}
	for _, w := range want {
		i := slices.IndexFunc(got, func(z ZoneMeasure) bool { return z.ID == w.ID })
		if i < 0 {
			t.Fatalf("no zone %s among\n%s", w.ID, listed(got))
		}
		g := got[i]
		near(t, "zone "+w.ID, g.AreaM2, w.AreaM2, rel, micrometre*edges(w))
		if g.Name != w.Name || g.Apply != w.Apply || g.Exposure != w.Exposure || g.Species != w.Species {
			t.Errorf("zone %+v, want %+v", g, w)
		}
	}
}

// retraced returns a sketch with its objects in another order, and their rings
// started elsewhere and wound either way.
func (s sketch) retraced(t *rapid.T) sketch {
	other := sketch{}
	for _, it := range rapid.Permutation(s).Draw(t, "order") {
		it.lines = slices.Clone(it.lines)
		for i, l := range it.lines {
			l = slices.Clone(l)
			if it.geometry == "Polygon" {
				open := l[:len(l)-1]
				start := rapid.IntRange(0, len(open)-1).Draw(t, "start")
				l = slices.Concat(open[start:], open[:start], open[start:start+1])
			}
			if rapid.Bool().Draw(t, "the other way") {
				slices.Reverse(l)
			}
			it.lines[i] = l
		}
		other = append(other, it)
	}
	return other
}

func TestCoversAndZonesPartitionTheGroundAndReadBack(t *testing.T) {
	t.Parallel()
	check(t, 1000, func(t *rapid.T) {
		p := drawProperty(t).plat(t)
		m := p.Measurement()
		checkIdentities(t, m)
		checkDisjoint(t, p)
		checkReadsBack(t, p, m)
	})
}

func TestFiguresDependOnTheGroundAlone(t *testing.T) {
	t.Parallel()
	check(t, 1000, func(t *rapid.T) {
		coarse := rapid.Bool().Draw(t, "coarse")
		s := drawPropertyOn(t, coarse)
		home := platOf(t, s.file(home, ""))
		want := home.Measurement()

		retraced := s.retraced(t).measure(t)
		checkSameAreas(t, retraced, want, 1e-9)
		checkSameZones(t, retraced.Zones, want.Zones, 1e-9)
		checkSameEdges(t, retraced, want)

		longitude := rapid.Float64Range(-180, 180).Draw(t, "longitude")
		elsewhere := platOf(t, s.file(orb.Point{longitude, home.Site.Frame.Center().Lat()}, "")).Measurement()
		checkSameAreas(t, elsewhere, want, 1e-6)
		// How zones are divided hangs there on other last digits: whether
		// lawns that share a corner or a hairline are one, and which of two
		// bearings is the nearer.
		near(t, "zones elsewhere", zoneSum(elsewhere), zoneSum(want), 1e-6, 1e-6)
	})
}

func zoneSum(m Measurement) float64 {
	var sum float64
	for _, z := range m.Zones {
		sum += z.AreaM2
	}
	return sum
}

// checkReadsBack writes the zones of a plat and reads them again.
func checkReadsBack(t failer, p *Plat, want Measurement) {
	t.Helper()
	known := codes(p.Site.Problems)
	again := rewritten(t, p)
	got := again.Measurement().Zones
	checkZones(t, got, want.Zones, 1e-6, func(w ZoneMeasure) float64 {
		i := slices.IndexFunc(p.Zones, func(z Zone) bool { return z.ID == w.ID })
		return float64(p.Site.Frame.Perimeter(p.Zones[i].Region))
	})
	checkSamePerimeters(t, got, p)
	for _, problem := range again.Site.Problems {
		if !slices.Contains(known, problem.Code) {
			t.Errorf("told of the file that was written: %v", problem)
		}
	}
}

// checkSamePerimeters asks for the perimeters of a plat's zones, to what a written
// file rounds: the width of narrow ground by less than the mistake, and where
// edges meet at a grazing angle their ends by millimetres.
func checkSamePerimeters(t failer, got []ZoneMeasure, p *Plat) {
	t.Helper()
	const mistake, ends = 1e-5, 0.005
	for _, z := range p.Zones {
		border := func(width float64) float64 {
			return float64(p.Site.Frame.BorderLength(geo.NewBroadBorder(z.Region, width)))
		}
		least, most := border(touching+mistake)-ends, border(touching-mistake)+ends
		i := slices.IndexFunc(got, func(g ZoneMeasure) bool { return g.ID == z.ID })
		if length := got[i].PerimeterM; length < least || length > most {
			t.Errorf("perimeter of zone %s: %.9f, want %.9f to %.9f", z.ID, length, least, most)
		}
	}
}

// rewritten writes the site file of a plat and surveys it.
func rewritten(t failer, p *Plat) *Plat {
	t.Helper()
	var file bytes.Buffer
	if err := p.SiteFile().WriteGeoJSON(&file); err != nil {
		t.Fatalf("site file: %v", err)
	}
	return platOf(t, file.Bytes())
}

// In a rectangle on a grid all areas are whole numbers of squares.
func TestAreasAddUpOnAGrid(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		const side = 12
		var squares [side][side]Kind
		s := sketch{covering(Outline, "lot", rectangle(0, 0, side, side))}
		for i := range rapid.IntRange(0, 8).Draw(t, "objects") {
			k := rapid.SampledFrom(CoverKinds[:len(CoverKinds)-1]).Draw(t, "kind")
			west, south := rapid.IntRange(0, side-1).Draw(t, "west"), rapid.IntRange(0, side-1).Draw(t, "south")
			east, north := rapid.IntRange(west+1, side).Draw(t, "east"), rapid.IntRange(south+1, side).Draw(t, "north")
			s = append(s, covering(k, fmt.Sprint(i), rectangle(float64(west), float64(south), float64(east), float64(north))))
			for x := west; x < east; x++ {
				for y := south; y < north; y++ {
					if squares[x][y] == "" || k.rank() < squares[x][y].rank() {
						squares[x][y] = k
					}
				}
			}
		}
		count := make(map[Kind]float64)
		for _, column := range squares {
			for _, k := range column {
				if k == "" {
					k = Turf
				}
				count[k]++
			}
		}
		p := s.plat(t)
		m := p.Measurement()
		for _, k := range CoverKinds {
			snapping := float64(p.Site.Frame.Perimeter(p.Ground.Cover(k))) / (1 << 24) // all that a frame's positions can move an area by
			near(t, string(k), m.Covers[k].AreaM2, count[k], 0, 1e-9*count[k]+snapping)
		}
		if math.IsNaN(m.Covers[Turf].SigmaM2) {
			t.Errorf("sigma is not a number")
		}
	})
}

// Whatever is traced, a survey either refuses it or adds up.
func TestScrawlsAddUpOrAreRefused(t *testing.T) {
	t.Parallel()
	check(t, 500, func(t *rapid.T) {
		d := &drawing{T: t, coarse: rapid.Bool().Draw(t, "coarse")}
		for i := range rapid.IntRange(1, 8).Draw(t, "objects") {
			d.scrawl(i)
		}
		file := d.sketch.file(home, "")
		s := NewSite(collectionOf(t, file), Reading{Key: builtInKey, Repair: rapid.Bool().Draw(t, "repair")})
		p := Survey(s)
		if p == nil {
			if !s.Refused() || slices.Contains(codes(s.Problems), "overlay_failed") {
				t.Errorf("not refused for a reason: %s\n%s", told(s.Problems), file)
			}
			return
		}
		checkIdentities(t, p.Measurement())
		checkDisjoint(t, p)
	})
}
