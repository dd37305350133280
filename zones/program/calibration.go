package program

import (
	"errors"
	"fmt"
	"strconv"

	"go.yaml.in/yaml/v3"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/spelling"
)

// A Calibration is what a user's own spreader was found to put down of a
// material at some settings, on strips of known ground.
type Calibration struct {
	Material string
	Spreader string          // what the user calls it
	Hopper   material.Amount // that it holds of the material; 0 = not stated
	Runs     []material.SettingPoint

	line  material.SettingLine
	place ingest.Place
}

// A Setting is that of a spreader for one pass of a step.
type Setting struct {
	Spreader string
	Number   float64 // on the spreader's own scale
	Err      error   // why there is none: the rate lies beyond the runs
	Hopper   material.Amount
}

const mostRuns = 50

// Settings are those of the user's spreaders for a share of one pass of a step,
// as lanes that overlap ask for, in the order of the file; none of what nobody
// calibrated, or goes by its label.
func (p *Program) Settings(s *Step, share float64) []Setting {
	if s.Rate == nil {
		return nil
	}
	rate, err := s.Product.Rate(*s.Rate)
	if err != nil {
		return nil
	}
	var settings []Setting
	for _, c := range p.Calibrations {
		if c.Material != s.Product.Name {
			continue
		}
		number, err := c.line.For(rate.Times(share), material.SettingReach.Share())
		settings = append(settings, Setting{c.Spreader, number, err, c.Hopper})
	}
	return settings
}

func (d *document) readCalibration(n *yaml.Node) Calibration {
	var c Calibration
	c.place = d.place(n)
	at := d.mapping(n, "a calibration", d.calibrationKeys(&c))
	if n.Kind != yaml.MappingNode {
		return c
	}
	for _, needed := range []string{"material", "spreader", "runs"} {
		if at[needed] == nil && !hasKey(n, needed) {
			d.refuse(n, "program_key", "the calibration has no "+needed, "give it material, spreader and runs of setting and rate")
		}
	}
	if at["runs"] == nil {
		return c
	}
	var err error
	if c.line, err = material.FitSettings(c.Runs); err != nil {
		d.fault(at["runs"], "runs", err)
	}
	return c
}

func (d *document) calibrationKeys(c *Calibration) []key {
	return []key{
		value(d, "material", &c.Material, asText),
		value(d, "spreader", &c.Spreader, asText),
		value(d, "hopper", &c.Hopper, asHopper),
		{"runs", func(n *yaml.Node) { d.runs(n, c) }},
	}
}

func (d *document) runs(n *yaml.Node, c *Calibration) {
	if n.Kind == yaml.SequenceNode && len(n.Content) > mostRuns {
		d.refuse(n, "program_large", fmt.Sprintf("there are %d runs, more than %d", len(n.Content), mostRuns), "")
		return
	}
	d.items(n, func(item *yaml.Node) {
		var run material.SettingPoint
		d.mapping(item, "a run", d.runKeys(&run))
		c.Runs = append(c.Runs, run)
	})
}

func (d *document) runKeys(run *material.SettingPoint) []key {
	return []key{
		value(d, "setting", &run.Setting, asSetting),
		value(d, "rate", &run.Rate, quantity(material.Quantity.Rate)),
	}
}

func asSetting(text string) (float64, error) {
	number, err := strconv.ParseFloat(text, 64)
	if err != nil || !(number > 0 && number < 1e6) {
		return 0, errors.New(ingest.Quoted(text) + " is no setting above 0, such as 4.5")
	}
	return number, nil
}

func asHopper(text string) (material.Amount, error) {
	a, err := quantity(material.Quantity.Amount)(text)
	if err == nil && !(a.Size > 0) {
		err = &material.InputError{Text: "a hopper that holds nothing", Hint: "write what it holds, such as 40 lb"}
	}
	return a, err
}

// checkCalibrations refuses those of materials that no step puts down.
func (d *document) checkCalibrations(p *Program) {
	for _, c := range p.Calibrations {
		used := false
		var names []string
		for i := range p.Steps {
			name := p.Steps[i].Product.Name
			used = used || name == c.Material
			names = append(names, name)
		}
		if used || c.Material == "" {
			continue
		}
		hint := "write the material as its steps do"
		if near := spelling.Nearest(c.Material, names); near != "" {
			hint = "did you mean " + near + "?"
		}
		d.problems = append(d.problems, ingest.Problem{Severity: ingest.Refusal, Code: "program_value", Place: c.place,
			Text: "no step puts down " + ingest.Quoted(c.Material), Hint: hint})
	}
}
