package zones

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// An attribute is what a property of features must be to be read.
type attribute struct {
	sort        valueSort
	stem        string  // of the code of the warning about another value
	what, unit  string  // of a number, as in "a height" and " m"
	least, most float64 // of a number
	hint        string
	on          []Kind // the kinds of which it is read; nil = of any that it fits
	instead     string // where to state it for others
	safety      bool   // what it keeps off is not guessed: another value is refused
	unread      string // what is done about another value; "" = it is left aside
}

// valueSort is what sort of value a key takes.
type valueSort int

const (
	anything valueSort = iota // told of where it is read, if it is read at all
	aNumber                   // within limits
	aTruth
	aText
)

const (
	loosest  = 100 // m, the largest error of an edge that is believed
	fullTurn = 360 // degrees

	zoneInstead    = "trace a zone on that ground and state it there"
	setbackInstead = "a setback is kept from water and hazards: trace a keepout round anything else"
)

// lengthOfUpTo is a length of 0 to most metres, stated in metres or feet.
func lengthOfUpTo(most float64, stem, unit string) attribute {
	if unit == "ft" {
		most = math.Floor(most / geo.FootM)
	}
	return attribute{sort: aNumber, stem: stem, what: "a " + stem, unit: " " + unit, most: most,
		hint: fmt.Sprintf("give %[1]s_m in metres, or %[1]s_ft in feet, as a number alone", stem)}
}

// only is an attribute that is read of some kinds.
func (a attribute) only(instead string, kinds ...Kind) attribute {
	a.on, a.instead = kinds, instead
	return a
}

func ofZones(a attribute) attribute { return a.only(zoneInstead, ZoneKind, Keepout) }

func ofShores(a attribute) attribute {
	a.safety = true
	return a.only(setbackInstead, Water, Hazard)
}

// attributes are the properties of features that have a meaning here, map tags
// apart.
var attributes = map[string]attribute{
	"height_m": lengthOfUpTo(tallest, "height", "m"), "height_ft": lengthOfUpTo(tallest, "height", "ft"),
	"width_m": lengthOfUpTo(widest, "width", "m"), "width_ft": lengthOfUpTo(widest, "width", "ft"),
	"crown_m": lengthOfUpTo(broadest, "crown", "m"), "crown_ft": lengthOfUpTo(broadest, "crown", "ft"),
	"setback_m": ofShores(lengthOfUpTo(farthest, "setback", "m")), "setback_ft": ofShores(lengthOfUpTo(farthest, "setback", "ft")),
	"setback_reason": attribute{sort: aText, stem: "setback_reason", hint: "say in words why it may be less than law's"}.only(setbackInstead, Water, Hazard),

	"sigma_m": {sort: aNumber, stem: "sigma", what: "an edge error", unit: " m", most: loosest,
		hint: "give sigma_m in metres, as a number alone"},
	"transmittance": {sort: aNumber, stem: "transmittance", what: "a share", most: 1,
		hint: "give the share of direct sun that passes, as in 0.2"},
	"slope_percent": ofZones(attribute{sort: aNumber, stem: "slope", what: "a slope", unit: " %", least: -steepest, most: steepest,
		hint: "give the rise over a level 100, as a number alone"}),
	"aspect_deg": ofZones(attribute{sort: aNumber, stem: "aspect", what: "a bearing", unit: " degrees", least: -fullTurn, most: fullTurn,
		hint: "give the bearing that the slope faces, clockwise from north, as a number alone: 180 is south"}),
	sunHours: {sort: aNumber, stem: sunHours, what: "hours a day", most: 24},

	"apply":     ofZones(attribute{sort: aTruth, stem: "apply", unread: "nothing is applied there", hint: "write true or false"}),
	"irrigated": ofZones(attribute{sort: aTruth, stem: "irrigated"}),
	"derived":   {sort: aTruth, stem: "derived"},

	"exposure": ofZones(attribute{sort: aText, stem: "exposure", hint: "write full, part, shade or deep"}),
	"species":  {sort: aText, stem: "species"},
	"leaf":     {sort: aText, stem: "leaf", hint: "write deciduous or evergreen"},
	"source":   {sort: aText, stem: "source"},

	"species_north": {sort: aText, stem: "species"}, "species_south": {sort: aText, stem: "species"},
	"species_east": {sort: aText, stem: "species"}, "species_west": {sort: aText, stem: "species"},

	"id": {}, "kind": {}, "name": {}, "tags": {}, "area_m2": {}, "sun_fit": {}, "sun_limits": {}, "height_from": {},
	"laps": {}, "class": {}, "offset_m": {}, "side": {}, fixesKey: {},
}

