package render

import (
	"fmt"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// headColumn is the first column of tables of words, in millimetres.
const headColumn = 21.0

// quantityTable says what goes on each zone, and how much is left after it.
func (s stepSheet) quantityTable() Block {
	t := Table{Size: stepSize, Columns: append([]Column{
		{Head: "Zone", Width: letterColumn}, {Wrap: true}, {Head: s.figures.areaUnit(), Anchor: End},
	}, s.quantityColumns()...)}
	left := s.visitLoad()
	for _, z := range s.measured.Zones {
		done, there := s.done[z.ID]
		if !there {
			continue
		}
		if done.Draw != nil && !done.HeldBack() {
			left.Size -= s.step.OfVisit(done.Draw.Amount).Size
		}
		words := s.zoneWords(z)
		if done.HeldBack() {
			words += ": " + notYet
		}
		t.Rows = append(t.Rows, append([]string{z.Letter, words, s.figures.Area(z.AreaM2, z.CI95M2)}, s.quantityCells(done, left)...))
	}
	if len(s.done) > 1 {
		t.Totals = [][]string{s.totalRow("All", func(program.ZonePlan) bool { return true })}
	}
	if s.heldLetters() != "" {
		t.Totals = append(t.Totals, s.totalRow("Now", func(z program.ZonePlan) bool { return !z.HeldBack() }))
	}
	return t
}

// visitLoad is what one visit takes to the zones that no rule holds back.
func (s stepSheet) visitLoad() material.Amount {
	load := s.visitTotal()
	for _, g := range s.measured.Zones {
		if z := s.done[g.ID]; z.Draw != nil && z.HeldBack() {
			load.Size -= s.step.OfVisit(z.Draw.Amount).Size
		}
	}
	return load
}

// quantityColumns are those beyond zone and area: what goes down and what is
// left, or how high is cut.
func (s stepSheet) quantityColumns() []Column {
	step := s.step.Step
	switch {
	case step.Does == program.Mow:
		return []Column{{Head: "Cut to", Anchor: End}, {Head: "When at", Anchor: End}}
	case len(s.step.Totals) > 0:
		columns := []Column{{Head: s.amountHead(), Anchor: End}}
		if s.hasMix() {
			columns = append(columns, Column{Head: s.mixHead(), Anchor: End})
		}
		if s.tellsAllPasses() {
			columns = append(columns, Column{Head: fmt.Sprintf("%d passes", step.Passes), Anchor: End})
		}
		if s.tellsLeft() {
			columns = append(columns, Column{Head: "Left", Anchor: End})
		}
		return columns
	case step.ByLabel() && s.hasMix():
		return []Column{{Head: s.amountHead(), Anchor: End}, {Head: s.mixHead(), Anchor: End}}
	case step.ByLabel():
		return []Column{{Head: s.amountHead(), Anchor: End}}
	}
	return nil
}

// amountHead heads what goes on a zone each time it is gone over.
func (s stepSheet) amountHead() string {
	if s.step.Step.Passes > 1 {
		return "A pass"
	}
	return "Amount"
}

func (s stepSheet) mixHead() string {
	if s.step.Step.Passes > 1 {
		return "Mix a pass"
	}
	return "Mix"
}

// quantityCells are those of a zone; left is what remains of the visit's amount
// after it.
func (s stepSheet) quantityCells(z program.ZonePlan, left material.Amount) []string {
	step := s.step.Step
	switch {
	case step.Does == program.Mow:
		height, at, ok := step.CutAt(z.Ground)
		if !ok {
			return []string{"usual", ""}
		}
		return []string{s.amounts.Height(height), s.amounts.Height(at)}
	case z.Draw == nil && step.ByLabel() && s.hasMix():
		return []string{step.PassByLabel(), s.mixText(z.AreaM2)}
	case z.Draw == nil && step.ByLabel():
		return []string{step.PassByLabel()}
	case z.Draw == nil:
		return nil
	}
	cells := s.amountCells(s.step.OfVisit(z.Draw.Amount), z.AreaM2)
	if s.tellsLeft() {
		cells = append(cells, s.leftText(left))
	}
	return cells
}

// amountCells are what goes on ground, in square metres: in one pass first, with
// its mix, or then in all of them.
func (s stepSheet) amountCells(ofVisit material.Amount, groundM2 float64) []string {
	passes := s.step.Step.Passes
	cells := []string{s.measuredText(ofVisit.Times(1 / float64(passes)))}
	if s.hasMix() {
		cells = append(cells, s.mixText(groundM2))
	}
	if s.tellsAllPasses() {
		cells = append(cells, s.measuredText(ofVisit))
	}
	return cells
}

// tellsAllPasses reports whether the amounts of all passes are told zone by zone;
// of a mix those of one are, with its water.
func (s stepSheet) tellsAllPasses() bool { return s.step.Step.Passes > 1 && !s.hasMix() }

// tellsLeft reports whether what is left is told zone by zone. It is not where
// lanes run through several zones, tanks are mixed, or the ground is gone over
// more than once.
func (s stepSheet) tellsLeft() bool {
	return len(s.done) > 1 && s.lanes == nil && !s.hasMix() && s.step.Step.Passes == 1
}

// leftText writes what is left; what rounding leaves of nothing is nothing.
func (s stepSheet) leftText(left material.Amount) string {
	if left.Size <= 1e-9*s.visitTotal().Size {
		return "0"
	}
	return s.amounts.Amount(left).String()
}

// notYet stands on zones that a rule holds back.
const notYet = "not yet"

// totalRow sums up the zones that count.
func (s stepSheet) totalRow(head string, counts func(program.ZonePlan) bool) []string {
	var worked []geo.Region
	var ground float64
	total := material.Amount{By: s.visitTotal().By}
	for i, z := range s.measured.Zones {
		done, there := s.done[z.ID]
		if !there || !counts(done) {
			continue
		}
		worked = append(worked, s.plat.Zones[i].Region)
		ground += z.AreaM2
		if done.Draw != nil {
			total.Size += s.step.OfVisit(done.Draw.Amount).Size
		}
	}
	whole, err := measureAll(s.plat, worked)
	if err != nil { // regions that tile the turf can be joined
		panic("render: " + err.Error())
	}
	return append([]string{"", head, s.figures.Area(whole.AreaM2, whole.CI95M2)}, s.totalCells(total, ground)...)
}

func (s stepSheet) totalCells(total material.Amount, groundM2 float64) []string {
	switch {
	case len(s.step.Totals) == 0 && s.step.Step.ByLabel() && s.hasMix():
		return []string{"", s.mixText(groundM2)}
	case len(s.step.Totals) == 0:
		return nil
	}
	return s.amountCells(total, groundM2)
}

func (s stepSheet) hasMix() bool { return s.step.Step.Carrier.PerM2 > 0 }

func (s stepSheet) mixText(m2 float64) string {
	return s.amounts.Mix(material.Volume(s.step.Step.Carrier.Over(geo.Area(m2)).Size)).String()
}

// visitTotal is what one visit takes; nothing of what goes by label.
func (s stepSheet) visitTotal() material.Amount {
	if len(s.step.Totals) == 0 {
		return material.Amount{}
	}
	return s.step.OfVisit(s.step.Totals[0].Amount)
}

func (s stepSheet) measuredText(a material.Amount) string {
	return s.step.Step.Measured(s.amounts, a).String()
}

// amountText is what one pass puts on a zone; "" of nothing, or by label.
func (s stepSheet) amountText(z program.ZonePlan) string {
	if z.Draw == nil {
		return ""
	}
	return s.measuredText(s.step.OfPass(z.Draw.Amount)) + s.aPass()
}

// aPass tells figures of one of several passes from those of a visit.
func (s stepSheet) aPass() string {
	if s.step.Step.Passes > 1 {
		return " a pass"
	}
	return ""
}

// zoneWords names a zone with what makes work on it different.
func (s stepSheet) zoneWords(z zones.ZoneMeasure) string {
	words := shortened(s.letters.of(z.Name), Regular, stepSize, twoLines)
	if z.SlopePercent > 0 {
		words += fmt.Sprintf(", slope %.0f\u00a0%%", z.SlopePercent)
	}
	return words
}

// leftAlone lists the letters of the zones on which the step is not done.
func (s stepSheet) leftAlone() string {
	var letters []string
	for _, z := range s.measured.Zones {
		if _, there := s.done[z.ID]; !there {
			letters = append(letters, z.Letter)
		}
	}
	return strings.Join(letters, ", ")
}

// reasonTable tells what speaks against the step, or for some zones of it.
func (s stepSheet) reasonTable() Block {
	t := Table{Size: stepSize, Columns: []Column{{Head: "Before you start", Wrap: true}}}
	if s.withheld() {
		t.Columns[0].Head = "What speaks against it"
	}
	for _, v := range s.step.Reasons {
		if v.Severity == program.Note {
			continue
		}
		text := s.letters.of(v.WithZones(s.step))
		if !v.Until.IsZero() {
			text += ", until " + program.ShortDay(v.Until)
		}
		if v.Severity == program.Block {
			text = "BLOCKED: " + text
		}
		t.Rows = append(t.Rows, []string{capitalized(text)})
	}
	return orNone(t)
}

// withheldTable tells of a step that may not be done for which zones it was
// meant, and what would lift what speaks against it.
func (s stepSheet) withheldTable() Block {
	t := Table{Size: stepSize, Columns: []Column{{Head: "Do not do it", Width: headColumn}, {Wrap: true}}}
	var letters []string
	for _, z := range s.step.Zones {
		letters = append(letters, z.Letter)
	}
	if len(letters) > 0 {
		t.Rows = append(t.Rows, []string{"Meant for", strings.Join(letters, ", ")})
	}
	t.Rows = append(t.Rows, []string{"Left off", "rate, amounts, setting, fillings, boxes to tick"})
	for i, way := range s.step.LiftedBy() {
		head := ""
		if i == 0 {
			head = "Lifted by"
		}
		t.Rows = append(t.Rows, []string{head, capitalized(s.letters.of(way))})
	}
	return t
}

// orNone is a table, or nothing if it has no rows.
func orNone(t Table) Block {
	if len(t.Rows) == 0 {
		return nil
	}
	return t
}

// howTable says what goes down at which rate, and what is done after it.
func (s stepSheet) howTable() Block {
	step := s.step.Step
	t := Table{Size: stepSize, Columns: []Column{{Head: "How", Width: headColumn}, {Wrap: true}}}
	add := func(head, format string, v ...any) {
		t.Rows = append(t.Rows, []string{head, fmt.Sprintf(format, v...)})
	}
	if rest := s.leftAlone(); rest != "" {
		add("Leave alone", "%s", rest)
	}
	if step.Product.Name != "" {
		add("Material", "%s%s", s.letters.of(step.Product.Name), s.amountInPasses())
	}
	if rate, ok := step.VisitRate(); ok {
		add("Rate", "%s", s.rateText(rate))
	} else if step.ByLabel() {
		add("Rate", "only the label's%s: __________________", step.InPasses())
	}
	t.Rows = append(t.Rows, s.settingRows()...)
	if step.Passes > 1 {
		add("Passes", "%s", s.passesText())
	}
	if s.hasMix() {
		add("Mix", "%s%s at %s", s.amounts.Mix(s.step.Mix()), s.aPass(), s.amounts.MixRate(step.Carrier))
	}
	if n := s.step.Visits(); n > 1 {
		add("Visits", "%d in the season%s; figures are for one", n, s.step.ThereofDone())
	}
	if w := step.WaterIn; w != nil {
		add("Water in", "%s within %s", s.amounts.Height(w.Depth), program.Lasting(w.Within))
	}
	if step.KeepDry > 0 {
		add("Keep dry", "for %s", program.Lasting(step.KeepDry))
	}
	if step.StayOff != "" {
		add("Stay off", "%s", s.letters.of(step.StayOff))
	}
	if step.Does == program.Mow && step.Bagged {
		add("Clippings", "taken off")
	}
	return orNone(t)
}

// amountInPasses is what all passes of a visit take together on the zones that no
// rule holds back; "" if there is one pass.
func (s stepSheet) amountInPasses() string {
	if s.step.Step.Passes < 2 || len(s.step.Totals) == 0 {
		return ""
	}
	return ", " + s.measuredText(s.visitLoad()) + s.step.Step.InPasses()
}

// rateText writes the rate of a visit, that of a pass first.
func (s stepSheet) rateText(ofVisit material.Rate) string {
	n := s.step.Step.Passes
	if n == 1 {
		return s.amounts.Rate(ofVisit).String()
	}
	return fmt.Sprintf("%s a pass, %s in %d passes", s.amounts.Rate(ofVisit.Times(1/float64(n))), s.amounts.Rate(ofVisit), n)
}

// passesText says how a zone is gone over several times.
func (s stepSheet) passesText() string {
	text := fmt.Sprintf("%d, each over the whole of a zone, the next one across", s.step.Step.Passes)
	switch {
	case s.lanes != nil:
		text = fmt.Sprintf("%d: walk all lanes once for each; lanes, fillings and what is left are of one pass", s.step.Step.Passes)
	case s.step.Step.Tank > 0 && s.hasMix():
		text += "; tanks are of one pass, mix them anew for the next"
	}
	return text
}

// settingRows are the settings of the user's own spreaders, and what a strip of
// known ground must take to prove one.
func (s stepSheet) settingRows() [][]string {
	step := s.step.Step
	if step.Does != program.Spread && step.Does != program.Seed || step.Rate == nil {
		return nil
	}
	rate, err := step.Product.Rate(*step.Rate)
	if err != nil { // the program was read with it
		panic("render: " + err.Error())
	}
	var rows [][]string
	for _, setting := range s.plan.Program.Settings(step, s.settingShare()) {
		text := fmt.Sprintf("%.1f on %s, by own calibration%s", setting.Number, s.letters.of(setting.Spreader), s.passText(rate))
		if setting.Err != nil {
			text = fmt.Sprintf("none on %s: %v", s.letters.of(setting.Spreader), setting.Err)
		}
		rows = append(rows, []string{"Setting", text})
	}
	if len(rows) == 0 {
		rows = [][]string{{"Setting", "______ by own calibration" + s.passText(rate)}}
	}
	once := "a pass"
	if s.lanes != nil {
		once = "walked once" // two lanes may make a pass
	}
	strip := geo.Area(500 * geo.FootM * geo.FootM)
	if s.figures.Metric() {
		strip = 50
	}
	return append(rows, []string{"Test strip", fmt.Sprintf("%s %s take %s %s", s.figures.Area(float64(strip), 0), s.figures.areaUnit(), s.amounts.Amount(rate.Times(s.settingShare()).Over(strip)), once)})
}

// passText is the rate for which a spreader is set where that is not all of it.
func (s stepSheet) passText(rate material.Rate) string {
	share := s.settingShare()
	if share == 1 {
		return ""
	}
	return fmt.Sprintf(", for %s walked once", s.amounts.Rate(rate.Times(share)))
}

// hopperTable says how often the hopper is filled and with how much: as it is
// walked where lanes are drawn, else that of the user's own spreader for all
// zones together that no rule holds back.
func (s stepSheet) hopperTable() Block {
	if s.lanes != nil {
		return s.laneFillings()
	}
	rate, ok := s.step.Step.PassRate()
	if !ok || s.step.Step.Does != program.Spread {
		return nil
	}
	total := s.visitLoad().Times(1 / float64(s.step.Step.Passes))
	for _, setting := range s.plan.Program.Settings(s.step.Step, s.settingShare()) {
		hopper := setting.Hopper
		if hopper.Size <= 0 || hopper.By != total.By {
			continue
		}
		t := Table{Size: stepSize, Columns: []Column{{Head: "Hopper" + s.aPass() + ", " + s.letters.of(setting.Spreader)}, {Head: "Fill with", Anchor: End}, {Head: s.figures.areaUnit(), Anchor: End}}}
		add := func(head string, a material.Amount) {
			t.Rows = append(t.Rows, []string{head, s.measuredText(a), s.reachText(a.Size / rate.PerM2)})
		}
		full := int(total.Size/hopper.Size + 1e-9)
		if full > 0 {
			add(fmt.Sprintf("%d full", full), hopper)
		}
		if last := total.Size - float64(full)*hopper.Size; last > 1e-9*total.Size {
			add(lastTank(full), material.Amount{By: total.By, Size: last})
		}
		return t
	}
	return nil
}

// reachText is the ground that a fill is for, which no spreader or sprayer keeps
// to better than a twentieth.
func (s stepSheet) reachText(m2 float64) string {
	return s.figures.Area(m2, m2*float64(material.StripTolerance.Share()))
}

// tankTable says how tanks are mixed: how many, and the last one apart.
func (s stepSheet) tankTable() Block {
	if s.step.Step.Tank == 0 || !s.hasMix() {
		return nil
	}
	f, known := s.step.Fills()
	if !known {
		return s.mixTable()
	}
	t := Table{Size: stepSize, Columns: []Column{
		{Head: "Tanks" + s.aPass()}, {Head: "Fill to", Anchor: End}, {Head: "Product", Anchor: End}, {Head: s.figures.areaUnit(), Anchor: End},
	}}
	add := func(head string, fill material.Fill) {
		t.Rows = append(t.Rows, []string{head, s.amounts.Mix(fill.Mix).String(), s.measuredText(fill.Product), s.reachText(float64(fill.Area))})
	}
	if f.Count > 0 {
		add(fmt.Sprintf("%d full", f.Count), f.Full)
	}
	if f.Last.Area > 0 {
		add(lastTank(f.Count), f.Last)
	}
	return orNone(t)
}

// mixTable is the table of tanks of what goes in by its label.
func (s stepSheet) mixTable() Block {
	t := Table{Size: stepSize, Columns: []Column{{Head: "Tanks" + s.aPass()}, {Head: "Fill to", Anchor: End}, {Head: "Product", Anchor: End}}}
	tank, mix := s.step.Step.Tank, s.step.Mix()
	full := int(float64(mix/tank) + 1e-9)
	if full > 0 {
		t.Rows = append(t.Rows, []string{fmt.Sprintf("%d full", full), s.amounts.Mix(tank).String(), s.step.Step.PassByLabel()})
	}
	if last := mix - material.Volume(full)*tank; last > 1e-9*mix {
		t.Rows = append(t.Rows, []string{lastTank(full), s.amounts.Mix(last).String(), s.step.Step.PassByLabel()})
	}
	return orNone(t)
}

func lastTank(full int) string {
	if full == 0 {
		return "1 in part"
	}
	return "1 more"
}

// cautionTable is what to mind, numbered.
func (s stepSheet) cautionTable() Block {
	t := Table{Size: stepSize, Columns: []Column{{Head: "Mind", Wrap: true}}}
	for _, text := range s.step.Step.Minding() {
		t.Rows = append(t.Rows, []string{capitalized(s.letters.of(text))})
	}
	return orNone(t)
}

// noteTable has what the program tells of the step besides.
func (s stepSheet) noteTable() Block {
	t := Table{Size: stepSize, Columns: []Column{{Head: "Notes on the step", Wrap: true}}}
	for _, text := range s.step.Step.Notes {
		t.Rows = append(t.Rows, []string{capitalized(s.letters.of(text))})
	}
	return orNone(t)
}

// accessTable has what the site file says of getting in; codes only if they
// were asked for.
func (s stepSheet) accessTable() Block {
	a := s.plat.Site.Access
	t := Table{Size: stepSize, Columns: []Column{{Head: "Access", Width: headColumn}, {Wrap: true}}}
	add := func(head, text string) {
		if text != "" {
			t.Rows = append(t.Rows, []string{head, s.letters.of(text)})
		}
	}
	add("Gate", a.Gate)
	if s.codes {
		add("Gate code", a.GateCode)
	} else if a.GateCode != "" {
		add("Gate code", "kept apart from this sheet")
	}
	add("Parking", a.Parking)
	add("Dog", a.Dog)
	add("Water", a.Water)
	add("Power", a.Power)
	add("Contact", a.Contact)
	return orNone(t)
}
