package program

import (
	"encoding/json"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"

	"example.org/turfplat/zones/material"
)

// A schema is as much of JSON Schema as that of program files uses.
type schema struct {
	Type       string
	Properties map[string]*schema
	Additional *bool `json:"additionalProperties"`
	Required   []string
	Items      *schema
	OneOf      []*schema
	Enum       []string
	Pattern    string
	MinItems   int
	MaxItems   int
	Minimum    *float64
	Maximum    *float64
}

func fileSchema(t *testing.T) *schema {
	t.Helper()
	var s schema
	if err := json.Unmarshal([]byte(FileSchema), &s); err != nil {
		t.Fatal(err)
	}
	return &s
}

// at follows property names into a schema, lists and choices passed through.
func (s *schema) at(names ...string) *schema {
	for _, name := range names {
		for s.Properties == nil {
			switch {
			case s.Items != nil:
				s = s.Items
			case s.OneOf != nil:
				s = s.OneOf[0]
			default:
				return &schema{}
			}
		}
		if s = s.Properties[name]; s == nil {
			return &schema{}
		}
	}
	for s.OneOf != nil && s.Enum == nil {
		s = s.OneOf[0]
	}
	return s
}

// The schema has the keys that the reader has, level by level, and no others.
func TestSchemaHasTheKeys(t *testing.T) {
	d := new(document)
	var w When
	for _, tt := range []struct {
		at   []string
		keys []key
	}{
		{nil, d.programKeys(new(Program))},
		{[]string{"calibrations"}, d.calibrationKeys(new(Calibration))},
		{[]string{"calibrations", "runs"}, d.runKeys(new(material.SettingPoint))},
		{[]string{"steps"}, d.stepKeys(new(Step))},
		{[]string{"steps", "where"}, d.whereKeys(new(Where))},
		{[]string{"steps", "when"}, d.whenKeys(&w)},
		{[]string{"steps", "when", "soil"}, d.soilKeys(new(SoilTrigger))},
		{[]string{"steps", "when", "degree_days"}, d.degreeDayKeys(new(DegreeDays))},
		{[]string{"steps", "when", "after"}, d.afterKeys(new(After))},
		{[]string{"steps", "product"}, d.productKeys(new(Product))},
		{[]string{"steps", "water_in"}, d.waterKeys(new(WaterIn))},
		{[]string{"steps", "override"}, d.overrideKeys(new(Override))},
	} {
		s := fileSchema(t).at(tt.at...)
		if s.Items != nil {
			s = s.Items
		}
		var names []string
		for _, k := range tt.keys {
			names = append(names, k.name)
		}
		slices.Sort(names)
		if got := slices.Sorted(maps.Keys(s.Properties)); !slices.Equal(got, names) {
			t.Errorf("%v: schema has %v, the reader %v", tt.at, got, names)
		}
		if s.Additional == nil || *s.Additional {
			t.Errorf("%v: the schema lets other keys pass", tt.at)
		}
	}
}

func TestSchemaHasTheWords(t *testing.T) {
	var ruleNames []string
	for name := range rules {
		ruleNames = append(ruleNames, name)
	}
	for _, tt := range []struct {
		at    []string
		words []string
	}{
		{[]string{"hemisphere"}, texts(hemispheres)}, {[]string{"season"}, texts(grassSeasons)},
		{[]string{"checked"}, texts(checks)}, {[]string{"steps", "does"}, texts(jobs)}, {[]string{"steps", "use"}, texts(uses)},
		{[]string{"steps", "method"}, texts(methods)}, {[]string{"steps", "checked"}, texts(checks)},
		{[]string{"steps", "override", "rule"}, append(ruleNames, "blackout", "p_once", "p_year")},
	} {
		got := slices.Sorted(slices.Values(fileSchema(t).at(tt.at...).Enum))
		if want := slices.Sorted(slices.Values(tt.words)); !slices.Equal(got, want) {
			t.Errorf("%v: schema has %v, the reader %v", tt.at, got, want)
		}
	}
}

func texts[T ~string](words []T) []string {
	var list []string
	for _, w := range words {
		list = append(list, string(w))
	}
	return list
}

// fits reports whether a node of YAML is what a schema allows.
func (s *schema) fits(n *yaml.Node) bool {
	if s.OneOf != nil {
		return slices.ContainsFunc(s.OneOf, func(o *schema) bool { return o.fits(n) })
	}
	switch n.Kind {
	case yaml.MappingNode:
		return s.Type == "object" && s.fitsKeys(n)
	case yaml.SequenceNode:
		return s.Type == "array" && len(n.Content) >= s.MinItems && !slices.ContainsFunc(n.Content, func(item *yaml.Node) bool { return !s.Items.fits(item) })
	}
	return s.Type != "object" && s.Type != "array" && n.Tag != "!!null" &&
		(s.Enum == nil || slices.Contains(s.Enum, n.Value)) &&
		(s.Pattern == "" || regexp.MustCompile(s.Pattern).MatchString(n.Value)) &&
		(s.Type != "integer" || n.Tag == "!!int") && (s.Type != "boolean" || n.Tag == "!!bool")
}

func (s *schema) fitsKeys(n *yaml.Node) bool {
	missing := slices.Clone(s.Required)
	for i := 0; i+1 < len(n.Content); i += 2 {
		name := n.Content[i].Value
		if s.Properties[name] == nil || !s.Properties[name].fits(n.Content[i+1]) {
			return false
		}
		missing = slices.DeleteFunc(missing, func(m string) bool { return m == name })
	}
	return len(missing) == 0
}

// What the reader takes the schema takes; of what it refuses for its form, the
// schema refuses the same.
func TestSchemaAgreesWithTheReader(t *testing.T) {
	s := fileSchema(t)
	fits := func(text string) bool {
		var n yaml.Node
		if err := yaml.Unmarshal([]byte(text), &n); err != nil || len(n.Content) == 0 {
			return false
		}
		return s.fits(n.Content[0])
	}
	for name, text := range builtIns {
		if !fits(text) {
			t.Errorf("%s does not fit", name)
		}
	}
	for _, tt := range []struct{ text string }{
		{"program: p\n"}, {"steps: []\nprogram: p\n"}, {head + "  - {does: mow}\n"}, {head + "  - {id: a, does: mows}\n"},
		{head + "  - {id: a, does: mow, passess: 2}\n"}, {head + "  - {id: a, does: mow, passes: two}\n"}, {head + "  - {id: a, does: [mow]}\n"},
		{head + "  - {id: a, does: mow, bagged: perhaps}\n"}, {head + "  - {id: a, does: mow, when: {window: 03-01}}\n"},
		{head + "  - {id: a, does: mow, override: {rule: n_once}}\n"}, {head + "  - {id: a b, does: mow}\n"},
	} {
		p, _ := Read(strings.NewReader(tt.text), "p.yaml")
		if p != nil || fits(tt.text) {
			t.Errorf("the reader takes it: %t, the schema: %t\n%s", p != nil, fits(tt.text), tt.text)
		}
	}
}
