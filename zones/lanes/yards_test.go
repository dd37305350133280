package lanes

import (
	"bytes"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// A sketch is an invented property, its features in metres.
type sketch []string

func (s *sketch) polygon(props string, ring geo.Ring) {
	*s = append(*s, fmt.Sprintf(`{"type":"Feature","properties":{%s},"geometry":{"type":"Polygon","coordinates":[[%s]]}}`, props, positions(closed(ring))))
}

func (s *sketch) point(props string, x, y float64) {
	*s = append(*s, fmt.Sprintf(`{"type":"Feature","properties":{%s},"geometry":{"type":"Point","coordinates":%s}}`, props, positions(geo.Line{{X: x, Y: y}})))
}

func (s *sketch) line(props string, l geo.Line) {
	*s = append(*s, fmt.Sprintf(`{"type":"Feature","properties":{%s},"geometry":{"type":"LineString","coordinates":[%s]}}`, props, positions(l)))
}

func positions(l geo.Line) string {
	frame := geo.NewFrame(orb.Point{-93.1, 44.95})
	var texts []string
	for _, p := range l {
		at := frame.Place(p)
		texts = append(texts, fmt.Sprintf("[%.12f,%.12f]", at.Lon(), at.Lat()))
	}
	return strings.Join(texts, ",")
}

// yard surveys the sketch.
func (s sketch) yard(t failer) (Yard, *zones.Plat) {
	t.Helper()
	file := `{"type":"FeatureCollection","features":[` + strings.Join(s, ",\n") + `]}`
	for c := range ingest.GeoJSON(bytes.NewReader([]byte(file)), "yard.geojson", ingest.DefaultLimits) {
		site := zones.NewSite(c, zones.Reading{Key: zones.DefaultMapKey()})
		plat := zones.Survey(site)
		if plat == nil {
			t.Fatalf("refused: %v", site.Problems)
		}
		return must[Yard](t)(YardOf(plat, CommonPractice())), plat
	}
	t.Fatalf("no site")
	return Yard{}, nil
}

func TestKindsOfYards(t *testing.T) {
	lawn := rectangle(-20, -12, 20, 12)
	for _, tt := range []struct {
		name   string
		draw   func(*sketch)
		hand   float64 // m2
		covers float64
		laps   int // header lanes that close
	}{
		{"plain", func(s *sketch) { s.polygon(`"kind":"turf"`, lawn) }, 0, 0.999, 1},
		{"island bed", func(s *sketch) {
			s.polygon(`"kind":"turf"`, lawn)
			s.polygon(`"kind":"bed"`, regular(12, 3, 2, 2.5))
		}, 0, 0.995, 2},
		{"U", func(s *sketch) {
			s.polygon(`"kind":"turf"`, geo.Ring{{X: 0, Y: 0}, {X: 25, Y: 0}, {X: 25, Y: 20}, {X: 17, Y: 20}, {X: 17, Y: 8}, {X: 8, Y: 8}, {X: 8, Y: 20}, {X: 0, Y: 20}})
		}, 0, 0.995, 1},
		{"strip of 1.2 m", func(s *sketch) { s.polygon(`"kind":"turf"`, rectangle(0, 0, 30, 1.2)) }, 36, 0, 0},
		{"strip of 2 m", func(s *sketch) { s.polygon(`"kind":"turf"`, rectangle(0, 0, 30, 2)) }, 0, 0.97, 0},
		{"patch of 2 by 1.6 m", func(s *sketch) { s.polygon(`"kind":"turf"`, rectangle(0, 0, 2, 1.6)) }, 3.2, 0, 0},
		{"three lawns", func(s *sketch) {
			for i := range 3 {
				s.polygon(fmt.Sprintf(`"kind":"turf","id":"lawn %d"`, i), rectangle(20*float64(i), 0, 20*float64(i)+15, 12))
			}
		}, 0, 0.995, 3},
		{"tree in the middle", func(s *sketch) {
			s.polygon(`"kind":"turf"`, lawn)
			s.point(`"kind":"tree","crown_m":6`, 0.4, 0.3)
		}, 0, 0.995, 1},
		{"pond", func(s *sketch) {
			s.polygon(`"kind":"turf"`, lawn)
			s.polygon(`"kind":"water"`, regular(20, -4, 1, 5))
		}, 0, 0.995, 2},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var s sketch
			tt.draw(&s)
			y, _ := s.yard(t)
			for _, mode := range []Mode{Single, Tight, Cross} {
				w := singleWork(2.5)
				w.Mode = mode
				p := must[Plan](t)(Lay(y, w))
				c := p.Coverage(y)
				near(t, "ground left to hands", c.Hand, tt.hand, 0.01, 0.1) // corners are rounded
				if c.Covered < tt.covers && c.Ground > 0 || c.Outside > 0.01 || c.Where[zones.Water] != 0 {
					t.Errorf("%s: covered %.4f, outside %.4f, on water %v", mode, c.Covered, c.Outside, c.Where[zones.Water])
				}
				laps := 0
				for _, l := range p.Lanes {
					if l.Pass == Header && l.Spreading && l.Line[0] == l.Line[len(l.Line)-1] {
						laps++
						if l.Deflector != Right && l.Deflector != Both {
							t.Errorf("%s: lap %d has its deflector %q", mode, l.N, l.Deflector)
						}
					}
				}
				if laps != tt.laps*mode.Rounds() {
					t.Errorf("%s: %d laps, want %d", mode, laps, tt.laps*mode.Rounds())
				}
				if len(p.Cut) > 0 {
					t.Errorf("%s: no way to lanes %v", mode, p.Cut)
				}
			}
		})
	}
}

