package render

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/program"
)

// The hopper is filled with what the lanes take, and what is told of it is one
// scheme: so much before which lane, no more than needed at last.
func TestFillTable(t *testing.T) {
	p, m := surveyed(t, threeLawns().geoJSON(t), "three")
	w := spreadWork(t, 2.5, lanes.Single)
	w.Units = "us"
	w.Load = &lanes.Load{Step: "spring-feed", Material: "feed 25-0-10", Rate: material.Rate{By: material.Weight, PerM2: 0.05}}
	w.Filling = 300
	d, err := laneDrawing(t, w)(p, m, MapOptions{Paper: A3})
	if err != nil {
		t.Fatal(err)
	}
	l := d.subject.(laneMap).lanes
	table := l.fillTable(len(l.plan.Fills)).(table)
	const pound = 0.45359237 // kg
	var put float64
	for i, f := range l.plan.Fills {
		put += f.Ground
		row := table.rows[i]
		if !strings.HasSuffix(row[0], fmt.Sprintf("lane %d", f.Lane)) || row[1] != fmt.Sprintf("%.1f lb", 0.05*f.Ground/pound) {
			t.Errorf("row %d is %q of %+v", i, row, f)
		}
	}
	if len(l.plan.Fills) < 3 || !(put < l.sum.GroundM2*(1+1e-9) && put > l.sum.GroundM2*(1-1e-9)) {
		t.Errorf("%d fillings for %.3f m2, the lanes serve %.3f", len(l.plan.Fills), put, l.sum.GroundM2)
	}
	want := fmt.Sprintf("%.1f lb", 0.05*(l.sum.GroundM2+l.sum.ByHandM2)/pound)
	if got := table.totals[0][1]; got != want {
		t.Errorf("%s in all, want %s", got, want)
	}
	if l.fillTable(len(l.plan.Fills)-1) != nil {
		t.Error("a table longer than there is room for")
	}
}

// With lanes a step's sheet tells one filling scheme, that of the lanes, and
// nothing of zones done one after the other; without, it does.
func TestStepWithLanesFillsForThem(t *testing.T) {
	for _, walked := range []bool{false, true} {
		t.Run(fmt.Sprint("lanes ", walked), func(t *testing.T) {
			s := feedWithHopper(t, walked)
			heads := fmt.Sprint(s.quantityTable().(table).columns)
			if strings.Contains(heads, "Left") == walked {
				t.Errorf("columns are %s", heads)
			}
			hopper := s.hopperTable().(table)
			if got := strings.HasPrefix(hopper.rows[0][0], "before lane 1"); got != walked {
				t.Errorf("the hopper is filled: %q", hopper.rows)
			}
			setting := slices.IndexFunc(s.settingRows(), func(r []string) bool { return r[0] == "Setting" })
			if text := s.settingRows()[setting][1]; strings.Contains(text, "walked once") != walked {
				t.Errorf("the setting is %q", text)
			}
		})
	}
}

// feedWithHopper is the sheet of the sample's spring feed, whose spreader has a
// hopper.
func feedWithHopper(t *testing.T, walked bool) stepSheet {
	t.Helper()
	p, m, season := alderLane(t)
	plan := planned(t, p, m, season, time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC))
	i := slices.IndexFunc(plan.Steps, func(s program.StepPlan) bool { return s.Step.ID == "spring-feed" })
	d, err := newDraft(p, m, MapOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if !walked {
		return stepSheetOf(t, d, plan, i+1, nil)
	}
	step := plan.Steps[i].Step
	rate, _ := step.PassRate()
	ground, err := rate.Covers(season.Settings(step, 1)[0].Hopper)
	if err != nil {
		t.Fatal(err)
	}
	w := spreadWork(t, 3.048, lanes.Tight)
	w.Filling, w.Load = float64(ground), &lanes.Load{Step: step.ID, Material: step.Product.Name, Rate: rate}
	laid, err := walkedFor(t, p, w)(&plan.Steps[i])
	if err != nil {
		t.Fatal(err)
	}
	return stepSheetOf(t, d, plan, i+1, laid)
}

// stepSheetOf is the sheet of a step by its number, without codes.
func stepSheetOf(t *testing.T, d *draft, plan *program.Plan, number int, walked []StepLanes) stepSheet {
	t.Helper()
	s, err := newStepSheet(d, plan, number, false, walked)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A page has every filling of the hopper before the lane that it is for, with the
// amounts of the table.
func TestTicksHaveTheFillings(t *testing.T) {
	p, m := surveyed(t, threeLawns().geoJSON(t), "three")
	for name, load := range map[string]*lanes.Load{
		"of a product":     {Step: "spring-feed", Material: "feed 25-0-10", Rate: material.Rate{By: material.Weight, PerM2: 0.05}},
		"of what is known": nil,
	} {
		for _, filling := range []float64{300, 20} { // the smaller one ends on lanes
			w := spreadWork(t, 2.5, lanes.Single)
			w.Units, w.Load, w.Filling = "us", load, filling
			d, err := laneDrawing(t, w)(p, m, MapOptions{Paper: A3})
			if err != nil {
				t.Fatal(err)
			}
			l := d.subject.(laneMap).lanes
			table := l.fillTable(len(l.plan.Fills)).(table)
			told := 0
			for _, tick := range l.ticks() {
				for _, text := range tick.Fills {
					row := table.rows[told]
					told++
					if !strings.HasPrefix(text, row[0]) || !strings.HasSuffix(row[0], fmt.Sprintf(" lane %d", tick.N)) || !strings.Contains(text, " "+row[1]) || !strings.Contains(text, row[2]) {
						t.Errorf("%s, fillings for %g m2: lane %d is told %q, the table has %q", name, filling, tick.N, text, row)
					}
				}
			}
			if told != len(l.plan.Fills) || told < 3 {
				t.Errorf("%s: %d of %d fillings are told", name, told, len(l.plan.Fills))
			}
			if on := slices.ContainsFunc(l.plan.Fills, func(f lanes.Filling) bool { return f.On }); on != (filling == 20) {
				t.Errorf("%s, fillings for %g m2: some end on lanes: %v", name, filling, on)
			}
		}
	}
}
