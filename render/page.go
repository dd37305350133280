package render

import (
	"fmt"
	"slices"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// PageOptions says what the page for a phone shows.
type PageOptions struct {
	PacketOptions
	Walked *StepLanes // lanes over the whole site, where there is no program; nil: none
}

// Page writes what a crew needs as one HTML page for a phone or any other
// browser: the map of the site, to be moved and zoomed, with layers to switch,
// zones that tell what they are and get, and lanes and boxes to tick; then for
// each step what is done where, how much and what to mind; the hours of sun if
// they are asked for; the season and what to buy. Without a plan it is the site
// alone. The paper and the scale of the options mean nothing to it.
//
// The page is whole in itself: it loads nothing, its policy forbids it to, and
// texts of the site stand in it as text only. The map has the sheets' typefaces,
// and the page tells of letters that they lack; all other text is that of the
// device, which has letters of every kind. Room to sign is on the paper sheets
// alone.
//
// The sheet that is returned with it is the map as it stands on the page before
// anything is chosen; its Missing are the letters drawn as question marks, and its
// Unlabelled the zones whose letters found no room.
func Page(p *zones.Plat, m zones.Measurement, plan *program.Plan, o PageOptions) (*Sheet, []byte, error) {
	d, err := siteDraft(p, m, o.MapOptions)
	if err != nil {
		return nil, nil, err
	}
	w := webPage{draft: d, told: d.again(), plan: plan, options: o}
	w.told.letters = &lettering{verbatim: true}
	if w.told.tally, err = tallyOf(p, w.told.letters); err != nil {
		return nil, nil, err
	}
	if w.sections, err = w.allSections(); err != nil {
		return nil, nil, err
	}
	sheet, v, err := w.mapSheet()
	if err != nil {
		return nil, nil, err
	}
	file, err := w.write(sheet, v)
	return sheet, file, err
}

// A webPage is a page while it is made.
type webPage struct {
	*draft
	told     *draft // as draft, for what stands in HTML
	plan     *program.Plan
	options  PageOptions
	sections []pageSection

	unlabelled []string // letters of zones that the map of the site has no room for
}

// A pageSection is what the page shows at a time: a map of its own subject, and
// what is told of it.
type pageSection struct {
	ID, Title string
	Number    int    // of a step, from 1
	Standing  string // of a step: READY, WAIT ...
	Intro     string
	Blocks    []pageBlock
	Ticks     []pageTick // lanes in walking order
	passes    int        // how many passes the lanes are of; 0 if there are none

	ground  func(view) (under, over []Element, err error)
	key     legend                        // what its map shows beyond the site map
	amounts map[string][][2]string        // what goes on a zone, head and figure, by letter; nil of what is no step
	sun     func(view) ([]Element, error) // the hours of sun, if it shows them
}

func (w *webPage) allSections() ([]pageSection, error) {
	all := []pageSection{w.siteSection()}
	if w.plan != nil {
		steps, err := stepsAsked(w.plan, w.options.Steps)
		if err != nil {
			return nil, err
		}
		for _, number := range steps {
			s, err := w.stepSection(number)
			if err != nil {
				return nil, err
			}
			all = append(all, s)
		}
	}
	if w.options.Walked != nil {
		s, err := w.lanesSection(*w.options.Walked)
		if err != nil {
			return nil, err
		}
		all = append(all, s)
	}
	if w.options.Sun {
		s, err := w.sunSection()
		if err != nil {
			return nil, err
		}
		all = append(all, s)
	}
	if w.plan != nil {
		all = append(all, w.seasonSection())
	}
	return all, nil
}

// siteSection tells of the ground and how one gets to it.
func (w *webPage) siteSection() pageSection {
	on := stepSheet{draft: w.told, codes: w.options.Codes}
	every := detail{objects: w.told.tally.objectRows(), zones: len(w.plat.Zones)}
	return pageSection{
		ID: "site", Title: "The site",
		Blocks: pageBlocks(w.told.zoneTable(every), on.hazardList(), on.accessTable(), w.told.turfTable(every.objects), w.told.edgeTable()),
		ground: w.siteMap().onPage,
	}
}

// siteMap is the subject of the map where a section has none of its own.
func (w *webPage) siteMap() siteMap { return w.draft.subject.(siteMap) }

// stepSection tells of one step.
func (w *webPage) stepSection(number int) (pageSection, error) {
	walked, err := w.options.lanesOf(&w.plan.Steps[number-1])
	if err != nil {
		return pageSection{}, err
	}
	told, err := newStepSheet(w.told.again(), w.plan, number, w.options.Codes, walked)
	if err != nil {
		return pageSection{}, err
	}
	drawn, err := newStepSheet(w.draft.again(), w.plan, number, w.options.Codes, walked)
	if err != nil {
		return pageSection{}, err
	}
	s := pageSection{
		ID: "step-" + told.step.Step.ID, Title: told.letters.of(told.step.Step.Name()), Number: number, Intro: told.intro(), Standing: told.standing().word,
		Blocks: pageBlocks(told.toldOnPages()...),
		ground: drawn.onPage, key: drawn.legend().(legend), amounts: told.amountsByZone(),
	}
	for _, pass := range told.passes {
		s.Ticks = append(s.Ticks, pass.ticks()...)
		if s.passes = pass.passNo(); s.passes > 1 {
			s.Blocks = append(s.Blocks, pageBlocks(pass.passBlocks(len(pass.plan.Fills))...)...)
		}
	}
	return s, nil
}

// toldOnPages are the blocks of a step but those for paper.
func (s stepSheet) toldOnPages() (blocks []block) {
	for _, b := range s.told {
		if !b.paper {
			blocks = append(blocks, b.block)
		}
	}
	return blocks
}

// intro says which step it is, what is done in it, and when.
func (s stepSheet) intro() string {
	text := fmt.Sprintf("Step %d of %d: %s", s.number, len(s.plan.Steps), s.step.Step.Does)
	if window := s.step.Window(); window != "" {
		text += ", " + window
	}
	return text + ". Plan as of: " + asOf(s.plan) + "."
}

// lanesSection tells of lanes over the whole site.
func (w *webPage) lanesSection(walked StepLanes) (pageSection, error) {
	d, err := laneDraft(w.plat, w.measured, walked.Plan, walked.Summary, w.options.MapOptions)
	if err != nil {
		return pageSection{}, err
	}
	drawn := d.subject.(laneMap)
	drawn.draft, drawn.lanes.draft = w.draft, w.draft
	told := drawn.lanes
	told.draft = w.told
	return pageSection{
		ID: "lanes", Title: "Spread lanes", Ticks: told.ticks(),
		Blocks: pageBlocks(told.workTable(), told.fillTable(len(told.plan.Fills)), told.cautions()),
		ground: drawn.onPage, key: drawn.brief,
	}, nil
}

// sunSection tells of the hours of sun.
func (w *webPage) sunSection() (pageSection, error) {
	drawn, err := sunDraft(w.plat, w.measured, w.options.MapOptions)
	if err != nil {
		return pageSection{}, err
	}
	told := drawn.subject.(sunMap)
	on := told
	on.draft = w.draft
	told.draft = w.told
	return pageSection{
		ID: "sun", Title: "Sun and shade", sun: on.hoursAndContours,
		Blocks: pageBlocks(told.hoursTable(detail{zones: len(w.plat.Zones)}), told.groundsTable()),
		ground: on.onPage, key: on.key,
	}, nil
}

// seasonSection tells of the steps in time, and what is bought for them.
func (w *webPage) seasonSection() pageSection {
	s := season{w.told.again(), w.plan, material.Figures{Units: w.draft.options.Units}}
	return pageSection{
		ID: "season", Title: "Season and shopping",
		Blocks: pageBlocks(append([]block{s.strip()}, s.tables()...)...),
		ground: w.siteMap().onPage,
	}
}

// amountsByZone are the figures of the table of quantities, zone by zone.
func (s stepSheet) amountsByZone() map[string][][2]string {
	const letter, first = 0, 3 // columns
	t := s.quantityTable().(table)
	amounts := make(map[string][][2]string)
	for _, row := range t.rows {
		figures := [][2]string{}
		for i := first; i < len(row); i++ {
			if row[i] != "" {
				figures = append(figures, [2]string{t.columns[i].head, row[i]})
			}
		}
		amounts[row[letter]] = figures
	}
	for _, z := range s.measured.Zones {
		if done, there := s.done[z.ID]; there && done.HeldBack() {
			amounts[z.Letter] = append([][2]string{{"Held back", notYet}}, amounts[z.Letter]...)
		}
	}
	return amounts
}

// pageBlocks are those blocks that there are, fit for a page.
func pageBlocks(blocks ...block) []pageBlock {
	var all []pageBlock
	for _, b := range slices.DeleteFunc(blocks, func(b block) bool { return b == nil }) {
		all = append(all, pageBlockOf(b))
	}
	return all
}