// A lap tells what the deflector keeps the product off: here a drive along one
// side of the lawn, the bed in it, and what is not known.
func TestDeflectorTellsWhatLiesBeside(t *testing.T) {
	var s sketch
	s.polygon(`"kind":"turf"`, rectangle(-20, -12, 20, 12))
	s.polygon(`"kind":"hardscape"`, rectangle(20, -12, 24, 12))
	s.polygon(`"kind":"bed"`, regular(12, 3, 2, 2.5))
	y, _ := s.yard(t)
	far := zones.Cover{Kind: zones.Turf, Region: geo.Disc(geo.XY{X: 100}, 1)}
	y.Covers = append(slices.Repeat([]zones.Cover{far}, 300), y.Covers...) // however many there are
	p := must[Plan](t)(Lay(y, singleWork(2.5)))
	var told [][]zones.Kind
	for _, l := range p.Lanes {
		if l.Spreading && l.Pass == Header {
			told = append(told, l.Beside)
		} else if l.Beside != nil {
			t.Errorf("lane %d tells %v", l.N, l.Beside)
		}
	}
	want := [][]zones.Kind{{"", zones.Hardscape}, {zones.Bed}}
	if !reflect.DeepEqual(told, want) && !reflect.DeepEqual(told, [][]zones.Kind{want[1], want[0]}) {
		t.Errorf("told %q, want %q", told, want)
	}
}

// A slope of 10 % that faces south-east is walked to the south-west and back;
// one of 5 % as is best.
func TestSlopes(t *testing.T) {
	for _, tt := range []struct {
		percent int
		want    float64 // heading, degrees from east
	}{{10, 45}, {5, 0}} {
		var s sketch
		s.polygon(`"kind":"turf"`, rectangle(0, 0, 40, 20))
		s.polygon(fmt.Sprintf(`"kind":"zone","name":"bank","slope_percent":%d,"aspect_deg":135`, tt.percent), rectangle(0, 0, 40, 20))
		y, _ := s.yard(t)
		p := must[Plan](t)(Lay(y, singleWork(2.5)))
		rows := 0
		for _, l := range p.Lanes {
			if l.Pass == Fill && l.Spreading {
				way := l.Line[1].Minus(l.Line[0])
				near(t, "heading", apart(math.Atan2(way.Y, way.X), tt.want*math.Pi/180), 0, 0, 1e-3)
				rows++
			}
		}
		if rows < 6 {
			t.Errorf("%d rows", rows)
		}
	}
}

// A zone steeper than 20 degrees gets no lanes and is left to be done by hand,
// also if there is no other; of slopes is told once what they do to the lanes.
func TestSteepGroundIsDoneByHand(t *testing.T) {
	for _, tt := range []struct {
		name, bank string
		hand       float64 // m2
		code       string  // of what is told; "" = nothing
	}{
		{"part", `"slope_percent":37,"aspect_deg":135`, 300, "slope_by_hand"},
		{"just below", `"slope_percent":36,"aspect_deg":135`, 0, "slope_laps"},
		{"rideable", `"slope_percent":26,"aspect_deg":135`, 0, ""},
		{"faces nobody knows where", `"slope_percent":9`, 0, "slope_facing_unknown"},
		{"nearly level", `"slope_percent":8`, 0, ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var s sketch
			s.polygon(`"kind":"turf"`, rectangle(0, 0, 40, 20))
			s.polygon(`"kind":"zone","name":"bank",`+tt.bank, rectangle(25, 0, 40, 20))
			y, plat := s.yard(t)
			practice := CommonPractice()
			told := len(plat.Site.Problems)
			y.TellSteep(plat.Site, practice)
			y.TellSteep(plat.Site, practice)
			switch news := plat.Site.Problems[told:]; {
			case tt.code == "" && len(news) > 0, tt.code != "" && (len(news) != 1 || news[0].Code != tt.code):
				t.Errorf("told %v", news)
			}
			p := must[Plan](t)(Lay(y, singleWork(2.5)))
			near(t, "by hand", p.Coverage(y).Hand, tt.hand, 0, 0.01)
			for _, l := range p.Lanes {
				if l.Spreading && l.Zone == "zone/bank" && tt.hand > 0 {
					t.Errorf("lane %d is on the bank", l.N)
				}
			}
		})
	}
	var s sketch
	s.polygon(`"kind":"turf"`, rectangle(0, 0, 15, 20))
	s.polygon(`"kind":"zone","name":"bank","slope_percent":60`, rectangle(0, 0, 15, 20))
	y, _ := s.yard(t)
	p := must[Plan](t)(Lay(y, singleWork(2.5)))
	if len(p.Lanes) > 0 {
		t.Errorf("%d lanes", len(p.Lanes))
	}
	near(t, "by hand", p.Coverage(y).Hand, 300, 0, 0.01)
}

