package main

import (
	"fmt"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/geo/track"
	"example.org/turfplat/zones"
)

// walkAccount is the machine form of what became of a file of tracks. Steps
// and rules are there if they were asked for.
type walkAccount struct {
	Source  string        `json:"source"`
	Format  string        `json:"format"`
	Fixes   int           `json:"fixes"`
	Rings   []ringAccount `json:"rings"`
	Drawn   int           `json:"drawn"`
	LeftOut int           `json:"left_out"`
	Steps   []stepAccount `json:"steps,omitempty"`
	Rules   []ruleAccount `json:"rules,omitempty"`
}

type ringAccount struct {
	ID         string     `json:"id"`
	Name       string     `json:"name"`
	Kind       zones.Kind `json:"kind"` // "" for a hole
	Inside     string     `json:"inside"`
	AreaM2     float64    `json:"area_m2"`
	SigmaM2    float64    `json:"sigma_m2"`
	CI95M2     float64    `json:"ci95_m2"`
	PerimeterM float64    `json:"perimeter_m"`
	EdgeSigmaM float64    `json:"edge_sigma_m"`
	FixSigmaM  float64    `json:"fix_sigma_m"`
	Assumed    bool       `json:"sigma_assumed"`
	Class      string     `json:"class"`
	Laps       int        `json:"laps"`
	FixesUsed  int        `json:"fixes_used"`
	Side       string     `json:"side"` // "" = not stated
	OffsetM    float64    `json:"offset_m"`
	Strip      bool       `json:"strip"`
	WheelIt    bool       `json:"wheel_it"`
}

func (w *walks) account(t zones.Trail) walkAccount {
	a := walkAccount{Source: t.Source, Format: t.Format, Fixes: t.Fixes, Rings: []ringAccount{}, Drawn: t.Drawn, LeftOut: t.LeftOut}
	for _, r := range t.Rings {
		a.Rings = append(a.Rings, ringAccount{
			ID: r.ID, Name: r.Name, Kind: r.Kind, Inside: r.In,
			AreaM2: float64(r.Area), SigmaM2: float64(r.Sigma), CI95M2: float64(r.CI95), PerimeterM: float64(r.Perimeter),
			EdgeSigmaM: float64(r.EdgeSigma), FixSigmaM: float64(r.Noise.Sigma), Assumed: r.Assumed,
			Class: string(r.Class), Laps: r.Laps, FixesUsed: r.Used, Side: zones.SideWord(w.Side), OffsetM: float64(w.Offset),
			Strip: r.Strip, WheelIt: r.WheelIt,
		})
	}
	if w.explain {
		a.Steps, a.Rules = steps(t), rules()
	}
	return a
}

// lines tell of the rings of a trail, a line each.
func (w *walks) lines(f figures, t zones.Trail) []string {
	var lines []string
	for _, r := range t.Rings {
		lines = append(lines, fmt.Sprintf("%s, %s: %s %s +/- %s %s (95 %%), 1 sigma %.1f %%, class %c, walked %s, %d of %s used, %s, %s%s",
			r.Name, part(r), f.Area(float64(r.Area), float64(r.CI95)), f.areaUnit(), f.PlusMinus(float64(r.CI95)), f.areaUnit(),
			100*float64(r.Sigma)/float64(r.Area), r.Class, plural(r.Laps, "lap"), r.Used, plural(t.Fixes, "fix"),
			scatter(f, r), w.edge(f, r), wheel(r)))
	}
	if t.Drawn > 0 {
		lines = append(lines, fmt.Sprintf("%s: %s taken as traced", t.Source, plural(t.Drawn, "drawn ring")))
	}
	if t.LeftOut > 0 {
		lines = append(lines, fmt.Sprintf("%s: %s left out", t.Source, plural(t.LeftOut, "ring")))
	}
	return lines
}

// part is what a ring was taken for.
func part(r zones.WalkedRing) string {
	switch {
	case r.Kind == "":
		return "hole in " + r.In
	case r.In != "":
		return string(r.Kind) + " inside " + r.In
	}
	return string(r.Kind)
}

func scatter(f figures, r zones.WalkedRing) string {
	said := "fixes err by"
	if r.Assumed {
		said = "assumed that fixes err by"
	}
	return fmt.Sprintf("%s %s", said, f.shortLength(float64(r.Noise.Sigma)))
}

// edge says where the edge was taken to be.
func (w *walks) edge(f figures, r zones.WalkedRing) string {
	switch {
	case w.Side == track.NotStated:
		return "taken as walked on the edge"
	case w.Side == track.OnEdge:
		return "walked on the edge"
	}
	way := "outwards"
	if (w.Side == track.Outside) != r.Hole {
		way = "inwards"
	}
	return fmt.Sprintf("edge moved %s %s", f.shortLength(float64(w.Offset)), way)
}

func wheel(r zones.WalkedRing) string {
	switch {
	case r.WheelIt && r.Strip:
		return ": a strip too narrow for it, wheel it"
	case r.WheelIt:
		return ": wheel it"
	}
	return ""
}

// question asks a walker who has not said on which side of the edge he walked,
// with what it would change of the largest ring; nil if there is nothing to
// ask.
func (s *surveyor) question(t zones.Trail) *ingest.Problem {
	r, found := t.Largest()
	if !found || s.walks.Side != track.NotStated {
		return nil
	}
	// A receiver in the hand on the side of the lawn; common practice, no
	// source.
	f, away, told := figuresIn(s.units), geo.Length(0.3), "0.3 m"
	if !f.Metric() {
		away, told = geo.FootM, "1 ft"
	}
	area, gain := float64(r.Area), float64(r.Gain(away))
	return &ingest.Problem{
		Severity: ingest.Note, Code: "offset_question", Place: ingest.Place{Source: t.Source, Feature: -1, Label: r.Name},
		Text: fmt.Sprintf("taken as walked on the edge, nothing was added: had you kept %s inside of it, its %s %s would be %s %s more (%.1f %%)",
			told, f.Area(area, float64(r.CI95)), f.areaUnit(), f.Area(gain, gain/10), f.areaUnit(), 100*gain/area),
		Hint: fmt.Sprintf("say where you walked: --side edge, or how far from it and on which side, such as --offset %s --side inside", strings.ReplaceAll(told, " ", "")),
	}
}
