package program

import (
	"math"
	"strings"
	"testing"
)

const calibrated = `program: p
calibrations:
  - {material: feed, spreader: walk-behind, hopper: 40 lb, runs: [{setting: 4, rate: 2 lb / 1000 ft2}, {setting: 6, rate: 3 lb / 1000 ft2}, {setting: 8, rate: 4 lb / 1000 ft2}]}
  - {material: feed, spreader: hand, runs: [{setting: 1, rate: 10 lb / 1000 ft2}, {setting: 2, rate: 12 lb / 1000 ft2}, {setting: 3, rate: 15 lb / 1000 ft2}]}
steps:
  - {id: feed, does: spread, material: feed, rate: RATE, product: {grade: 25-0-10}}
  - {id: lime, does: spread, material: lime, rate: 20 lb / 1000 ft2}
  - {id: label, does: spread, use: pre_emergent, material: granules}
`

func TestSettings(t *testing.T) {
	read := func(rate string) *Program {
		p, problems := Read(strings.NewReader(strings.Replace(calibrated, "RATE", rate, 1)), "p.yaml")
		if p == nil {
			t.Fatal(problems)
		}
		return p
	}
	// Rate and setting stand in proportion, so the line goes through all points:
	// 0.75 lb N of 25 % is 3 lb.
	p := read("0.75 lb N / 1000 ft2")
	settings := p.Settings(&p.Steps[0], 1)
	if len(settings) != 2 || settings[0].Err != nil || math.Abs(settings[0].Number-6) > 1e-9 || settings[0].Spreader != "walk-behind" {
		t.Errorf("settings are %+v, want 6 on the walk-behind", settings)
	}
	if half := p.Settings(&p.Steps[0], 0.6); half[0].Err != nil || math.Abs(half[0].Number-3.6) > 1e-9 {
		t.Errorf("six tenths of the rate take %+v, want 3.6", half)
	}
	if math.Abs(settings[0].Hopper.Size-40*0.45359237) > 1e-9 {
		t.Errorf("the hopper holds %+v", settings[0].Hopper)
	}
	if settings[1].Err == nil {
		t.Error("3 lb is far below what the hand spreader was tried at, yet it has a setting")
	}
	for _, i := range []int{1, 2} {
		if got := p.Settings(&p.Steps[i], 1); len(got) > 0 {
			t.Errorf("step %s has settings %+v", p.Steps[i].ID, got)
		}
	}
}

func TestCalibrationsThatAreWrong(t *testing.T) {
	steps := "\nsteps: [{id: feed, does: spread, material: feed, rate: 3 lb / 1000 ft2}]\n"
	runs := "runs: [{setting: 4, rate: 2 lb / 1000 ft2}, {setting: 6, rate: 3 lb / 1000 ft2}, {setting: 8, rate: 4 lb / 1000 ft2}]"
	for _, tt := range []struct{ name, calibration, want string }{
		{"no material", "{spreader: s, " + runs + "}", "the calibration has no material"},
		{"no runs", "{material: feed, spreader: s}", "the calibration has no runs"},
		{"too few runs", "{material: feed, spreader: s, runs: [{setting: 4, rate: 2 lb / 1000 ft2}]}", "1 points make no calibration"},
		{"less from wider settings", "{material: feed, spreader: s, runs: [{setting: 4, rate: 4 lb / 1000 ft2}, {setting: 6, rate: 3 lb / 1000 ft2}, {setting: 8, rate: 2 lb / 1000 ft2}]}", "no setting that gives more"},
		{"setting of nothing", "{material: feed, spreader: s, runs: [{setting: 0, rate: 2 lb / 1000 ft2}]}", "is no setting above 0"},
		{"rate without a unit", "{material: feed, spreader: s, runs: [{setting: 4, rate: 2}]}", "without a unit"},
		{"other material", "{material: fead, spreader: s, " + runs + "}", "did you mean feed?"},
		{"hopper of nothing", "{material: feed, spreader: s, hopper: 0 lb, " + runs + "}", "a hopper that holds nothing"},
		{"not a mapping", "feed", "a calibration must hold keys"},
	} {
		p, problems := Read(strings.NewReader("program: p\ncalibrations: ["+tt.calibration+"]"+steps), "p.yaml")
		told := ""
		for _, problem := range problems {
			told += problem.String() + " " + problem.Hint + "\n"
		}
		if p != nil || !strings.Contains(told, tt.want) {
			t.Errorf("%s: told %q, want %q", tt.name, told, tt.want)
		}
	}
}
