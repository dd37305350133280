package program

import (
	_ "embed"
	"example.org/turfplat/geo"
	"fmt"
	"slices"
	"time"

	"example.org/turfplat/zones/material"
)

var (
	// cautionsCSV holds what to mind at a job, or with a use; an empty cell is
	// any, pesticide any use of one.
	//
	//go:embed cautions.csv
	cautionsCSV string
	// footersCSV holds what every plan says of law, label and licence.
	//
	//go:embed footers.csv
	footersCSV string

	cautions = mustRows("cautions.csv", cautionsCSV, "does", "use", "text", "source")
	footers  = mustRows("footers.csv", footersCSV, "text", "source")
)

// mostCautions are those that a crew reads.
const mostCautions = 6

// Minding is what to mind at the step, at most six: what law asks of pesticides,
// then the step's own, then what holds for its job.
func (s *Step) Minding() []string {
	var law, usual []string
	for _, row := range cautions {
		switch {
		case !s.meets(row[0], row[1]):
		case row[1] == "pesticide":
			law = append(law, s.figures.Prose(row[2]))
		default:
			usual = append(usual, s.figures.Prose(row[2]))
		}
	}
	list := slices.Concat(law, s.Cautions, usual)
	return list[:min(len(list), mostCautions)]
}

// Footers are what every plan says of law, label and licence.
func Footers(f material.Figures) []string {
	var list []string
	for _, row := range footers {
		list = append(list, f.Prose(row[0]))
	}
	return list
}

// ByLabel reports whether a step puts down what has no rate here.
func (s *Step) ByLabel() bool { return s.Rate == nil && s.Does.lays() }

// PassRate is the rate of the product in one pass; false if there is none.
func (s *Step) PassRate() (material.Rate, bool) {
	if s.Rate == nil {
		return material.Rate{}, false
	}
	r, err := s.Product.Rate(*s.Rate)
	return r, err == nil
}

// VisitRate is the rate of the product on one visit, all passes together; false
// if there is none.
func (s *Step) VisitRate() (material.Rate, bool) {
	r, ok := s.PassRate()
	return r.Times(float64(s.Passes)), ok
}

// Visits is how often the step is done in the season.
func (s *StepPlan) Visits() int { return s.visits() }

// Fills are the tanks of one pass over all the step's zones; false if the step
// has no rate, carrier and tank.
func (s *StepPlan) Fills() (material.Fills, bool) {
	rate, ok := s.Step.PassRate()
	ground := s.treated()
	if !ok || s.Step.Tank == 0 || ground == 0 {
		return material.Fills{}, false
	}
	f, err := material.Spray{Product: rate, Carrier: s.Step.Carrier, Tank: s.Step.Tank}.Fills(ground)
	return f, err == nil
}

// Mix is the finished mix of one pass over all the step's zones.
func (s *StepPlan) Mix() material.Volume {
	return material.Volume(s.Step.Carrier.Over(s.treated()).Size)
}

// CutAt is how high a step cuts the grass of a zone, and how high it stands when
// it is time to; false if neither the step nor the grass tells.
func (s *Step) CutAt(g Ground) (height, at geo.Length, ok bool) {
	height = s.Height.Of
	if usual, known := g.Grass.Mowing.Used(); height == 0 && known {
		if height = geo.Length(usual.Least+usual.Most) / 2; s.Height.Top {
			height = geo.Length(usual.Most)
		}
	}
	if height == 0 {
		return 0, 0, false
	}
	at, err := material.Mowing{Height: height, Share: material.MowingShare.Share()}.MowAt()
	return height, at, err == nil
}

// NeededIf is the need that a person must find before a material is bought; ""
// if some step takes it in any case.
func (p *Plan) NeededIf(product string) string {
	var needs []string
	for i := range p.Steps {
		s := &p.Steps[i]
		if len(s.Totals) == 0 || s.Step.Product.Name != product {
			continue
		}
		if s.Step.OnlyIf == "" {
			return ""
		}
		needs = append(needs, s.Step.OnlyIf)
	}
	return joinNonempty(" or ", needs...)
}

// Lasting writes a time as people say it.
func Lasting(d time.Duration) string {
	switch day := 24 * time.Hour; {
	case d%time.Hour != 0:
		return fmt.Sprintf("%.0f min", d.Minutes())
	case d >= 2*day && d%day == 0:
		return inWords(int(d / day))
	}
	return fmt.Sprintf("%.0f h", d.Hours())
}

// Barred reports whether there are zones on which a step is not done because
// nothing may be applied there.
func (p *Plan) Barred(s *StepPlan) bool {
	return s.Step.Does.lays() && slices.ContainsFunc(p.Grounds, func(g Ground) bool { return !g.Apply })
}

// Everywhere reports whether zones are all those on which a step could be done.
func (p *Plan) Everywhere(s *StepPlan, on []ZonePlan) bool {
	could := 0
	for _, g := range p.Grounds {
		if g.Apply || !s.Step.Does.lays() {
			could++
		}
	}
	return len(on) == could
}
