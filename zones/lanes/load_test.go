package lanes

import (
	"bytes"
	"math"
	"os"
	"strings"
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/program"
)

const feedProgram = `program: feed
season: cool
steps:
  - id: feed
    does: spread
    use: fertilizer
    material: feed 25-0-10
    rate: 0.75 lb N / 1000 ft2
    passes: 2
    product: {grade: 25-0-10}
    where: {zone: %s}
`

// stepOn lays the program on a plat and returns its only step.
func stepOn(t *testing.T, p *zones.Plat, zone string) *program.StepPlan {
	t.Helper()
	prog, problems := program.Read(strings.NewReader(strings.ReplaceAll(feedProgram, "%s", zone)), "feed.yaml")
	if prog == nil {
		t.Fatal(problems)
	}
	m := p.Measurement()
	plan, err := prog.Plan(program.Property{ID: m.ID, Latitude: m.Center.Lat(), Units: zones.US, Zones: m.Zones}, program.Occasion{Year: 2026})
	if err != nil {
		t.Fatal(err)
	}
	return &plan.Steps[0]
}

// layStep lays lanes for a step on the zones it is on.
func layStep(t *testing.T, p *zones.Plat, s *program.StepPlan, w Work) (Plan, Coverage) {
	t.Helper()
	rate, known := s.Step.VisitRate()
	if !known {
		t.Fatal("the step has no rate")
	}
	w.Load = &Load{Step: s.Step.ID, Material: s.Step.Product.Name, Rate: rate}
	y := must[Yard](t)(YardOn(p, w.Practice, func(z zones.Zone) bool {
		for _, on := range s.Zones {
			if on.ID == z.ID && on.Apply {
				return true
			}
		}
		return false
	}))
	plan := must[Plan](t)(Lay(y, w))
	return plan, plan.Coverage(y)
}

// What lanes and hands put down is what the plan says: the rate times the
// ground of the step's zones, less the strips that fences stand on.
func TestLanesSpreadWhatThePlanSays(t *testing.T) {
	file, err := os.ReadFile("../../samples/alder-lane.geojson")
	if err != nil {
		t.Fatal(err)
	}
	var sample *zones.Plat
	for c := range ingest.GeoJSON(bytes.NewReader(file), "alder-lane", ingest.DefaultLimits) {
		sample = zones.Survey(zones.NewSite(c, zones.Reading{Key: zones.DefaultMapKey()}))
	}
	var s sketch
	s.polygon(`"kind":"turf"`, rectangle(-20, -12, 20, 12))
	s.polygon(`"kind":"zone","id":"west"`, rectangle(-20, -12, 0, 12))
	_, halves := s.yard(t)
	for _, tt := range []struct {
		name   string
		plat   *zones.Plat
		zone   string
		within float64
	}{
		{"sample", sample, "[front, back-north, back-south, maples, verge]", 0.015},
		{"front of the sample", sample, "front", 0.01},
		{"half a lawn", halves, "west", 1e-6},
	} {
		for _, mode := range []Mode{Single, Tight, Cross} {
			step := stepOn(t, tt.plat, tt.zone)
			w := singleWork(3)
			w.Mode = mode
			w.Filling = 150
			plan, c := layStep(t, tt.plat, step, w)
			var lanes, last float64
			last = plan.Work.Load.On(zones.US, w.Filling)
			for _, l := range plan.Lanes {
				if !l.Spreading {
					continue
				}
				amount, left := plan.Work.Load.On(zones.US, l.Ground), plan.Work.Load.On(zones.US, l.Left)
				lanes += amount
				if left > last+1e-9 && left > plan.Work.Load.On(zones.US, w.Filling)+1e-9 {
					t.Errorf("%s, %s: lane %d leaves %.3f lb in a hopper of %.3f", tt.name, mode, l.N, left, last)
				}
			}
			sum := plan.Summary(c).Product
			near(t, tt.name+": lanes and hands", lanes+sum.ByHand, sum.Total, 1e-9, 1e-9)
			want, err := step.Totals[0].Amount.In(plan.Work.Load.Unit(zones.US))
			if err != nil {
				t.Fatal(err)
			}
			if sum.Total > want*(1+1e-6) || sum.Total < want*(1-tt.within) {
				t.Errorf("%s, %s: %.4f lb, the plan says %.4f", tt.name, mode, sum.Total, want)
			}
			near(t, "rate times area", lanes, sum.Rate*c.Ground, 0.01, 0)
		}
	}
}

// Turf of zones that are not treated gets next to nothing, and the deflector
// is told of it.
func TestZonesNotTreatedGetNothing(t *testing.T) {
	var s sketch
	s.polygon(`"kind":"turf"`, rectangle(-20, -12, 20, 12))
	s.polygon(`"kind":"zone","id":"west"`, rectangle(-20, -12, 0, 12))
	_, p := s.yard(t)
	plan, c := layStep(t, p, stepOn(t, p, "west"), singleWork(2.5))
	near(t, "ground", c.Ground, 480, 1e-3, 0)
	if c.Outside > 0.001 || c.Covered < 0.99 {
		t.Errorf("%.4f lands outside the zone, %.4f of it is covered", c.Outside, c.Covered)
	}
	for _, l := range plan.Lanes {
		for _, q := range l.Line {
			if l.Spreading && q.X > 0 {
				t.Errorf("lane %d runs to %v, beyond the zone", l.N, q)
			}
		}
		if l.Spreading && l.Pass == Header && (len(l.Beside) != 2 || l.Beside[1] != zones.Turf) {
			t.Errorf("lane %d lies beside %q", l.N, l.Beside)
		}
	}
	if plan.Zones[0] == "" || len(plan.Zones) != 1 {
		t.Errorf("zones %q", plan.Zones)
	}
	if math.Abs(float64(geo.Area(c.Hand))) > 0.01 {
		t.Errorf("%g m2 are left to hands", c.Hand)
	}
}
