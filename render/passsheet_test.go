package render

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/program"
)

// inTwoPasses is a program of which every step that is spread is done in two
// passes.
func inTwoPasses(p *program.Program) *program.Program {
	twice := *p
	twice.Steps = slices.Clone(p.Steps)
	for i := range twice.Steps {
		if twice.Steps[i].Spreadable() {
			twice.Steps[i].Passes = 2
		}
	}
	return &twice
}

// Each pass has a sheet with its own lanes, and those of no other; the page has
// them on layers, and all of them to tick.
func TestEachPassHasItsLanes(t *testing.T) {
	p, m, season := alderLane(t)
	plan := planned(t, p, m, inTwoPasses(season), time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC))
	spread := walkedFor(t, p, spreadWork(t, 3.048, lanes.Single))
	i := slices.IndexFunc(plan.Steps, func(s program.StepPlan) bool { return s.Step.ID == "spring-feed" })
	walked, err := spread(&plan.Steps[i])
	if err != nil || len(walked) != 2 {
		t.Fatal(len(walked), err)
	}
	o := PacketOptions{Lanes: spread, Steps: []string{"spring-feed"}}
	sheets, err := Packet(p, m, plan, o)
	if err != nil {
		t.Fatal(err)
	}
	page, file, err := Page(p, m, plan, PageOptions{PacketOptions: o})
	if err != nil {
		t.Fatal(err)
	}
	drawn := []*Sheet{sheetOf(t, sheets, "step-spring-feed"), sheetOf(t, sheets, "step-spring-feed-pass-2")}
	for pass, w := range walked {
		for _, lane := range w.Plan.Lanes {
			if !lane.Spreading {
				continue
			}
			name := fmt.Sprintf("lane-%d", lane.N)
			if group(drawn[pass].Elements, name) == nil || group(drawn[1-pass].Elements, name) != nil {
				t.Errorf("%s of pass %d is not on its sheet, or on the other too", name, pass+1)
			}
			in := group(page.Elements, fmt.Sprintf("part%d-lanes%s", 1, passGroup(pass+1)))
			if in == nil || group(in, "part1-"+name) == nil {
				t.Errorf("%s of pass %d is not in its layer of the page", name, pass+1)
			}
			if !strings.Contains(string(file), fmt.Sprintf(`<b>%d</b> pass %d, `, lane.N, pass+1)) {
				t.Errorf("%s of pass %d is not to be ticked", name, pass+1)
			}
		}
	}
	if !strings.Contains(string(file), "Spread lanes, pass 2") {
		t.Error("no layer of the page is that of pass 2")
	}
}

func sheetOf(t *testing.T, sheets []*Sheet, id string) *Sheet {
	t.Helper()
	i := slices.IndexFunc(sheets, func(s *Sheet) bool { return s.ID == id })
	if i < 0 {
		t.Fatalf("no sheet %s", id)
	}
	return sheets[i]
}
