package render

import (
	"fmt"
	"strings"

	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// A season is the subject of the sheets of the season: its steps in time, what
// is bought for them, and what they feed the zones.
type season struct {
	*draft
	plan    *program.Plan
	amounts material.Figures
}

// seasonSheets draws the season of a plan.
func seasonSheets(property *draft, plan *program.Plan) ([]*Sheet, error) {
	s := season{property.again(), plan, material.Figures{Units: property.options.Units}}
	return s.textSheets(textPages{
		id: "season", title: "Season and shopping", paper: s.options.Paper.landscape(), block: s.titleBlock(), method: s.method(), inWords: s.inWords(),
		wide: []block{s.strip()}, blocks: s.tables(),
	})
}

func (s season) titleBlock() titleBlock {
	return titleBlock{fmt.Sprintf("Season %d and shopping", s.plan.Year), s.letters.of(s.measured.Name), [][2]string{
		{"Program", s.letters.of(s.plan.Program.Name)},
		{"Plan as of", asOf(s.plan)},
		{"Steps", fmt.Sprint(len(s.plan.Steps))},
		{"Site", s.letters.of(s.measured.ID)},
		{"Zones", fmt.Sprint(len(s.plan.Grounds))},
		{"Revision", fmt.Sprint(s.measured.Revision)},
	}}
}

// asOf is the day of a plan.
func asOf(p *program.Plan) string {
	if p.Today.IsZero() {
		return "no day set"
	}
	return p.Today.Format("2 Jan 2006")
}

func (s season) method() string {
	return fmt.Sprintf("Needed is the rate times the area, over all steps that are still to come; to load adds %.3g %%, rates stay as they are. "+
		"Limits of nitrogen are those of the grass for a year. Input SHA-256 %.12s, revision %d.",
		100*float64(s.plan.Program.Carry), s.measured.InputSHA256, s.measured.Revision)
}

// inWords tells the season to people who cannot see it.
func (s season) inWords() string {
	var steps, bought []string
	for i := range s.plan.Steps {
		p := &s.plan.Steps[i]
		steps = append(steps, strings.TrimSpace(fmt.Sprintf("%s %s %s", s.letters.of(p.Step.Name()), p.Status, p.Window())))
	}
	for _, b := range s.plan.Purchases {
		bought = append(bought, fmt.Sprintf("%s %s", s.amounts.Amount(b.ToLoad), s.letters.of(b.Product)))
	}
	words := fmt.Sprintf("Season %d of %s, %d steps: %s.", s.plan.Year, s.letters.of(s.measured.Name), len(steps), strings.Join(steps, "; "))
	if len(bought) > 0 {
		words += " To load: " + strings.Join(bought, ", ") + "."
	}
	return words
}

// strip lays the steps out in time.
func (s season) strip() block {
	strip := seasonStrip{today: s.plan.Today}
	for i := range s.plan.Steps {
		p := &s.plan.Steps[i]
		var letters []string
		for _, z := range p.Open() {
			letters = append(letters, z.Letter)
		}
		strip.rows = append(strip.rows, stripRow{
			number: fmt.Sprint(i + 1), name: s.letters.of(p.Step.Name()), status: p.Status,
			window: p.Window(), letters: strings.Join(letters, " "), from: p.From, to: p.To,
		})
	}
	strip.span()
	return strip
}

// tables are what stands under the strip.
func (s season) tables() []block {
	var blocks []block
	for _, b := range []block{s.purchases(), s.feeds(), s.leftOut(), s.footers()} {
		if b != nil {
			blocks = append(blocks, b)
		}
	}
	return blocks
}

// purchases is the shopping list for all that is still to come.
func (s season) purchases() block {
	t := table{size: stepSize, columns: []column{
		{head: "To buy", wrap: true}, {head: "Needed", anchor: End}, {head: "To load", anchor: End}, {head: "Packs", wrap: true}, {head: "Over", anchor: End},
	}}
	packs := &t.columns[3]
	packs.width = Bold.width(packs.head, stepSize) + 2*cellMargin
	for _, b := range s.plan.Purchases {
		for _, pack := range strings.SplitAfter(s.packs(b), " +") { // a pack is never broken
			packs.width = max(packs.width, Regular.width(strings.TrimSpace(pack), stepSize)+2*cellMargin)
		}
		name := s.letters.of(b.Product)
		if need := s.plan.NeededIf(b.Product); need != "" {
			name += ", only if " + s.letters.of(need)
		}
		t.rows = append(t.rows, []string{name, s.amounts.Amount(b.Needed).String(), s.amounts.Amount(b.ToLoad).String(), s.packs(b), s.amounts.LeftOver(b)})
	}
	for _, name := range s.byLabel() {
		t.rows = append(t.rows, []string{name, "by label"})
	}
	return orNone(t)
}

// packs says what is bought; no pack is broken over two lines.
func (s season) packs(b material.Purchase) string {
	packs := strings.Split(s.amounts.Packs(b), " + ")
	for i := range packs {
		packs[i] = strings.ReplaceAll(packs[i], " ", string(noBreak))
	}
	return strings.Join(packs, " + ")
}

// byLabel are the materials whose amounts only their labels tell.
func (s season) byLabel() []string {
	var names []string
	known := make(map[string]bool)
	for i := range s.plan.Steps {
		p := &s.plan.Steps[i]
		if name := s.letters.of(p.Step.Product.Name); p.Status != program.Skipped && p.Step.ByLabel() && !known[name] {
			known[name] = true
			names = append(names, name)
		}
	}
	return names
}

// feeds is what the season feeds each zone, against the most that its grass
// should get.
func (s season) feeds() block {
	unit := s.amounts.Rate(material.Rate{By: material.Weight, PerM2: 1}).Unit.String()
	t := table{size: stepSize, columns: []column{
		{head: "Zone", width: letterColumn}, {head: "Fed, " + unit, wrap: true}, {head: "N", anchor: End}, {head: "at most", anchor: End},
		{head: "P₂O₅", anchor: End}, {head: "K₂O", anchor: End},
	}}
	for _, f := range s.plan.Feeds {
		limit := "?"
		if f.Limit > 0 {
			limit = s.fed(f.Limit)
		}
		nitrogen := s.fed(f.N) + f.More(material.Nitrogen)
		if f.Limit > 0 && f.N > f.Limit*(1+1e-9) {
			nitrogen = "! " + nitrogen
		}
		t.rows = append(t.rows, []string{f.Letter, shortened(s.letters.of(f.Name), Regular, stepSize, twoLines), nitrogen, limit, s.fed(f.P2O5) + f.More(material.Phosphate), s.fed(f.K2O) + f.More(material.Potash)})
	}
	if more := s.plan.Uncounted(); more != "" && len(t.rows) > 0 {
		t.rows = append(t.rows, []string{"", s.letters.of(more)})
	}
	return orNone(t)
}

func (s season) fed(kgPerM2 float64) string {
	if kgPerM2 == 0 {
		return "0"
	}
	return s.amounts.Rate(material.Rate{By: material.Weight, PerM2: kgPerM2}).Number()
}

// leftOut tells why steps are not done.
func (s season) leftOut() block {
	t := table{size: stepSize, columns: []column{{head: "Not to do", wrap: true}}}
	for i := range s.plan.Steps {
		p := &s.plan.Steps[i]
		switch p.Status {
		case program.Skipped, program.Blocked:
			t.rows = append(t.rows, []string{fmt.Sprintf("%d. %s: %s", i+1, s.letters.of(p.Step.Name()), s.letters.of(p.Why))})
		}
	}
	return orNone(t)
}

// footers are what law, label and good sense ask.
func (s season) footers() block {
	t := table{size: stepSize, columns: []column{{head: "Mind", wrap: true}}}
	for _, text := range program.Footers(s.amounts) {
		t.rows = append(t.rows, []string{text})
	}
	return t
}
