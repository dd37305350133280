package program

import (
	"fmt"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/spelling"
)

// checkSteps refuses what single keys do not show: ids that stand twice, steps
// that are named but not there, circles, rates that the product cannot give.
func (d *document) checkSteps(p *Program) {
	if len(p.Steps) == 0 && len(d.problems) == 0 {
		d.problems = append(d.problems, ingest.Problem{Severity: ingest.Refusal, Code: "program_form", Place: ingest.Place{Source: d.source, Feature: -1},
			Text: "there are no steps", Hint: "list them under steps:, each beginning with - id:"})
	}
	seen := make(map[string]bool)
	for i := range p.Steps {
		s := &p.Steps[i]
		if seen[s.ID] && s.ID != "" {
			d.refuseStep(s, "id", fmt.Sprintf("id %s stands twice", s.ID), "give each step its own")
		}
		seen[s.ID] = true
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		d.checkReferences(p, s)
		d.checkMaterial(s)
		d.checkDone(s)
	}
	d.checkCircles(p)
}

// refuseStep notes what is wrong with a step at one of its keys.
func (d *document) refuseStep(s *Step, name, text, hint string) {
	d.tellStep(ingest.Refusal, s, name, text, hint)
}

func (d *document) tellStep(severity ingest.Severity, s *Step, name, text, hint string) {
	d.problems = append(d.problems, ingest.Problem{Severity: severity, Code: "program_step", Place: s.placeOf(name), Text: text, Hint: hint})
}

// placeOf is where one of the step's keys stands, else the step itself.
func (s *Step) placeOf(name string) ingest.Place {
	if place, ok := s.places[name]; ok {
		return place
	}
	return s.places[""]
}

func (d *document) checkReferences(p *Program, s *Step) {
	var ids []string
	for _, other := range p.Steps {
		if other.ID != s.ID {
			ids = append(ids, other.ID)
		}
	}
	named := []string{s.When.Before}
	if s.When.After != nil {
		named = append(named, s.When.After.Step)
	}
	for _, id := range named {
		if id == "" || p.step(id) != nil && id != s.ID {
			continue
		}
		hint := ""
		if near := spelling.Nearest(id, ids); near != "" {
			hint = "did you mean " + near + "?"
		}
		d.refuseStep(s, "when", fmt.Sprintf("there is no other step %s", id), hint)
	}
}

// step returns a step by its id, nil if there is none.
func (p *Program) step(id string) *Step {
	for i := range p.Steps {
		if p.Steps[i].ID == id {
			return &p.Steps[i]
		}
	}
	return nil
}

// checkMaterial refuses a rate that says nothing about a material, and one that
// the product cannot give.
func (d *document) checkMaterial(s *Step) {
	s.Product.Name = s.materialName()
	if s.Does == Water && s.Rate != nil && s.Rate.By == material.Bulk {
		s.Rate.By = material.Liquid // a depth of water
	}
	switch {
	case s.Rate == nil, s.Does == "": // told when it was read
	case !s.Does.lays():
		d.refuseStep(s, "rate", fmt.Sprintf("a step that does %s puts nothing down and has no rate", s.Does), "")
	case s.Material == "" && s.Does != Water:
		d.refuseStep(s, "rate", "a rate needs its material", "name it, such as material: compost")
	default:
		if _, err := s.Product.Rate(*s.Rate); err != nil {
			d.stepFault(s, "rate", err)
		}
	}
	if s.Product.Covers > 0 && len(s.Product.Packs) != 1 {
		d.tellStep(ingest.Warning, s, "product", "covers says for which ground a pack is, and the product has not one pack: left aside", "state the one pack that it is said of")
	}
	s.ofActives = usesOfActives(s)
	d.checkUse(s)
	d.checkTank(s)
	d.checkHeight(s)
}

// checkUse tells that nothing says what a pesticide is for, and so which waits hold.
func (d *document) checkUse(s *Step) {
	if s.forUnknown() {
		d.tellStep(ingest.Note, s, "product", "taken for a pesticide, as it states an active ingredient; what it is for is not known, so no wait before or after seed is minded", "say use: pre_emergent, broadleaf, insecticide or fungicide, or one that is no pesticide")
	}
}

// stepFault notes an error of a step's key.
func (d *document) stepFault(s *Step, name string, err error) {
	if wrong, ok := err.(*material.InputError); ok {
		d.refuseStep(s, name, wrong.Text, wrong.Hint)
		return
	}
	d.refuseStep(s, name, err.Error(), "")
}

func (d *document) checkTank(s *Step) {
	if s.Carrier.PerM2 > 0 && s.Carrier.By != material.Liquid {
		d.refuseStep(s, "carrier", "a carrier is a liquid on an area", "write such as 1 gal / 1000 ft2")
	}
	if s.Tank > 0 && !(s.Carrier.PerM2 > 0) {
		d.refuseStep(s, "tank", "a tank needs the carrier that it holds", "write such as carrier: 1 gal / 1000 ft2")
	}
	d.checkMix(s)
}

// checkMix refuses more of a product than there is of the mix that holds it.
func (d *document) checkMix(s *Step) {
	if s.Rate == nil || s.Carrier.By != material.Liquid || !(s.Carrier.PerM2 > 0) {
		return
	}
	if rate, err := s.Product.Rate(*s.Rate); err == nil && rate.By == material.Liquid && rate.PerM2 > s.Carrier.PerM2 {
		d.refuseStep(s, "rate", fmt.Sprintf("there is more of the product than of the mix that holds it: %.3g times the carrier", rate.PerM2/s.Carrier.PerM2),
			"carrier is the finished mix, product included: check both for a slip of figure or unit")
	}
}

func (d *document) checkHeight(s *Step) {
	if s.Height != (Height{}) && s.Does != Mow && s.Does != "" {
		d.refuseStep(s, "height", "only a step that does mow has a height of cut", "")
	}
}

// materialName is what the material is called in tables and purchases.
func (s *Step) materialName() string {
	switch {
	case s.Material != "":
		return s.Material
	case s.Does == Water:
		return "water"
	}
	return ""
}

// checkCircles refuses steps that wait for each other.
func (d *document) checkCircles(p *Program) {
	for i := range p.Steps {
		at := &p.Steps[i]
		for n := 0; at != nil && at.When.After != nil; n++ {
			if at = p.step(at.When.After.Step); at == &p.Steps[i] || n > len(p.Steps) {
				d.refuseStep(&p.Steps[i], "when", fmt.Sprintf("step %s waits for itself by way of others", p.Steps[i].ID), "break the circle of after")
				break
			}
		}
	}
}
