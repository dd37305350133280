package render

import (
	"fmt"
	"slices"

	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/material"
)

// fillTable says with how much the hopper is filled for which lane, and how much
// is then in it; nothing if the hopper is not known, or there are too many rows.
func (l laneLayer) fillTable(most int) block {
	fills := l.plan.Fills
	t := table{size: tableSize, columns: []column{
		{head: "Fill the hopper" + l.ofPasses(", "), wrap: true}, {head: l.filledWith("Put in"), anchor: End}, {head: l.filledWith("In it"), anchor: End},
	}}
	for _, f := range fills {
		t.rows = append(t.rows, []string{fillWords(f), l.filling(f.Ground), l.filling(f.Full)})
	}
	if len(t.rows) > most {
		return nil
	}
	if l.byHandTold() {
		t.rows = append(t.rows, []string{"by hand", l.filling(l.sum.ByHandM2), ""})
	}
	if len(t.rows) > 1 {
		t.totals = [][]string{{"All" + l.aPass(), l.filling(l.sum.GroundM2 + l.sum.ByHandM2), ""}}
	}
	if len(fills) == 0 {
		return nil
	}
	return t
}

// fillWords tell when the hopper is filled.
func fillWords(f lanes.Filling) string {
	if f.On {
		return fmt.Sprintf("on lane %d", f.Lane)
	}
	return fmt.Sprintf("before lane %d", f.Lane)
}

// putIn tells a filling in a sentence.
func (l laneLayer) putIn(f lanes.Filling) string {
	amount, held := l.filling(f.Ground), l.filling(f.Full)
	if !l.plan.Work.Load.Known() {
		amount, held = "enough for "+l.areaText(f.Ground), "enough for "+l.areaText(f.Full)
	}
	text := fillWords(f) + " put in " + amount
	if f.On {
		text = fillWords(f) + ", once the hopper is empty, put in " + amount
	}
	if held != amount {
		text += ", which makes " + held
	}
	return text
}

// filledWith heads what goes in: of a known product, or enough for so much
// ground.
func (l laneLayer) filledWith(head string) string {
	if l.plan.Work.Load.Known() {
		return head
	}
	return head + " for " + l.figures.areaUnit()
}

// filling is what serves ground: an amount, or the ground if none is known.
func (l laneLayer) filling(m2 float64) string {
	if load := l.plan.Work.Load; load.Known() {
		return material.Figures{Units: l.figures.Units}.Amount(load.For(m2)).String()
	}
	return l.figures.Area(m2, m2/100)
}

// refillText says before or on which lanes the hopper is filled again.
func (l laneLayer) refillText() string {
	if l.plan.Refills() == 0 {
		return ""
	}
	var before, on []int
	for _, f := range l.plan.Fills[1:] {
		if f.On {
			on = append(on, f.Lane)
		} else {
			before = append(before, f.Lane)
		}
	}
	text := "once"
	if n := l.plan.Refills(); n > 1 {
		text = fmt.Sprintf("%d times", n)
	}
	if len(before) > 0 {
		text += ", before " + laneList(before)
	}
	if len(on) > 0 {
		text += ", on " + laneList(slices.Compact(on))
	}
	last := l.plan.Fills[len(l.plan.Fills)-1]
	return fmt.Sprintf("%s; one filling serves %s, the last one only %s", text, l.areaText(l.plan.Work.Filling), l.areaText(last.Ground))
}
