package ingest

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/paulmach/orb"
)

// A boundingWay is a way of a relation that bounds an area.
type boundingWay struct {
	*osmObject
	role string
}

// relation makes a feature of a relation, if it describes an area.
func (s *osmSite) relation(o *osmObject) {
	if sort := tagValue(o.tags, "type"); sort != "multipolygon" {
		s.others[sort]++
		return
	}
	ways, lines, ok := s.boundingWays(o)
	if !ok {
		return
	}
	a, near := newAssembly(lines), lines[0][0]
	id := osmID(osmRelation, o.id)
	if ends := a.openEnds(); len(ends) > 0 {
		s.warn("osm_relation_open", id, &ends[0], "left out: its ways do not close, "+counted(len(ends), "end")+" open")
		return
	}
	areas, ok := s.nesting.areas(a, a.rings())
	switch {
	case s.nesting.left < 0:
		s.full, s.Features = true, nil
		s.refuse("limit_rings", "has relations with too many rings within rings, which would take too long")
	case !ok:
		s.warn("osm_relation_crossed", id, &near, "left out: its ways cross each other")
	case len(areas) == 0:
		s.warn("ring_flat", id, &near, "left out: encloses nothing")
	default:
		s.relationArea(o, ways, a, areas)
	}
}

// boundingWays finds the ways of a relation and where they run. It is not ok
// if any of that is missing, which is told.
func (s *osmSite) boundingWays(o *osmObject) (ways []boundingWay, lines [][]orb.Point, ok bool) {
	id := osmID(osmRelation, o.id)
	seen := make(map[int64]bool)
	var absent []int64
	var cut string
	var near *orb.Point
	for _, m := range o.members {
		if m.kind != osmWay || seen[m.id] {
			continue
		}
		seen[m.id] = true
		way, known := s.from.wayOf(m.id)
		if !known || len(way.nodes) == 0 {
			absent = append(absent, m.id)
			continue
		}
		line := s.from.lineOf(way)
		if s.spend(line.nodes); s.full {
			return nil, nil, false
		}
		near = cmp.Or(near, line.near())
		if !line.whole() {
			cut = cmp.Or(cut, osmID(osmWay, m.id)+" "+lacks(line))
			continue
		}
		ways, lines = append(ways, boundingWay{way, m.role}), append(lines, line.parts[0])
	}
	switch {
	case len(seen) == 0:
		s.warn("osm_relation_cut", id, nil, "left out: has no ways")
	case len(absent) > 0:
		s.warn("osm_relation_cut", id, near, fmt.Sprintf("left out: lacks %d of its %d ways (%s first)", len(absent), len(seen), osmID(osmWay, absent[0])))
	case cut != "":
		s.warn("osm_relation_cut", id, near, "left out: "+cut)
	default:
		return ways, lines, true
	}
	return nil, nil, false
}

// relationArea makes the feature of a relation whose areas are known.
func (s *osmSite) relationArea(o *osmObject, ways []boundingWay, a *assembly, areas []assembledArea) {
	id := osmID(osmRelation, o.id)
	tags := o.tags
	if len(tellingTags(without(slices.Clone(tags), "type"))) == 0 {
		outer, why := outerTags(ways, areas)
		if why != "" {
			s.tell(Warning, "osm_relation_tags", id, nil, "left out: "+why)
			return
		}
		if outer == nil {
			s.from.found(finding{severity: Note, code: "osm_relation_untagged", text: id + " has no tags, nor have its ways, left aside", plural: "relations"})
			return
		}
		s.tell(Note, "osm_tags_outer", id, nil, "has no tags, took those of its outer ways")
		tags = outer
	}
	s.tellRoles(id, ways, areas)
	for _, way := range ways {
		s.bounding[way.id] = append(s.bounding[way.id], tags)
	}
	s.areas = append(s.areas, newOSMFeature(id, tags, a.multiPolygon(areas)))
}

// outerTags are the tags of the ways that bound a relation from outside; nil
// if they have none. If they differ it says why they cannot be taken.
func outerTags(ways []boundingWay, areas []assembledArea) (tags []Member, why string) {
	for _, area := range areas {
		for _, i := range area.shell.lines {
			own := tellingTags(ways[i].tags)
			switch {
			case own == nil:
			case tags == nil:
				tags = own
			case !addsNothing(own, tags) || !addsNothing(tags, own):
				return nil, "has no tags, and those of its outer ways differ"
			}
		}
	}
	return tags, ""
}

// tellRoles counts the rings all of whose ways claim to be on the other side.
func (s *osmSite) tellRoles(id string, ways []boundingWay, areas []assembledArea) {
	wrong := 0
	count := func(r assembledRing, claimed string) {
		if !slices.ContainsFunc(r.lines, func(i int32) bool { return ways[i].role != claimed }) {
			wrong++
		}
	}
	for _, area := range areas {
		count(area.shell, "inner")
		for _, hole := range area.holes {
			count(hole, "outer")
		}
	}
	if wrong > 0 {
		s.tell(Note, "osm_roles", id, nil, fmt.Sprintf("roles are wrong for %s, went by where they lie", counted(wrong, "ring")))
	}
}

// counted is a number with its noun.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// multiPolygon gives the areas their positions.
func (a *assembly) multiPolygon(areas []assembledArea) orb.MultiPolygon {
	var all orb.MultiPolygon
	for _, area := range areas {
		polygon := orb.Polygon{a.ring(area.shell, true)}
		for _, hole := range area.holes {
			polygon = append(polygon, a.ring(hole, false))
		}
		all = append(all, polygon)
	}
	return all
}

func (a *assembly) ring(r assembledRing, counterClockwise bool) orb.Ring {
	t := trace{points: a.line(r.vertices)}
	t.wind(counterClockwise)
	return t.points
}

// tellOthers counts the relations that are no areas, the most frequent first.
func (s *osmSite) tellOthers() {
	if len(s.others) == 0 {
		return
	}
	sorts := slices.SortedFunc(maps.Keys(s.others), func(a, b string) int {
		return cmp.Or(cmp.Compare(s.others[b], s.others[a]), cmp.Compare(a, b))
	})
	const most = 8
	var parts []string
	all := 0
	for i, sort := range sorts {
		all += s.others[sort]
		if i < most {
			parts = append(parts, fmt.Sprintf("%d %s", s.others[sort], shownSort(sort)))
		}
	}
	if more := len(sorts) - most; more > 0 {
		parts = append(parts, "and "+counted(more, "other type"))
	}
	s.report(Problem{
		Severity: Note, Code: "osm_relation_other", Place: s.file(), Count: all,
		Text: counted(all, "relation") + " of other types left aside: " + strings.Join(parts, ", "),
	})
}

// shownSort is the type of a relation in a message.
func shownSort(sort string) string {
	if sort == "" {
		return "without a type"
	}
	return Quoted(sort)
}
