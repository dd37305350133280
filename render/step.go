package render

import (
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// stepSize is the size of the letters in the tables of sheets that a crew works
// with, in points.
const stepSize = 9.0

// A stepSheet is the subject of the sheet of one step: where it is done, how
// much goes down, what to watch for, and room to write what was done.
type stepSheet struct {
	*draft
	plan    *program.Plan
	step    *program.StepPlan
	number  int // of the step, from 1
	codes   bool
	amounts material.Figures
	done    map[string]program.ZonePlan // zones on which the step is done, by id; none if it may not be
	all     stepTotal                   // of those zones
	now     stepTotal                   // of those that no rule holds back
	lanes   *laneLayer                  // of the first pass; nil: none are drawn
	passes  []laneLayer                 // of all passes
	told    []toldBlock
}

// A toldBlock is a block of a sheet with what it is called where it stands on
// another sheet.
type toldBlock struct {
	block
	called string
	first  bool // it must stand beside the map
	paper  bool // it is for paper: a page for a phone has it elsewhere, or in another form
}

// stepSheets draws a step of a plan: a map with what goes where, if there is not
// room for all, sheets on which its tables go on, and a map of the lanes of each
// further pass.
func stepSheets(property *draft, plan *program.Plan, number int, o PacketOptions) ([]*Sheet, error) {
	walked, err := o.lanesOf(&plan.Steps[number-1])
	if err != nil {
		return nil, err
	}
	s, err := newStepSheet(property.again(), plan, number, o.Codes, walked)
	if err != nil {
		return nil, err
	}
	s.subject = s
	front, err := s.sheets()
	if err != nil {
		return nil, err
	}
	id, title := s.name()
	rest, err := s.textSheets(textPages{
		id: id + "-continued", title: title + ", continued", paper: s.laid.paper, blocks: s.later(s.laid.detail),
		block: s.titleBlock(s.laid.paper, 0), method: s.method(), inWords: s.inWords(),
	})
	if err != nil {
		return nil, err
	}
	further, err := s.passSheets(property)
	return slices.Concat(front, rest, further), err
}

func newStepSheet(d *draft, plan *program.Plan, number int, codes bool, walked []StepLanes) (stepSheet, error) {
	s := stepSheet{
		draft: d, plan: plan, step: &plan.Steps[number-1], number: number, codes: codes,
		amounts: material.Figures{Units: d.options.Units}, done: make(map[string]program.ZonePlan),
	}
	for _, z := range s.step.Zones {
		if !z.Closed() && !s.withheld() {
			s.done[z.ID] = z
		}
	}
	var err error
	if s.all, err = s.sumUp(func(program.ZonePlan) bool { return true }); err != nil {
		return stepSheet{}, err
	}
	if s.now, err = s.sumUp(func(z program.ZonePlan) bool { return !z.HeldBack() }); err != nil {
		return stepSheet{}, err
	}
	for _, w := range walked {
		d.show(append(shells(d.site), placesIn(w.Plan)...))
		s.passes = append(s.passes, newLaneLayer(d, w.Plan, w.Summary))
	}
	if len(s.passes) > 0 {
		s.lanes = &s.passes[0]
	}
	s.told = s.tell()
	return s, nil
}

func (s stepSheet) name() (id, title string) {
	return "step-" + s.step.Step.ID, fmt.Sprintf("Step %d, %s", s.number, s.letters.of(s.step.Step.Name()))
}

// titleBlock names the step, and the site above it.
func (s stepSheet) titleBlock(paper Paper, scale Scale) titleBlock {
	window := s.step.Window()
	if window == "" {
		window = "in its order"
	}
	var b titleBlock
	b.title = fmt.Sprintf("%s, step %d of %d", shortened(s.letters.of(s.measured.Name), Medium, factSize, twoLines), s.number, len(s.plan.Steps))
	b.name = s.letters.of(s.step.Step.Name())
	b.facts = [][2]string{
		{"Window", window},
		{"Plan as of", asOf(s.plan)},
		{"Scale", scaleWords(scale)},
		{"Site", s.letters.of(s.measured.ID)},
		{"Job", capitalized(string(s.step.Step.Does))},
		{"Revision", fmt.Sprint(s.measured.Revision)},
	}
	return b
}

// inWords tells people who cannot see the map what is done where.
func (s stepSheet) inWords() string {
	words := fmt.Sprintf("Step %d of %d on %s, %s: %s. ", s.number, len(s.plan.Steps), s.letters.of(s.measured.Name),
		s.letters.of(s.step.Step.Name()), s.standing().head())
	if len(s.done) == 0 {
		return words + "No zone is worked."
	}
	var each []string
	for _, z := range s.measured.Zones {
		if done, there := s.done[z.ID]; there {
			each = append(each, strings.TrimSpace(fmt.Sprintf("%s %s %s %s", z.Letter, s.letters.of(z.Name), s.areaText(z), s.amountText(done))))
		}
	}
	return words + "Zones: " + strings.Join(each, "; ") + "."
}

func (s stepSheet) areaText(z zones.ZoneMeasure) string {
	return s.figures.Area(z.AreaM2, z.CI95M2) + " " + s.figures.areaUnit()
}

func (s stepSheet) method() string {
	made := fmt.Sprintf("Program %s, season %d. Input SHA-256 %.12s, revision %d.", s.letters.of(s.plan.Program.Name), s.plan.Year, s.measured.InputSHA256, s.measured.Revision)
	if s.withheld() {
		return "The step may not be done, so this sheet tells no amounts. " + made
	}
	text := "Amounts are the rate times the area of each zone, for one visit" + s.step.Step.InPasses() + ", without what is carried beyond need; they are rounded to what can be weighed and measured. "
	if s.step.Step.Labelled() {
		text = "Amounts are the rate times the area of each zone, for one visit" + s.step.Step.InPasses() + ", rounded down; nothing goes down beyond the label. "
	}
	return text + "Areas: on the WGS 84 ellipsoid, slopes not added, rounded to what their traced edges bear. " + made
}

func (s stepSheet) objectRows() int { return 0 }

// levels keep all beside the map, then less and less of it, but always what
// must stand there.
func (s stepSheet) levels() []detail {
	var levels []detail
	for later := 0; later < len(s.told); later++ {
		levels = append(levels, detail{later: later})
		if s.told[len(s.told)-1-later].first {
			break
		}
	}
	return levels
}

// blocks are those beside the map.
func (s stepSheet) blocks(level detail) []block {
	var blocks []block
	for _, b := range s.told[:len(s.told)-level.later] {
		blocks = append(blocks, b.block)
	}
	if level.later > 0 {
		blocks = append(blocks, nextSheet(s.calledLater(level)))
	}
	return blocks
}

// nextSheet tells what stands on the sheet that follows.
func nextSheet(called string) paragraph {
	return paragraph{text: "Next sheet: " + called + ".", face: Bold, size: stepSize, ink: black}
}

func (s stepSheet) calledLater(level detail) string {
	var called []string
	for _, b := range s.told[len(s.told)-level.later:] {
		called = append(called, b.called)
	}
	return strings.Join(called, ", ")
}

// later are the blocks that go on to the next sheet.
func (s stepSheet) later(level detail) []block {
	var blocks []block
	for _, b := range s.told[len(s.told)-level.later:] {
		blocks = append(blocks, b.block)
	}
	return blocks
}

// hopperFirst reports whether the fillings of the hopper are few enough to stand
// beside the map.
func (s stepSheet) hopperFirst() bool {
	return s.lanes == nil || len(s.lanes.plan.Fills) <= mostFillings
}

// tell sets up the blocks in the order in which they are read.
func (s stepSheet) tell() []toldBlock {
	all := s.tellWork()
	if s.withheld() {
		all = s.tellWhyNot()
	}
	return slices.DeleteFunc(all, func(b toldBlock) bool { return b.block == nil })
}

// tellWork is what a crew needs to do the step.
func (s stepSheet) tellWork() []toldBlock {
	return []toldBlock{
		{block: s.standing(), first: true},
		{block: s.quantityTable(), called: "quantities", first: true},
		{block: s.reasonTable(), called: "what holds it back"},
		{block: s.howTable(), called: "how", first: true},
		{block: s.tankTable(), called: "tanks", first: true},
		{block: s.hopperTable(), called: "hopper", first: s.hopperFirst()},
		{block: s.hazardList(), called: "hazards"},
		{block: s.walkTable(), called: "walking"},
		{block: s.cautionTable(), called: "cautions"},
		{block: s.tickList(), called: "boxes to tick"},
		{block: s.legend(), called: "key", paper: true},
		{block: s.accessTable(), called: "access", paper: true},
		{block: s.noteTable(), called: "notes on the step"},
		{block: s.laneTable(), called: "lanes", paper: true},
		{block: s.record(), called: "weather and sign-off", paper: true},
	}
}

// tellWhyNot is what a crew reads of a step that may not be done.
func (s stepSheet) tellWhyNot() []toldBlock {
	return []toldBlock{
		{block: s.standing(), first: true},
		{block: s.withheldTable(), called: "why it may not be done", first: true},
		{block: s.reasonTable(), called: "what holds it back"},
		{block: s.hazardList(), called: "hazards"},
		{block: s.legend(), called: "key", paper: true},
		{block: s.accessTable(), called: "access", paper: true},
		{block: s.noteTable(), called: "notes on the step"},
	}
}
