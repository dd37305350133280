package program

import (
	_ "embed"
	"slices"
	"strconv"
	"strings"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/tables"
)

var (
	// rulesCSV holds what must not meet: a row a rule, with its severity where no
	// law says otherwise, its figure, and what it rests on.
	//
	//go:embed rules.csv
	rulesCSV string
	// lawsCSV holds what law says of fertilizers, by region. A figure of law
	// blocks. Laws change: verify them locally.
	//
	//go:embed laws.csv
	lawsCSV string
	// seedWaitsCSV holds how long seed must wait after a pre-emergent, by its
	// active ingredient; the row without one is for all others.
	//
	//go:embed seedwaits.csv
	seedWaitsCSV string
	// periodsCSV holds parts of the year, written for the north.
	//
	//go:embed periods.csv
	periodsCSV string

	rules     = mustReadRules()
	laws      = mustReadLaws()
	seedWaits = mustReadSeedWaits()
	periods   = mustReadPeriods()
)

// Severity is how much a verdict weighs.
type Severity string

// The severities, mildest first. Only a Block holds a step back.
const (
	Note  Severity = "note"
	Warn  Severity = "warn"
	Block Severity = "block"
)

// A rule is a row of the table of what must not meet.
type rule struct {
	name     string
	severity Severity
	figure   material.Quantity // zero if the rule has none
	source   string
}

// A law is what a region says in place of a rule.
type law struct {
	region, rule string
	figure       material.Quantity
	window       Window // of a blackout
	dated        string
	source       string
}

// A seedWait is how many weeks seed waits after an active ingredient.
type seedWait struct {
	active          string
	broadcast, slit int
	allowed         bool // may be used at seeding
	source          string
}

func mustRows(name, text string, columns ...string) [][]string {
	return tables.BuiltIn("program: "+name, text, columns...)
}

func must[T any](v T, err error) T {
	if err != nil {
		panic("program: " + err.Error()) // part of the program
	}
	return v
}

func mustFigure(text string) material.Quantity {
	if text == "" {
		return material.Quantity{}
	}
	return must(material.Parse(text))
}

func mustReadRules() map[string]rule {
	table := make(map[string]rule)
	for _, r := range mustRows("rules.csv", rulesCSV, "rule", "severity", "figure", "source") {
		table[r[0]] = rule{r[0], Severity(r[1]), mustFigure(r[2]), r[3]}
	}
	return table
}

func mustReadLaws() []law {
	var table []law
	for _, r := range mustRows("laws.csv", lawsCSV, "region", "rule", "figure", "from", "to", "dated", "source") {
		if len(zones.RegionsAround(r[0])) == 0 {
			panic("program: laws.csv: no such region as " + r[0]) // part of the program
		}
		l := law{region: r[0], rule: r[1], figure: mustFigure(r[2]), dated: r[5], source: r[6]}
		if r[3] != "" {
			l.window = Window{must(asMonthDay(r[3])), must(asMonthDay(r[4]))}
		}
		table = append(table, l)
	}
	return table
}

func mustReadSeedWaits() []seedWait {
	var table []seedWait
	for _, r := range mustRows("seedwaits.csv", seedWaitsCSV, "active", "broadcast_weeks", "slit_weeks", "allowed", "source") {
		w := seedWait{active: r[0], allowed: r[3] == "yes", source: r[4]}
		if !w.allowed {
			w.broadcast, w.slit = must(strconv.Atoi(r[1])), must(strconv.Atoi(r[2]))
		}
		table = append(table, w)
	}
	return table
}

// A period is a part of the year.
type period struct {
	window Window
	source string
}

func mustReadPeriods() map[string]period {
	table := make(map[string]period)
	for _, r := range mustRows("periods.csv", periodsCSV, "period", "from", "to", "source") {
		table[r[0]] = period{Window{must(asMonthDay(r[1])), must(asMonthDay(r[2]))}, r[3]}
	}
	return table
}

// seedWaitAfter is the row of an active ingredient, else that for all others.
func seedWaitAfter(active string) seedWait {
	for _, w := range seedWaits {
		if w.active != "" && strings.EqualFold(w.active, strings.TrimSpace(active)) {
			return w
		}
	}
	return seedWaits[slices.IndexFunc(seedWaits, func(w seedWait) bool { return w.active == "" })]
}

// lawsOf are what law says under a rule in a region: that of the region itself
// and of those that it lies in, all of which hold.
func lawsOf(region, rule string) []law {
	var hold []law
	for _, around := range zones.RegionsAround(region) {
		for _, l := range laws {
			if l.region == around && l.rule == rule {
				hold = append(hold, l)
			}
		}
	}
	return hold
}

// lawOf is the law under a rule that leaves least.
func lawOf(region, rule string) (strictest law, ok bool) {
	for _, l := range lawsOf(region, rule) {
		if !ok || l.figure.SI() < strictest.figure.SI() {
			strictest, ok = l, true
		}
	}
	return strictest, ok
}

// hasLaw reports whether any law of fertilizers is known that holds in a region.
func hasLaw(region string) bool {
	around := zones.RegionsAround(region)
	return slices.ContainsFunc(laws, func(l law) bool { return slices.Contains(around, l.region) })
}

func (l law) cited() string {
	if l.dated == "" {
		return l.source + ", not dated; verify locally"
	}
	return l.source + ", as of " + l.dated + "; verify locally"
}

func asRule(text string) (string, error) {
	names := []string{"blackout", "p_once", "p_year"}
	for name := range rules {
		names = append(names, name)
	}
	slices.Sort(names)
	return oneOf(names)(text)
}

func asRegion(text string) (string, error) {
	region, _ := zones.FindRegion(text)
	if hasLaw(region) {
		return region, nil
	}
	lawful := slices.DeleteFunc(zones.Regions(), func(name string) bool { return !hasLaw(name) })
	return "", &material.InputError{Text: ingest.Quoted(text) + " has no law of fertilizers here", Hint: "there are those of " + strings.Join(lawful, ", ") + "; elsewhere look the law up"}
}
