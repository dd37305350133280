package program

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/soil"
)

// yard is an invented property in the north.
func yard() Property {
	zone := func(id, species, exposure string, m2 float64) zones.ZoneMeasure {
		return zones.ZoneMeasure{ID: "zone/" + id, Name: id, Letter: strings.ToUpper(id[:1]), Species: species, Exposure: exposure, Apply: true, AreaM2: m2}
	}
	bank := zone("bank", "tall fescue", "full", 40)
	bank.SlopePercent = 33
	scarp := zone("scarp", "tall fescue", "full", 30)
	scarp.SlopePercent = 45
	pond := zone("pond edge", "tall fescue", "full", 15)
	pond.Apply = false
	front := zone("front", "Kentucky bluegrass", "full", 250)
	front.Watered = true
	return Property{ID: "yard", Name: "Yard (invented)", Latitude: 40, Units: zones.US, Zones: []zones.ZoneMeasure{
		front, zone("back", "tall fescue", "part", 400), zone("couch", "bermudagrass", "full", 300),
		zone("shade", "tall fescue", "shade", 80), bank, scarp, pond,
	}}
}

// read reads a program that is right.
func read(t testing.TB, text string) *Program {
	t.Helper()
	p, problems := Read(strings.NewReader(text), "season.yaml")
	for _, problem := range problems {
		t.Fatal(problem, problem.Hint)
	}
	return p
}

func day(t testing.TB, text string) time.Time {
	t.Helper()
	if text == "" {
		return time.Time{}
	}
	d, err := time.Parse(time.DateOnly, text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// station reads a log of one station.
func station(t testing.TB, log []byte) *soil.Station {
	t.Helper()
	l, problems := soil.ReadLog(bytes.NewReader(log), "soil.csv", soil.Options{})
	if l == nil {
		t.Fatal(problems)
	}
	s, err := l.Station("")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// lay plans a program on a property.
func lay(t testing.TB, p *Program, on Property, at Occasion) *Plan {
	t.Helper()
	if at.Year == 0 && at.Today.IsZero() {
		at.Year = 2026
	}
	plan, err := p.Plan(on, at)
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

// stepOf finds a step of a plan.
func stepOf(t testing.TB, p *Plan, id string) *StepPlan {
	t.Helper()
	for i := range p.Steps {
		if p.Steps[i].Step.ID == id {
			return &p.Steps[i]
		}
	}
	t.Fatalf("no step %s", id)
	return nil
}
