package render

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/turfplat/geo"
	"example.org/turfplat/samples"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// A packetCase is a packet that every layout must get right.
type packetCase struct {
	name   string
	plat   *zones.Plat
	m      zones.Measurement
	plan   *program.Plan
	sheets []*Sheet
}

func planned(t testing.TB, p *zones.Plat, m zones.Measurement, season *program.Program, day time.Time) *program.Plan {
	t.Helper()
	plan, err := season.Plan(program.Property{
		ID: m.ID, Name: m.Name, Latitude: m.Center.Lat(), Units: p.Site.Units, Region: p.Site.Region(), Zones: m.Zones,
	}, program.Occasion{Today: day, Year: 2026})
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

// alderLane is the sample with its season.
func alderLane(t testing.TB) (*zones.Plat, zones.Measurement, *program.Program) {
	t.Helper()
	p, m := surveyed(t, string(samples.AlderLane), samples.AlderLaneName)
	season, problems := program.Read(strings.NewReader(string(samples.AlderLaneSeason)), samples.AlderLaneSeasonName)
	if season == nil {
		t.Fatal(problems)
	}
	return p, m, season
}

// awkward is a program of long words, many cautions and every kind of figure.
const awkward = `program: awkward
steps:
  - id: feed
    title: A feed with a name that is much longer than any title block has room for, in Wörds and wörds and words
    does: spread
    use: fertilizer
    material: a feed whose name goes on and on, as suppliers' names do, 25-0-10 with iron
    rate: 0.4 lb N / 1000 ft2
    passes: 2
    product: {grade: 25-0-10, slow: 40 %, pack: [40 lb, 10 lb]}
    when: {window: 05-01..05-31}
    water_in: {depth: 0.25 in, within: 24 h}
    stay_off: for as long as it takes to dry, and then another hour for good measure, says the owner of the two dogs
    cautions: [CAUTIONS]
    notes: [NOTES]
  - id: spray
    does: spray
    use: wetting_agent
    material: wetting agent
    rate: 3 fl oz / 1000 ft2
    passes: 2
    carrier: 1.5 gal / 1000 ft2
    tank: 4 gal
    only_if: the ground sheds water at the edges of the drive, where the wind comes through
    when: {window: 05-01..06-30}
  - {id: weeds, does: spray, use: broadleaf, material: herbicide, carrier: 1 gal / 1000 ft2, tank: 4 gal, keep_dry: 24 h, when: {window: 05-15..06-14}}
  - {id: mow, does: mow, every: 7 d, when: {window: 04-01..10-31}}
  - {id: seed, does: seed, material: seed, rate: 2 lb PLS / 1000 ft2, product: {purity: 95 %, germination: 85 %}, when: {window: 08-15..09-20}}
  - {id: scout, does: scout}
`

func awkwardProgram(t testing.TB) *program.Program {
	t.Helper()
	long := func(n int) string {
		var list []string
		for i := range n {
			list = append(list, fmt.Sprintf("%q", fmt.Sprintf("number %d: %s", i+1, strings.Repeat("mind the many words of this one ", 3+8*(i%2)))))
		}
		return strings.Join(list, ", ")
	}
	text := strings.NewReplacer("CAUTIONS", long(9), "NOTES", long(12)).Replace(awkward)
	p, problems := program.Read(strings.NewReader(text), "awkward.yaml")
	if p == nil {
		t.Fatal(problems)
	}
	return p
}

// packetCases are packets of the sample and of all sites, invented and real, on
// several papers.
func packetCases(t *testing.T) []packetCase {
	t.Helper()
	if drawnPackets != nil {
		return drawnPackets
	}
	var spread func(*program.StepPlan) ([]StepLanes, error)
	may := time.Date(2026, 5, 18, 0, 0, 0, 0, time.UTC)
	add := func(name string, p *zones.Plat, m zones.Measurement, season *program.Program, o MapOptions) {
		plan := planned(t, p, m, season, may)
		sheets, err := Packet(p, m, plan, PacketOptions{MapOptions: o, Lanes: spread})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		drawnPackets = append(drawnPackets, packetCase{name, p, m, plan, sheets})
	}
	p, m, season := alderLane(t)
	for _, o := range []MapOptions{{}, {Paper: A4, Units: zones.Metric}, {Paper: Tabloid, Mono: true}, {Paper: A3}} {
		add(fmt.Sprintf("alder-lane %s %s", o.Paper.Name, o.Units), p, m, season, o)
		add(fmt.Sprintf("alder-lane awkward %s %s", o.Paper.Name, o.Units), p, m, awkwardProgram(t), o)
	}
	spread = alongLanes(t, p)
	add("alder-lane lanes", p, m, season, MapOptions{})
	add("alder-lane lanes a3", p, m, season, MapOptions{Paper: A3, Units: zones.Metric})
	spread = walkedFor(t, p, spreadWork(t, 3.048, lanes.Single))
	add("alder-lane passes", p, m, inTwoPasses(season), MapOptions{})
	spread = nil
	for _, name := range inventedNames() {
		p, m := surveyed(t, inventedSites[name].site().geoJSON(t), name)
		add(name, p, m, awkwardProgram(t), inventedSites[name].options)
	}
	for _, path := range realSites(t) {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		p, m := surveyed(t, string(text), path)
		add(filepath.Base(path), p, m, awkwardProgram(t), MapOptions{})
	}
	return drawnPackets
}

var drawnPackets []packetCase

// alongLanes lays lanes of 10 ft over all of a site, for every step.
func alongLanes(t *testing.T, p *zones.Plat) func(*program.StepPlan) ([]StepLanes, error) {
	t.Helper()
	walked := walkedIn(t, p, lanes.Work{Practice: lanes.CommonPractice(), Pattern: lanes.Triangle(10 * geo.FootM), Mode: lanes.Tight})
	return func(*program.StepPlan) ([]StepLanes, error) { return walked, nil }
}

// Every lane of a step is drawn, and stands in its table; other jobs have none.
func TestStepsHaveTheirLanes(t *testing.T) {
	p, m, season := alderLane(t)
	spread := alongLanes(t, p)
	sheets, err := Packet(p, m, planned(t, p, m, season, time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC)), PacketOptions{Lanes: spread, Steps: []string{"spring-feed", "mow"}})
	if err != nil {
		t.Fatal(err)
	}
	walked, _ := spread(nil)
	feed := sheetsOf(sheets, "spring-feed")
	for _, lane := range walked[0].Plan.Lanes {
		if lane.Spreading && group(feed[0].Elements, fmt.Sprintf("lane-%d", lane.N)) == nil {
			t.Errorf("lane %d is not drawn", lane.N)
		}
	}
	numbers := 0
	for _, s := range feed {
		for _, text := range textsOf(group(s.Elements, "tables")) {
			if text.String == "Lane" {
				numbers++
			}
		}
	}
	if numbers == 0 {
		t.Error("there is no table of lanes")
	}
	if mow := sheetsOf(sheets, "mow"); group(mow[0].Elements, "lanes") != nil {
		t.Error("mowing has spread lanes")
	}
}

