package zones

import (
	_ "embed"
	"fmt"
	"strconv"

	"example.org/turfplat/geo"
)

// setbacksCSV holds how far from water, drains and wells nothing is applied, by
// region, each row with its source and its date. The rows without a region are
// proposals that hold where a region has none of its own.
//
//go:embed setbacks.csv
var setbacksCSV string

var setbackRules = mustReadRows("setbacks.csv", setbacksCSV, readSetback,
	"region", "near", "setback_ft", "reduced_ft", "reduced_for", "dated", "source")

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
	rule := shoreRule{
		region: cells[0], near: cells[1], setback: feet * geo.FootM, reduced: less * geo.FootM,
		feet: cells[2], reducedFeet: cells[3], reducedFor: cells[4], dated: cells[5], source: cells[6],
	}
	return rule, err1 == nil && err2 == nil && feet > less && nearWords[rule.near] != [2]string{} && rule.source != "" && (rule.region == "" || known(rule.region))
}

// ruleOf is the rule of a region, else of the nearest one that it lies in, else
// the proposal.
func ruleOf(region, near string) shoreRule {
	for {
		for _, r := range setbackRules {
			if r.near == near && r.region == region {
				return r
			}
		}
		if region == "" {
			return shoreRule{}
		}
		region = regionAround(region)
	}
}

// law reports whether the rule is a region's, and no proposal.
func (r shoreRule) law() bool { return r.region != "" }

// yields says what overrides the rule.
func (r shoreRule) yields() string {
	if r.law() {
		return "setback_m on an object may ask for more, and for less if setback_reason says why"
	}
	return "setback_m on an object, or --region, overrides a rule"
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
