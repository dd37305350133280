package zones

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// farthest is the largest setback_m that is believed, in metres.
const farthest = 300

// setbackOf is how far to keep away from an object, in metres, and the rule
// that says so: nil if the file states it. 0 = no setback. The wider of law and file
// is taken, unless the file says why it is less.
func (s *Site) setbackOf(o *Object) (near string, distance float64, rule *shoreRule) {
	if o.Kind != Water && o.Kind != Hazard {
		return "", 0, nil
	}
	near = nearOf(o.Kind, o.Feature.Properties)
	r := ruleOf(s.region, near)
	if d, stated := o.statedSetback(); stated && (d >= r.setback || !r.law() || o.setbackReason() != "") {
		return near, d, nil
	}
	if near == "" {
		return "", 0, nil
	}
	return near, r.setback, &r
}

// setbackReason is why an object's setback may be less than law's, in the file's
// words; "" if it does not say.
func (o *Object) setbackReason() string {
	reason, _ := o.Feature.Properties.Text("setback_reason")
	return strings.TrimSpace(reason)
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

// checkSetbacks warns of setbacks in the file that fall short of the law of the
// site's region, and tells which of the two is taken.
func (s *Site) checkSetbacks() {
	for _, o := range slices.Concat(s.Objects, s.Beyond) {
		if o.Kind != Water && o.Kind != Hazard {
			continue
		}
		d, stated := o.statedSetback()
		r := ruleOf(s.region, nearOf(o.Kind, o.Feature.Properties))
		if !stated || !r.law() || d >= r.setback {
			continue
		}
		text := fmt.Sprintf("its setback of %s is less than the rule, so the rule is taken: %s", Figures{s.Units}.ToldLength(d), r)
		hint := "where the rule allows less, say why under setback_reason; verify locally"
		if why := o.setbackReason(); why != "" {
			text = fmt.Sprintf("its setback of %s is taken for its setback_reason, %s, though it is less than the rule: %s", Figures{s.Units}.ToldLength(d), ingest.Quoted(why), r)
			hint = "verify locally"
		}
		s.problem(ingest.Warning, "setback_short", o.Place, text, hint)
	}
}

// tellSetbackRules says on which rules setbacks rest that the file does not
// state.
func (s *Site) tellSetbackRules(rules map[string]shoreRule) {
	if len(rules) > 0 && s.region != "" && !hasSetbacks(s.region) {
		s.problem(ingest.Warning, "region_setbacks", s.place(), fmt.Sprintf("no setback rules of %s are known here, the proposed ones are taken", s.region), "look them up, and state setback_m on the objects")
	}
	told := make(map[string]bool)
	for _, near := range slices.Sorted(maps.Keys(rules)) {
		hint := rules[near].yields()
		if told[hint] {
			hint = "" // once is enough
		}
		told[hint] = true
		s.problem(ingest.Note, "setback_rule", s.place(), rules[near].String()+"; verify locally", hint)
	}
}
