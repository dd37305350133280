package zones

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"example.org/turfplat/geo/ingest"
)

// farthest is the largest setback_m that is believed, in metres.
const farthest = 300

// setbackOf is how far to keep away from an object, in metres, and the rule
// that says so: nil if the file states it. 0 = no setback.
func (s *Site) setbackOf(o *Object) (near string, distance float64, rule *shoreRule) {
	if o.Kind != Water && o.Kind != Hazard {
		return "", 0, nil
	}
	near = nearOf(o.Kind, o.Feature.Properties)
	if d, stated := o.statedSetback(); stated {
		return near, d, nil
	}
	if near == "" {
		return "", 0, nil
	}
	r := ruleOf(s.region, near)
	return near, r.setback, &r
}

// statedSetback is the setback that the file gives an object, if it can be
// believed.
func (o *Object) statedSetback() (float64, bool) {
	p := o.Feature.Properties
	if d, ok := lengthOf(p, "setback"); ok {
		return d, d <= farthest
	}
	return 0, statesNone(p, "setback")
}

// checkSetbacks warns of setbacks in the file that fall short of the rule of the
// site's region.
func (s *Site) checkSetbacks() {
	for _, o := range slices.Concat(s.Objects, s.Beyond) {
		if o.Kind != Water && o.Kind != Hazard {
			continue
		}
		d, stated := o.statedSetback()
		r := ruleOf(s.region, nearOf(o.Kind, o.Feature.Properties))
		if stated && r.region != "" && d < cmp.Or(r.reduced, r.setback) {
			s.problem(ingest.Warning, "setback_short", o.Place, fmt.Sprintf("its setback of %.1f m is less than the rule: %s", d, r), "verify locally")
		}
	}
}

// tellSetbackRules says on which rules setbacks rest that the file does not
// state.
func (s *Site) tellSetbackRules(rules map[string]shoreRule) {
	hint := "setback_m on an object, or --region, overrides a rule"
	if len(rules) > 0 && s.region != "" && !hasSetbacks(s.region) {
		s.problem(ingest.Warning, "region_setbacks", s.place(), fmt.Sprintf("no setback rules of %s are known here, the proposed ones are taken", s.region), "look them up, and state setback_m on the objects")
	}
	for _, near := range slices.Sorted(maps.Keys(rules)) {
		s.problem(ingest.Note, "setback_rule", s.place(), rules[near].String()+"; verify locally", hint)
		hint = "" // once is enough
	}
}