func TestPacketTextsKeepApart(t *testing.T) {
	for _, c := range packetCases(t) {
		for _, sheet := range c.sheets[1:] {
			texts := textsOf(sheet.Elements)
			paper := rect{max: Point{sheet.Width, sheet.Height}}.inset(sheetMargin - 0.5)
			for i, a := range texts {
				if !lettersPlate(a).within(paper) {
					t.Errorf("%s %s: %q reaches into the margin", c.name, sheet.ID, a.String)
				}
				for _, b := range texts[:i] {
					if lettersPlate(a).meets(lettersPlate(b)) {
						t.Errorf("%s %s: %q lies on %q", c.name, sheet.ID, a.String, b.String)
					}
				}
			}
		}
	}
}

// Figures of amounts are never cut: a crew would have to guess them.
func TestPacketCutsNoFigures(t *testing.T) {
	cut := regexp.MustCompile(`^[0-9][0-9.,]*…$`)
	for _, c := range packetCases(t) {
		for _, sheet := range c.sheets[1:] {
			for _, text := range textsOf(sheet.Elements) {
				if cut.MatchString(text.String) {
					t.Errorf("%s %s: a figure is cut: %q", c.name, sheet.ID, text.String)
				}
			}
		}
	}
}

// What a crew reads on a step's sheet is set in 9 points at least, letters of
// zones in 14; boxes to tick are 6 mm wide.
func TestStepSheetsAreReadInGloves(t *testing.T) {
	const leastText, leastLetter, leastBox = 9.0, 14.0, 6.0
	for _, c := range packetCases(t) {
		ticks := 0
		for _, sheet := range append(sheetsNamed(c.sheets, "step"), sheetsNamed(c.sheets, "season")...) {
			for _, text := range textsOf(group(sheet.Elements, "tables")) {
				if sign := text.Ink == white && len(text.String) == 1; text.Size < leastText && !sign {
					t.Errorf("%s %s: %q is set in %g points", c.name, sheet.ID, text.String, text.Size)
				}
			}
			letters := make(map[string]bool)
			for _, z := range c.m.Zones {
				letters[z.Letter] = true
			}
			for _, text := range textsOf(group(sheet.Elements, "labels")) {
				if letters[text.String] && text.Face == Bold && text.Size < leastLetter {
					t.Errorf("%s %s: letter %s is set in %g points", c.name, sheet.ID, text.String, text.Size)
				}
			}
			for _, box := range boxesToTick(sheet) {
				ticks++
				if b := box.bounds(); b.width() < leastBox || b.height() < leastBox {
					t.Errorf("%s %s: a box to tick is %.1f x %.1f mm", c.name, sheet.ID, b.width(), b.height())
				}
			}
		}
		wanted := 0
		for i := range c.plan.Steps {
			if s := &c.plan.Steps[i]; !s.Status.KeepsOff() {
				wanted += len(s.Step.Ticks())
			}
		}
		if ticks != wanted {
			t.Errorf("%s: %d boxes to tick, want %d", c.name, ticks, wanted)
		}
	}
}

