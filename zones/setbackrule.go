package zones

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

var (
	// setbacksCSV holds how far from water, drains and wells nothing is
	// applied, by region, each row with its source and its date. The rows
	// without a region are proposals that hold where a region has none of its
	// own.
	//
	//go:embed setbacks.csv
	setbacksCSV string
	// shoresCSV says what is water, a drain or a well, the first row that fits
	// deciding.
	//
	//go:embed shores.csv
	shoresCSV string

	setbackRules = mustReadSetbacks(setbacksCSV)
	shores       = mustReadShores(shoresCSV)
)

// A SetbackRule is how far from water, a drain or a well nothing may be
// applied. Rules of law change: verify them locally.
type SetbackRule struct {
	Region   string  // "" = a proposal, no law
	Near     string  // water, drain or well
	Setback  float64 // m
	Reduced  float64 // m, for those named; 0 = for nobody
	For      string  // whom the reduced one is for
	Dated    string  // when the source had it so; "" = not known
	Source   string
	setFeet  string // as the rule is written
	lessFeet string
}

// mustReadSetbacks panics on a malformed row: the table is part of the program.
func mustReadSetbacks(table string) []SetbackRule {
	records, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("zones: setbacks.csv: %v", err))
	}
	var rules []SetbackRule
	for _, r := range records[1:] {
		feet, err1 := strconv.ParseFloat(r[2], 64)
		less, err2 := parseSize("reduced_ft", r[3])
		if err1 != nil || err2 != nil || !(feet > less) || nearWords[r[1]] == [2]string{} || r[6] == "" {
			panic(fmt.Sprintf("zones: setbacks.csv: bad row %q", r))
		}
		rules = append(rules, SetbackRule{
			Region: r[0], Near: r[1], Setback: feet * geo.FootM, Reduced: less * geo.FootM,
			For: r[4], Dated: r[5], Source: r[6], setFeet: r[2], lessFeet: r[3],
		})
	}
	return rules
}

// nearWords are the name of what setbacks keep away from, and the name in a
// sentence.
var nearWords = map[string][2]string{
	"water": {"Water", "water"}, "drain": {"Drain", "a drain or ditch"}, "well": {"Well", "a well"},
}

type shore struct {
	kind Kind
	tags []tagMatch // none = any
	near string
}

// mustReadShores panics on a malformed row: the table is part of the program.
func mustReadShores(table string) []shore {
	records, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("zones: shores.csv: %v", err))
	}
	var rows []shore
	for _, r := range records[1:] {
		row := shore{kind: Kind(r[0]), near: r[2]}
		if r[1] != "" {
			row.tags, err = parseTags(r[1])
		}
		if err != nil || !row.kind.Known() || nearWords[row.near] == [2]string{} {
			panic(fmt.Sprintf("zones: shores.csv: bad row %q", r))
		}
		rows = append(rows, row)
	}
	return rows
}

// nearOf says whether an object is water, a drain or a well; "" if it is none.
func nearOf(kind Kind, p ingest.Properties) string {
	for _, row := range shores {
		if row.kind == kind && fitAll(row.tags, p) {
			return row.near
		}
	}
	return ""
}

// SetbackRegions lists the regions that have setback rules of their own.
func SetbackRegions() []string {
	var regions []string
	for _, r := range setbackRules {
		if n := len(regions); r.Region != "" && (n == 0 || regions[n-1] != r.Region) {
			regions = append(regions, r.Region)
		}
	}
	return regions
}

// SetbackRegion returns a region by its name in any case; false if it has no
// rules of its own.
func SetbackRegion(name string) (string, bool) {
	for _, region := range SetbackRegions() {
		if strings.EqualFold(region, strings.TrimSpace(name)) {
			return region, true
		}
	}
	return "", false
}

// setbackRule is the rule of a region, else the proposal.
func setbackRule(region, near string) SetbackRule {
	var rule SetbackRule
	for _, r := range setbackRules {
		if r.Near == near && (r.Region == region || r.Region == "") {
			rule = r // the proposals come first
		}
	}
	return rule
}

// String says what the rule is, whose, and as of when.
func (r SetbackRule) String() string {
	text := fmt.Sprintf("nothing is applied within %s ft (%.1f m) of %s", r.setFeet, r.Setback, nearWords[r.Near][1])
	if r.Reduced > 0 {
		text += fmt.Sprintf(", %s ft for %s", r.lessFeet, r.For)
	}
	switch {
	case r.Region == "":
		return text + ": " + r.Source
	case r.Dated == "":
		return text + ": " + r.Region + ", " + r.Source + ", not dated"
	}
	return text + ": " + r.Region + ", " + r.Source + ", as of " + r.Dated
}
