package program

import (
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/zones"
)

// A zone that was divided goes on to mean its parts; one that a person traced
// beside it is no part of it.
func TestNamesOfParts(t *testing.T) {
	on := yard()
	on.Zones = nil
	for _, z := range [][2]string{
		{"zone/back-north", "Back, north"}, {"zone/back-south-full", "Back, south, full sun"}, {"zone/back-south-part-2", "Back, south, part sun"},
		{"zone/side", "Side"}, {"zone/side-east", "Side, east"}, {"zone/front", "Front"}, {"zone/front-yard", "Front yard"}, {"w1", "Lawn, west"},
	} {
		on.Zones = append(on.Zones, zones.ZoneMeasure{ID: z[0], Name: z[1], Letter: "Z" + z[0], Apply: true, AreaM2: 100})
	}
	for _, tt := range []struct {
		name string
		want []string
		hint string // "" = nothing is told
	}{
		{"back", []string{"zone/back-north", "zone/back-south-full", "zone/back-south-part-2"}, ""},
		{"zone/back", []string{"zone/back-north", "zone/back-south-full", "zone/back-south-part-2"}, ""},
		{"Back", []string{"zone/back-north", "zone/back-south-full", "zone/back-south-part-2"}, ""},
		{"back-south", []string{"zone/back-south-full", "zone/back-south-part-2"}, ""},
		{"side", []string{"zone/side"}, ""},
		{"front", []string{"zone/front"}, ""},
		{"lawn", nil, `its zones are "Back, north", `},
		{"bak", nil, "did you mean back?"},
		{"frnt", nil, "did you mean front?"},
	} {
		p := read(t, "program: p\nsteps:\n  - {id: a, does: core, where: {zone: "+tt.name+"}}\n")
		plan := lay(t, p, on, Occasion{})
		var got []string
		for _, z := range stepOf(t, plan, "a").Zones {
			got = append(got, z.ID)
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%s is %v, want %v", tt.name, got, tt.want)
		}
		hints := ""
		for _, problem := range plan.Problems {
			if problem.Code == "zone_unknown" {
				hints += problem.Hint
			}
		}
		if (hints == "") != (tt.hint == "") || !strings.HasPrefix(hints, tt.hint) {
			t.Errorf("%s: hint %q, want %q", tt.name, hints, tt.hint)
		}
	}
}