// boxesToTick are the squares in groups named after what is ticked.
func boxesToTick(sheet *Sheet) (boxes []polygon) {
	known := make(map[string]bool)
	for _, job := range []program.Job{program.Rake, program.Core, program.Topdress, program.Spray, program.Spread, program.Water, program.Mow, program.Seed, program.Scout} {
		for _, use := range []program.Use{"", program.Broadleaf, program.Fertilizer} {
			s := program.Step{Does: job, Use: use, WaterIn: &program.WaterIn{}, StayOff: "x"}
			for _, text := range s.Ticks() {
				known[text] = true
			}
		}
	}
	for _, block := range blocksTitled(sheet.Elements, "") {
		for _, e := range block.Elements {
			if g, ok := e.(Group); ok && known[g.Title] {
				boxes = append(boxes, polygon{g.Elements[0].(Path).Lines[0].Points})
			}
		}
	}
	return boxes
}

// wordsOf joins all that sheets say, line ends as spaces.
func wordsOf(sheets []*Sheet) string {
	var words []string
	for _, s := range sheets {
		for _, text := range textsOf(s.Elements) {
			words = append(words, text.String)
		}
	}
	return strings.Join(words, " ")
}

// sheetsOf are those of one step.
func sheetsOf(sheets []*Sheet, step string) (all []*Sheet) {
	for _, s := range sheets {
		if s.ID == "step-"+step || strings.HasPrefix(s.ID, "step-"+step+"-continued") {
			all = append(all, s)
		}
	}
	return all
}

// Nothing that a step asks of a crew is left out, however long it is.
func TestPacketLeavesNothingOut(t *testing.T) {
	for _, c := range packetCases(t) {
		for i := range c.plan.Steps {
			s := &c.plan.Steps[i]
			sheets := sheetsOf(c.sheets, s.Step.ID)
			if s.Status == program.Skipped {
				if len(sheets) > 0 {
					t.Errorf("%s: step %s is left out, but has a sheet", c.name, s.Step.ID)
				}
				continue
			}
			if len(sheets) == 0 {
				t.Errorf("%s: step %s has no sheet", c.name, s.Step.ID)
				continue
			}
			said := strings.Join(strings.Fields(wordsOf(sheets)), " ")
			wanted := append([]string{"Hazards"}, s.Step.Notes...)
			if s.Status == program.Blocked {
				wanted = append(append(wanted, "Do not do it"), s.LiftedBy()...)
			} else {
				wanted = append(append(wanted, "Signature", "Time in", "Gates closed"), s.Step.Minding()...)
			}
			if s.Step.WaterIn != nil && s.Status != program.Blocked {
				wanted = append(wanted, "Water in", "Watering note left")
			}
			for _, words := range wanted {
				words = strings.Join(strings.Fields(capitalized((&lettering{}).of(words))), " ")
				if !strings.Contains(said, words) {
					t.Errorf("%s: step %s does not say %q", c.name, s.Step.ID, words)
				}
			}
		}
		season := wordsOf(sheetsNamed(c.sheets, "season"))
		for _, s := range c.plan.Steps {
			if name := s.Step.Name(); !strings.Contains(season, shortened(name, Medium, stepSize, stripName-2*cellMargin)) {
				t.Errorf("%s: the season does not name %q", c.name, name)
			}
		}
	}
}

