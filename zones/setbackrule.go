package zones

import (
	_ "embed"
	"fmt"
	"strconv"
	"strings"

	"example.org/turfplat/geo"
)

// setbacksCSV holds how far from water, drains and wells nothing is applied, by
// region, each row with its source and its date. The rows without a region are
// proposals that hold where a region has none of its own.
//
//go:embed setbacks.csv
var setbacksCSV string

var setbackRules = mustReadRows("setbacks.csv", setbacksCSV, readSetback)

// A shoreRule is how far from water, a drain or a well nothing may be applied.
// Rules of law change: verify them locally.
type shoreRule struct {
	region      string  // "" = a proposal, no law
	near        string  // water, drain or well
	setback     float64 // m
	reduced     float64 // m, for those named; 0 = for nobody
	reducedFor  string
	feet        string // the setback as the rule has it
	reducedFeet string
	dated       string // when the source had it so; "" = not known
	source      string
}

func readSetback(cells []string) (shoreRule, bool) {
	feet, err1 := strconv.ParseFloat(cells[2], 64)
	less, err2 := parseSize("reduced_ft", cells[3])
	return shoreRule{
		region: cells[0], near: cells[1], setback: feet * geo.FootM, reduced: less * geo.FootM,
		feet: cells[2], reducedFeet: cells[3], reducedFor: cells[4], dated: cells[5], source: cells[6],
	}, err1 == nil && err2 == nil && feet > less && nearWords[cells[1]] != [2]string{} && cells[6] != ""
}

// SetbackRegions lists the regions that have setback rules of their own.
func SetbackRegions() []string {
	var regions []string
	for _, r := range setbackRules {
		if n := len(regions); r.region != "" && (n == 0 || regions[n-1] != r.region) {
			regions = append(regions, r.region)
		}
	}
	return regions
}

// SetbackRegion returns a region by its name in any case; false if it has no
// rules of its own.
func SetbackRegion(name string) (string, bool) {
	name = strings.TrimSpace(name)
	for _, r := range setbackRules {
		if r.region != "" && strings.EqualFold(r.region, name) {
			return r.region, true
		}
	}
	return "", false
}

// ruleOf is the rule of a region, else the proposal.
func ruleOf(region, near string) shoreRule {
	var rule shoreRule
	for _, r := range setbackRules {
		if r.near == near && (r.region == region || r.region == "") {
			rule = r // the proposals come first
		}
	}
	return rule
}

// String says what the rule is, whose, and as of when.
func (r shoreRule) String() string {
	text := fmt.Sprintf("nothing is applied within %s ft (%.1f m) of %s", r.feet, r.setback, nearWords[r.near][1])
	if r.reduced > 0 {
		text += fmt.Sprintf(", %s ft for %s", r.reducedFeet, r.reducedFor)
	}
	switch {
	case r.region == "":
		return text + ": " + r.source
	case r.dated == "":
		return text + ": " + r.region + ", " + r.source + ", not dated"
	}
	return text + ": " + r.region + ", " + r.source + ", as of " + r.dated
}
