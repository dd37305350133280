package program

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/spelling"
)

// named reports whether a list names the zone, or what it is a part of.
func (g Ground) named(list []string) bool {
	return slices.ContainsFunc(list, func(name string) bool {
		return g.goesBy(name) || slices.ContainsFunc(g.partOf, func(whole string) bool { return strings.EqualFold(name, whole) })
	})
}

// goesBy reports whether a name is the zone's own: its id, its name or its letter.
func (g Ground) goesBy(name string) bool {
	return strings.EqualFold(name, g.Name) || strings.EqualFold(name, g.Letter) ||
		strings.EqualFold(name, g.ID) || strings.EqualFold("zone/"+name, g.ID)
}

var (
	// again is what ids get at their end that would stand twice.
	again = regexp.MustCompile(`-[0-9]+$`)
	// between is what stands between words of a name, and is a hyphen in an id.
	between = regexp.MustCompile(`[^\pL\pN]+`)
)

// wholes are what a zone was divided from, as far as its id and name tell: a part
// of the zone zone/back, Back, is zone/back-north, "Back, north".
func (g Ground) wholes() (names []string) {
	id, name := g.ID, g.Name
	for at := strings.LastIndex(name, ", "); at > 0; at = strings.LastIndex(name, ", ") {
		whole, ok := cutTail(id, name[at+2:])
		if !ok {
			return names
		}
		id, name = whole, name[:at]
		names = append(names, id, strings.TrimPrefix(id, "zone/"), name)
	}
	return names
}

// cutTail takes from an id what tells the part: the words that the name adds, or
// of an exposure the first of them.
func cutTail(id, words string) (whole string, ok bool) {
	words = between.ReplaceAllString(strings.ToLower(words), "-")
	first, _, _ := strings.Cut(words, "-")
	for _, of := range []string{id, again.ReplaceAllString(id, "")} {
		for _, tail := range []string{words, first} {
			if strings.HasSuffix(strings.ToLower(of), "-"+tail) {
				return of[:len(of)-len(tail)-1], true
			}
		}
	}
	return id, false
}

// tellParts lets each zone go by the names of what it was divided from, unless a
// zone still has that name.
func tellParts(list []Ground) {
	for i := range list {
		list[i].partOf = slices.DeleteFunc(list[i].wholes(), func(name string) bool {
			return slices.ContainsFunc(list, func(g Ground) bool { return g.goesBy(name) })
		})
	}
}

// tellUnnamed warns of zones that steps name and the site does not have.
func (pl *planner) tellUnnamed() {
	told := make(map[string]bool)
	for i := range pl.Steps {
		s := pl.Steps[i].Step
		for _, name := range s.zonesNamed() {
			has := slices.ContainsFunc(pl.Grounds, func(g Ground) bool { return g.named([]string{name}) })
			if has || told[strings.ToLower(name)] {
				continue
			}
			told[strings.ToLower(name)] = true
			pl.note("zone_unknown", fmt.Sprintf("step %s is for zone %s, and there is no such zone", s.ID, ingest.Quoted(name)), pl.zoneHint(name))
		}
	}
}

// zonesNamed are those that a step's file names, in where and under override.
func (s *Step) zonesNamed() []string {
	names := slices.Clone(s.Where.Zones)
	for _, o := range s.Override {
		names = append(names, o.Zones...)
	}
	return names
}

// zoneHint says which zone was perhaps meant, else which there are.
func (pl *planner) zoneHint(name string) string {
	const most = 12 // zones that are listed
	var names, labels []string
	for _, g := range pl.Grounds {
		names = append(names, strings.TrimPrefix(g.ID, "zone/"), g.Name)
		names = append(names, g.partOf...)
		labels = append(labels, ingest.Quoted(g.Label()))
	}
	if near := spelling.Nearest(name, slices.DeleteFunc(names, func(n string) bool { return n == "" })); near != "" {
		return "did you mean " + near + "?"
	}
	if len(labels) > most {
		return fmt.Sprintf("the site has %d zones: measure lists them", len(labels))
	}
	return "its zones are " + joined(labels)
}
