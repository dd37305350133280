package render

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"example.org/turfplat/zones/program"
)

// withheldProgram has a step for each way in which one may not be done.
const withheldProgram = `program: withheld
steps:
  - {id: pre, does: spread, use: pre_emergent, material: pre-emergent, rate: 3 lb / 1000 ft2, product: {active: dithiopyr}, when: {window: 03-01..04-15}, done: 2026-04-01}
  - {id: seed, does: seed, material: seed, rate: 2 lb PLS / 1000 ft2, product: {purity: 95 %, germination: 85 %}, when: {window: 04-20..06-15}}
  - {id: never, does: seed, material: seed, rate: 2 lb PLS / 1000 ft2, product: {purity: 95 %, germination: 85 %}, when: {window: 04-20..05-10}}
  - {id: pond, does: spread, material: feed, rate: 0.5 lb N / 1000 ft2, product: {grade: 25-0-10}, where: {zone: pond edge}, when: {window: 05-01..05-31}}
  - {id: bugs, does: spray, use: insecticide, material: insecticide, rate: 3 fl oz / 1000 ft2, carrier: 1 gal / 1000 ft2, tank: 4 gal, when: {window: 05-01..05-31}}
  - {id: late, does: topdress, material: compost, rate: 0.25 in, passes: 2, when: {window: 03-15..04-30}}
  - {id: warm, does: spread, material: feed, rate: 0.5 lb N / 1000 ft2, product: {grade: 25-0-10}, where: {season: warm}}
  - {id: mow, does: mow, every: 7 d, when: {window: 04-01..04-30}}
`

// amountIn finds what one would need to do a step.
var amountIn = regexp.MustCompile(`\d (lb|oz|fl oz|gal|yd3)\b|\.\d+ in\b|Rate|Test strip|Setting \w|Hopper|Tanks|Cut to|Signature`)

// A step that may not be done tells why, and what lifts it, and nothing that one
// would need to do it: neither on paper nor on a phone, with lanes or without.
func TestStepsThatMayNotBeDoneTellNoAmounts(t *testing.T) {
	p, m, _ := alderLane(t)
	season, problems := program.Read(strings.NewReader(withheldProgram), "withheld.yaml")
	if season == nil {
		t.Fatal(problems)
	}
	plan := planned(t, p, m, season, time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC))
	var ids []string
	for _, s := range plan.Steps {
		ids = append(ids, s.Step.ID)
	}
	o := PacketOptions{Steps: ids, Lanes: alongLanes(t, p)}
	sheets, err := Packet(p, m, plan, o)
	if err != nil {
		t.Fatal(err)
	}
	_, file, err := Page(p, m, plan, PageOptions{PacketOptions: o})
	if err != nil {
		t.Fatal(err)
	}
	doc := parsed(t, file)
	for id, c := range map[string]struct {
		status program.Status
		lifted string
	}{
		"pre":   {program.Skipped, "nothing: it is done"},
		"seed":  {program.Blocked, "waiting: from 13 May on"},
		"never": {program.Blocked, "dates in the program from 13 May on"},
		"pond":  {program.Blocked, "nothing; the program may name other zones"},
		"bugs":  {program.Blocked, "weeds in flower mown off"},
		"late":  {program.Skipped, "next season, or dates"},
		"warm":  {program.Skipped, "zones of the kind"},
		"mow":   {program.Skipped, "next season, or dates"},
	} {
		i := slices.Index(ids, id)
		if got := plan.Steps[i].Status; got != c.status {
			t.Errorf("%s is %s: %s", id, got, plan.Steps[i].Why)
		}
		section := slices.IndexFunc(doc, func(n *html.Node) bool { return attribute(n, "id") == "step-"+id })
		for where, said := range map[string]string{"on paper": wordsOf(sheetsOf(sheets, id)), "on a phone": textIn(doc[section])} {
			said = strings.Join(strings.Fields(said), " ")
			if !strings.Contains(said, capitalized(c.lifted)) || !strings.Contains(said, "Do not do it") {
				t.Errorf("%s, %s: it is not told that it is lifted by %s:\n%s", id, where, c.lifted, said)
			}
			if _, tables, _ := strings.Cut(said, "Do not do it"); amountIn.MatchString(tables) {
				t.Errorf("%s, %s: it tells %q", id, where, amountIn.FindString(tables))
			}
		}
		for _, s := range sheetsOf(sheets, id) {
			if group(s.Elements, "lanes") != nil || len(boxesToTick(s)) > 0 {
				t.Errorf("%s has lanes or boxes to tick", id)
			}
		}
	}
	for _, part := range pageDataIn(t, doc).Sections {
		if strings.HasPrefix(part.ID, "step-") && (part.Amounts == nil || len(part.Amounts) > 0) {
			t.Errorf("a tap in %s tells %v, want that zones are left alone", part.ID, part.Amounts)
		}
	}
}

// textIn is all text of an element.
func textIn(n *html.Node) string {
	var words []string
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			words = append(words, d.Data)
		}
	}
	return strings.Join(words, " ")
}