func sheetsNamed(sheets []*Sheet, id string) (all []*Sheet) {
	for _, s := range sheets {
		if s.ID == id || strings.HasPrefix(s.ID, id+"-") {
			all = append(all, s)
		}
	}
	return all
}

// The table of a step has the areas of the measure and the amounts of the plan,
// and its total is that of both.
func TestQuantitiesAreThoseOfMeasureAndPlan(t *testing.T) {
	for _, c := range packetCases(t) {
		d, err := newDraft(c.plat, c.m, MapOptions{})
		if err != nil {
			t.Fatal(err)
		}
		for i := range c.plan.Steps {
			s := stepSheetOf(t, d.again(), c.plan, i+1, nil)
			table := s.quantityTable().(table)
			var area, drawn float64
			row := 0
			for _, z := range c.m.Zones {
				done, there := s.done[z.ID]
				if !there {
					continue
				}
				cells := table.rows[row]
				row++
				if cells[0] != z.Letter || cells[2] != d.figures.Area(z.AreaM2, z.CI95M2) {
					t.Errorf("%s, step %d: row %q is not zone %s of %s", c.name, i+1, cells, z.Letter, d.figures.Area(z.AreaM2, z.CI95M2))
				}
				area += z.AreaM2
				if done.Draw != nil {
					drawn += done.Draw.Amount.Size
					amountsOfPasses(t, s, table, cells, s.step.OfVisit(done.Draw.Amount), fmt.Sprintf("%s, step %d, zone %s", c.name, i+1, z.Letter))
					if want := cells[3] + s.aPass(); s.amountText(done) != want {
						t.Errorf("%s, step %d: the map has %s on zone %s, want %s", c.name, i+1, s.amountText(done), z.Letter, want)
					}
				}
			}
			if row != len(table.rows) {
				t.Errorf("%s, step %d: %d rows for %d zones", c.name, i+1, len(table.rows), row)
			}
			if len(table.totals) == 0 {
				continue
			}
			ground := s.plat.Measure(worked(t, s))
			if math.Abs(ground.AreaM2-area) > 1e-6*area {
				t.Errorf("%s, step %d: zones sum up to %g m2, their ground measures %g", c.name, i+1, area, ground.AreaM2)
			}
			if got, want := table.totals[0][2], d.figures.Area(ground.AreaM2, ground.CI95M2); got != want {
				t.Errorf("%s, step %d: total %s, want %s", c.name, i+1, got, want)
			}
			if totals := c.plan.Steps[i].Totals; len(totals) > 0 {
				if whole := totals[0].Amount.Size; math.Abs(whole-drawn) > 1e-9*whole {
					t.Errorf("%s, step %d: draws sum up to %g, the plan to %g", c.name, i+1, drawn, whole)
				}
				amountsOfPasses(t, s, table, table.totals[0], s.visitTotal(), fmt.Sprintf("%s, step %d, total", c.name, i+1))
			}
		}
	}
}

// amountsOfPasses holds a row of the table of quantities against what a visit
// takes: a part of it in each pass and, where there are several, all of it.
func amountsOfPasses(t *testing.T, s stepSheet, table table, cells []string, ofVisit material.Amount, where string) {
	t.Helper()
	want := map[string]material.Amount{"Amount": ofVisit}
	if n := s.step.Step.Passes; n > 1 {
		want = map[string]material.Amount{"A pass": ofVisit.Times(1 / float64(n))}
		if !s.hasMix() {
			want[fmt.Sprintf("%d passes", n)] = ofVisit
		}
	}
	for i, column := range table.columns {
		amount, there := want[column.head]
		if delete(want, column.head); there && cells[i] != s.measuredText(amount) {
			t.Errorf("%s: %s %s, want %s", where, column.head, cells[i], s.measuredText(amount))
		}
	}
	if len(want) > 0 {
		t.Errorf("%s: no column for %v", where, want)
	}
}