// The walk starts at the start, ends at the gate, keeps off the bed and passes
// the fence at the gate only; the hopper is filled before it runs out.
func TestWalk(t *testing.T) {
	var s sketch
	s.polygon(`"kind":"outline"`, rectangle(-30, -15, 30, 15))
	s.polygon(`"kind":"turf","id":"left"`, rectangle(-29, -14, -2, 14))
	s.polygon(`"kind":"turf","id":"right"`, rectangle(2, -14, 29, 14))
	s.polygon(`"kind":"bed"`, rectangle(-12, -5, -6, 3))
	s.polygon(`"kind":"zone","name":"no dogs","apply":false`, rectangle(20, 5, 29, 14))
	s.line(`"kind":"fence"`, geo.Line{{X: 0, Y: -15}, {X: 0, Y: 15}})
	s.point(`"kind":"access"`, 0, 9)
	s.point(`"kind":"start"`, -1, -14.5)
	s.point(`"kind":"refill"`, -1, 0)
	y, _ := s.yard(t)
	w := singleWork(3)
	w.Filling = 400
	p := must[Plan](t)(Lay(y, w))
	if first := p.Lanes[0].Line[0]; first.Distance(y.Start[0]) > 1e-6 {
		t.Errorf("starts at %v, not at %v", first, y.Start[0])
	}
	last := p.Lanes[len(p.Lanes)-1].Line
	if end := last[len(last)-1]; end.Distance(y.End[0]) > 1e-6 {
		t.Errorf("ends at %v, not at %v", end, y.End[0])
	}
	checkWalk(t, p)
	refills, left := 0, p.Fills[0].Ground
	for _, l := range p.Lanes {
		for i := 1; i < len(l.Line); i++ {
			a, b := l.Line[i-1], l.Line[i]
			if _, at, ok := sightOf(a, b, geo.XY{Y: -15}, geo.XY{Y: 15}); ok && (a.X < -1e-6) != (b.X < -1e-6) && a.X != 0 && b.X != 0 && math.Abs(30*at-15-9) > 0.61 {
				t.Errorf("the way to lane %d passes the fence at %.2f", l.N, 30*at-15)
			}
		}
		if l.Refill {
			refills++
			left = p.Fills[refills].Full
			continue
		}
		if left -= l.Ground; left < -1e-6 {
			t.Errorf("the hopper runs out on lane %d", l.N)
		}
		if l.Spreading {
			near(t, "what is left", l.Left, left, 1e-9, 1e-9)
			if y.Covers[0].Kind != zones.Keepout || y.Covers[0].Region.Contains(halfway(l.Line)) {
				t.Errorf("lane %d runs where nothing is applied", l.N)
			}
		}
	}
	if refills == 0 || refills != p.Refills() {
		t.Errorf("%d refills on the way, %d counted", refills, p.Refills())
	}
	minutes := (p.SpreadLength()+p.TravelLength())/80.4672 + float64(p.Turns)*0.1 + float64(p.Refills())*4 // 264 ft/min
	near(t, "minutes", p.Duration().Minutes(), minutes, 1e-9, 0)
}

// checkWalk asks that each lane starts where the one before ends.
func checkWalk(t failer, p Plan) {
	t.Helper()
	for i := 1; i < len(p.Lanes); i++ {
		before := p.Lanes[i-1].Line
		if gap := before[len(before)-1].Distance(p.Lanes[i].Line[0]); gap > 1e-9 {
			t.Errorf("lane %d starts %v m from where the one before it ends", p.Lanes[i].N, gap)
		}
	}
}
