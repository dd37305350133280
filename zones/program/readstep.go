package program

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
)

const mostPasses = 20

// readStep reads one item of the list of steps.
func (d *document) readStep(n *yaml.Node) Step {
	d.step = idOf(n)
	s := Step{Passes: 1}
	at := d.mapping(n, "a step", d.stepKeys(&s))
	if n.Kind == yaml.MappingNode {
		for _, needed := range []string{"id", "does"} {
			if at[needed] == nil && !hasKey(n, needed) {
				d.refuse(n, "program_key", "the step has no "+needed, "give it id: NAME and does: JOB")
			}
		}
	}
	s.places = map[string]ingest.Place{"": d.place(n)}
	for name, value := range at {
		s.places[name] = d.place(value)
	}
	return s
}

// idOf finds what a step is called before it is read.
func idOf(n *yaml.Node) string {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == "id" {
			return n.Content[i+1].Value
		}
	}
	return ""
}

func hasKey(n *yaml.Node, name string) bool {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == name {
			return true
		}
	}
	return false
}

func (d *document) stepKeys(s *Step) []key {
	return []key{
		value(d, "id", &s.ID, asID),
		value(d, "title", &s.Title, asText),
		value(d, "does", &s.Does, oneOf(jobs)),
		value(d, "use", &s.Use, oneOf(uses)),
		{"where", func(n *yaml.Node) { d.mapping(n, "where", d.whereKeys(&s.Where)) }},
		{"when", func(n *yaml.Node) { d.mapping(n, "when", d.whenKeys(&s.When)) }},
		value(d, "material", &s.Material, asText),
		value(d, "rate", &s.Rate, asRate),
		value(d, "passes", &s.Passes, whole(mostPasses)),
		value(d, "every", &s.Every, asInterval),
		{"product", func(n *yaml.Node) { d.mapping(n, "product", d.productKeys(&s.Product)) }},
		value(d, "carrier", &s.Carrier, quantity(material.Quantity.Rate)),
		value(d, "tank", &s.Tank, quantity(material.Quantity.Volume)),
		{"water_in", func(n *yaml.Node) {
			s.WaterIn = new(WaterIn)
			d.mapping(n, "water_in", d.waterKeys(s.WaterIn))
		}},
		value(d, "keep_dry", &s.KeepDry, quantity(material.Quantity.Duration)),
		value(d, "blocks_seed", &s.BlocksSeed, quantity(material.Quantity.Duration)),
		value(d, "after_seed", &s.AfterSeed, quantity(material.Quantity.Duration)),
		value(d, "stay_off", &s.StayOff, asText),
		value(d, "height", &s.Height, asHeight),
		value(d, "bagged", &s.Bagged, asBool),
		value(d, "method", &s.Method, oneOf(methods)),
		value(d, "only_if", &s.OnlyIf, asText),
		values(d, "cautions", &s.Cautions, asText),
		values(d, "notes", &s.Notes, asText),
		values(d, "checked", &s.Checked, oneOf(checks)),
		{"override", func(n *yaml.Node) { d.items(n, func(item *yaml.Node) { d.readOverride(item, s) }) }},
		values(d, "done", &s.Done, asDate),
	}
}

func (d *document) whereKeys(w *Where) []key {
	return []key{
		value(d, "season", &w.Season, oneOf(grassSeasons)),
		values(d, "species", &w.Species, asText),
		values(d, "exposure", &w.Exposure, oneOf([]string{"full", "part", "shade", "deep"})),
		values(d, "zone", &w.Zones, asText),
		value(d, "irrigated", &w.Irrigated, func(text string) (*bool, error) {
			b, err := asBool(text)
			return &b, err
		}),
	}
}

func (d *document) waterKeys(w *WaterIn) []key {
	return []key{
		value(d, "depth", &w.Depth, quantity(material.Quantity.Length)),
		value(d, "within", &w.Within, quantity(material.Quantity.Duration)),
	}
}

func (d *document) readOverride(n *yaml.Node, s *Step) {
	var o Override
	at := d.mapping(n, "override", d.overrideKeys(&o))
	if n.Kind == yaml.MappingNode && (at["rule"] == nil || at["reason"] == nil) {
		d.refuse(n, "program_key", "an override needs a rule and a reason", "say who allowed it and why")
		return
	}
	s.Override = append(s.Override, o)
}

func (d *document) overrideKeys(o *Override) []key {
	return []key{
		value(d, "rule", &o.Rule, asRule),
		values(d, "zone", &o.Zones, asText),
		value(d, "reason", &o.Reason, asText),
	}
}

const longestID = 60 // letters and the like

var idForm = regexp.MustCompile(`^[\pL\pN][\pL\pN_.-]*$`)

func asID(text string) (string, error) {
	if utf8.RuneCountInString(text) > longestID || !idForm.MatchString(text) {
		return "", &material.InputError{Text: ingest.Quoted(text) + " is no id", Hint: fmt.Sprintf("write up to %d letters, digits, - and _, such as first-feed", longestID)}
	}
	return text, nil
}

func asRate(text string) (*material.Rate, error) {
	r, err := quantity(material.Quantity.Rate)(text)
	if err == nil && !(r.PerM2 > 0) {
		err = &material.InputError{Text: ingest.Quoted(text) + " is a rate of nothing", Hint: "leave the rate out where the label states it"}
	}
	return &r, err
}

func asInterval(text string) (time.Duration, error) {
	d, err := quantity(material.Quantity.Duration)(text)
	if err == nil && d < 12*time.Hour {
		return 0, &material.InputError{Text: ingest.Quoted(text) + " is too short between visits", Hint: "write such as 3.5 d or 4 weeks"}
	}
	return d, err
}

func asHeight(text string) (Height, error) {
	if text == "top" {
		return Height{Top: true}, nil
	}
	of, err := quantity(material.Quantity.Length)(text)
	if err == nil && !(of > 0 && of <= 1) {
		err = &material.InputError{Text: ingest.Quoted(text) + " is no height of a lawn", Hint: "write such as 3 in, or top for the top of the grass's range"}
	}
	return Height{Of: geo.Length(of)}, err
}

func asDate(text string) (time.Time, error) {
	t, err := time.Parse(time.DateOnly, strings.TrimSpace(text))
	if err != nil {
		return t, errors.New(ingest.Quoted(text) + " is no day such as 2026-04-15")
	}
	if t.Year() < FirstYear || t.Year() > LastYear {
		return t, fmt.Errorf("%s lies in no year from %d to %d", ingest.Quoted(text), FirstYear, LastYear)
	}
	return t, nil
}