// worked is the ground of a step.
func worked(t *testing.T, s stepSheet) geo.Region {
	t.Helper()
	var regions []geo.Region
	for _, z := range s.plat.Zones {
		if _, there := s.done[z.ID]; there {
			regions = append(regions, z.Region)
		}
	}
	whole, err := geo.Union(regions...)
	if err != nil {
		t.Fatal(err)
	}
	return whole
}

// packetPictures are sheets of the sample's packet that somebody has looked at.
func packetPictures(t *testing.T) map[string]*Sheet {
	t.Helper()
	p, m, season := alderLane(t)
	draw := func(day time.Time, step string, o MapOptions) []*Sheet {
		sheets, err := Packet(p, m, planned(t, p, m, season, day), PacketOptions{MapOptions: o, Steps: []string{step}})
		if err != nil {
			t.Fatal(err)
		}
		return sheets
	}
	feed := draw(time.Date(2026, 5, 18, 0, 0, 0, 0, time.UTC), "spring-feed", MapOptions{})
	weeds := draw(time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC), "weeds", MapOptions{Mono: true, Units: zones.Metric})
	twice, err := Packet(p, m, planned(t, p, m, inTwoPasses(season), time.Date(2026, 5, 18, 0, 0, 0, 0, time.UTC)),
		PacketOptions{Steps: []string{"spring-feed"}, Lanes: walkedFor(t, p, spreadWork(t, 6*geo.FootM, lanes.Single))})
	if err != nil {
		t.Fatal(err)
	}
	return map[string]*Sheet{
		"packet-pass-2": sheetOf(t, twice, "step-spring-feed-pass-2"),
		"packet-feed":   feed[1], "packet-feed-back": feed[2], "packet-season": feed[len(feed)-1],
		"packet-weeds-mono": weeds[1],
	}
}

func TestPacketIDs(t *testing.T) {
	for _, c := range packetCases(t) {
		known := make(map[string]bool)
		for _, s := range c.sheets {
			if known[s.ID] {
				t.Errorf("%s: two sheets are %s", c.name, s.ID)
			}
			known[s.ID] = true
			if s.Subject == "" || s.Title == "" {
				t.Errorf("%s: sheet %s is not told in words", c.name, s.ID)
			}
		}
		if c.sheets[0].ID != "site-map" || !strings.HasPrefix(c.sheets[len(c.sheets)-1].ID, "season") {
			t.Errorf("%s: the packet goes from %s to %s", c.name, c.sheets[0].ID, c.sheets[len(c.sheets)-1].ID)
		}
	}
}

func TestStepThatIsNotThere(t *testing.T) {
	p, m, season := alderLane(t)
	_, err := Packet(p, m, planned(t, p, m, season, time.Time{}), PacketOptions{Steps: []string{"mow", "mwo"}})
	if want := `program alder-lane-season has no step "mwo": it has core, compost, `; err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("%v, want %s", err, want)
	}
}

// A packet is small enough to send and quick to draw.
func TestPacketIsSmall(t *testing.T) {
	const most = 300_000 // bytes
	p, m, season := alderLane(t)
	sheets, err := Packet(p, m, planned(t, p, m, season, time.Date(2026, 4, 20, 0, 0, 0, 0, time.UTC)), PacketOptions{})
	if err != nil {
		t.Fatal(err)
	}
	file, err := PDF(Bound(sheets...)...)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d bytes on %d sheets", len(file), len(sheets))
	if len(file) > most {
		t.Errorf("the packet of the sample is %d bytes on %d pages, more than %d", len(file), len(sheets), most)
	}
}

func BenchmarkPacket(b *testing.B) {
	p, m, season := alderLane(b)
	plan := planned(b, p, m, season, time.Date(2026, 4, 20, 0, 0, 0, 0, time.UTC))
	for b.Loop() {
		sheets, err := Packet(p, m, plan, PacketOptions{})
		if err != nil {
			b.Fatal(err)
		}
		file, err := PDF(Bound(sheets...)...)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(file)), "bytes/file")
	}
}