// checkAttributes warns of what a file states of an object and nobody reads:
// values that are not what their key asks for, keys that say nothing of such an
// object, and, where the file states its kind, keys that are hardly anything
// but a slip of one of ours. Other keys are the owner's.
func (s *Site) checkAttributes(o *Object) {
	for key, raw := range o.Feature.Properties.All() {
		a, known := attributes[key]
		switch {
		case blank(raw), known && a.sort == anything:
		case !known:
			if !o.fromTags {
				s.noteMisspelt(o, key)
			}
		case !a.takes(key, o.Feature.Properties):
			severity, instead := a.untaken(o.Kind)
			s.problem(severity, a.code(), o.Place, fmt.Sprintf("%s %s is not %s%s", key, briefly(raw), a.wanted(), instead), a.hint)
		case a.misplaced(o.Kind) && !a.goesWithoutSaying(key, o.Feature.Properties):
			s.problem(ingest.Warning, "attribute_misplaced", o.Place, fmt.Sprintf("%s is not read of kind %s, left aside", key, o.Kind), a.instead)
		}
	}
}

// blank reports whether a value stands for none: null, or an empty text, as
// tables leave them.
func blank(raw json.RawMessage) bool {
	return len(raw) == 0 || raw[0] == 'n' || string(raw) == `""`
}

// takes reports whether the value of a key is what the attribute asks for.
func (a attribute) takes(key string, p ingest.Properties) (ok bool) {
	switch a.sort {
	case aNumber:
		var v float64
		v, ok = p.Number(key)
		ok = ok && v >= a.least && v <= a.most
	case aTruth:
		_, ok = p.Bool(key)
	case aText:
		_, ok = p.Text(key)
	}
	return ok
}

// untaken is how much it matters that a value is not what the attribute asks
// for, and what is done instead, in words. A setback that cannot be read might be
// wider than any rule, so the site is refused.
func (a attribute) untaken(k Kind) (severity ingest.Severity, instead string) {
	switch {
	case !slices.Contains(a.on, k):
	case a.safety:
		return ingest.Refusal, ""
	case a.unread != "":
		return ingest.Warning, ": " + a.unread
	}
	return ingest.Warning, ", left aside"
}

// wanted says what a value must be.
func (a attribute) wanted() string {
	switch a.sort {
	case aTruth:
		return "true or false"
	case aText:
		return "a text"
	}
	return fmt.Sprintf("%s of %g to %g%s", a.what, a.least, a.most, a.unit)
}

// code is that of the warning about a value that is something else.
func (a attribute) code() string {
	if a.sort == aNumber {
		return a.stem + "_range"
	}
	return a.stem + "_unread"
}

// misplaced reports whether an attribute might be meant of an object of a kind
// and is not read there: those of zones of turf, a setback of any cover.
func (a attribute) misplaced(k Kind) bool {
	return a.on != nil && !slices.Contains(a.on, k) && (k == Turf || k.IsCover() && slices.Contains(a.on, Water))
}

// goesWithoutSaying reports whether a truth is that of ground of which nothing
// is stated: it is treated, and not irrigated.
func (a attribute) goesWithoutSaying(key string, p ingest.Properties) bool {
	v, ok := p.Bool(key)
	return ok && a.sort == aTruth && v == (key == "apply")
}

// briefly is a value as it stands in the file, cut if it is long.
func briefly(raw json.RawMessage) string {
	const most = 40 // characters
	if text := []rune(string(raw)); len(text) > most {
		return string(text[:most-1]) + "…"
	}
	return string(raw)
}
