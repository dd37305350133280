package ingest

import (
	"fmt"
	"slices"

	"github.com/paulmach/orb"
)

// An osmSite makes the features of an extract.
type osmSite struct {
	*site
	from      *extract
	areas     []*Feature           // of relations
	bounding  map[int64][][]Member // tags of the relations whose areas a way bounds
	positions int                  // in features so far
	nesting   nesting
	others    map[string]int // relations that are no areas, by type
}

func newOSMSite(s *site, e *extract) *osmSite {
	return &osmSite{
		site: s, from: e, bounding: make(map[int64][][]Member), others: make(map[string]int),
		nesting: nesting{left: nestingSteps},
	}
}

// build adds all features and problems to the site. Relations are made first,
// as they take over ways.
func (s *osmSite) build() {
	s.from.settle()
	for i := range s.from.relations {
		if s.full {
			return
		}
		s.relation(&s.from.relations[i])
	}
	for i := range s.from.points {
		s.point(&s.from.points[i])
		s.from.points[i] = osmObject{} // its memory is needed
	}
	for i := range s.from.ways {
		if s.full {
			return
		}
		s.way(&s.from.ways[i])
		s.from.ways[i] = osmObject{}
	}
	for _, f := range s.areas {
		s.addFeature(f)
	}
	s.tellOthers()
	for _, f := range s.from.findings {
		s.report(f.problem(s.file()))
	}
}

// warn reports what is wrong with an object.
func (s *osmSite) warn(code, id string, near *orb.Point, text string) {
	s.tell(Warning, code, id, near, text)
}

func (s *osmSite) tell(severity Severity, code, id string, near *orb.Point, text string) {
	place := s.file()
	place.Label, place.Near = id, near
	s.report(Problem{Severity: severity, Code: code, Place: place, Text: text})
}

// spend counts the positions of a geometry.
func (s *osmSite) spend(positions int) {
	if s.positions += positions; s.positions > s.limits.Positions && !s.full {
		s.exceed("limit_positions", s.limits.Positions, "positions")
	}
}

func newOSMFeature(id string, tags []Member, g orb.Geometry) *Feature {
	return &Feature{ID: id, Geometry: g, Properties: osmProperties(id, tags)}
}

// addFeature puts a feature at the end.
func (s *osmSite) addFeature(f *Feature) {
	if s.full {
		return
	}
	f.Index = len(s.Features)
	if s.Features = append(s.Features, f); len(s.Features) > s.limits.Features {
		s.exceed("limit_features", s.limits.Features, "features")
	}
}

// point makes a feature of a node.
func (s *osmSite) point(o *osmObject) {
	at, ok := s.from.at(o.id)
	if !ok {
		return // which is told already
	}
	s.spend(1)
	s.addFeature(newOSMFeature(osmID(osmNode, o.id), o.tags, at))
}

// way makes features of a way, unless it says nothing beyond the areas it
// bounds.
func (s *osmSite) way(o *osmObject) {
	id := osmID(osmWay, o.id)
	areas, bounds := s.bounding[o.id]
	if !slices.ContainsFunc(o.tags, telling) {
		if !bounds {
			s.from.found(finding{severity: Note, code: "osm_untagged", text: id + " has no tags, left aside", plural: "ways"})
		}
		return
	}
	for _, tags := range areas {
		if addsNothing(o.tags, tags) {
			s.from.found(finding{severity: Note, code: "osm_redundant", text: id + " says nothing beyond the area it bounds, left aside", plural: "ways"})
			return
		}
	}
	if len(o.nodes) == 0 {
		s.from.found(finding{
			severity: Warning, code: "osm_nodes_unsaid", text: id + " came without its nodes, left out", plural: "ways",
			hint: "ask the server for them, as with out geom",
		})
		return
	}
	line := s.from.lineOf(o)
	s.spend(line.nodes)
	fencedTags, fenced := isFenced(o.tags)
	switch {
	case !line.closed || !fenced && !isArea(o.tags):
		s.line(id, o.tags, line)
	case fenced:
		s.area(id, fencedTags, line)
		s.line(id+"/barrier", o.tags, line)
		s.from.found(finding{severity: Note, code: "osm_barrier", text: id + " is an area and the barrier round it, took both", plural: "ways"})
	default:
		s.area(id, o.tags, line)
	}
}

// area makes a polygon of a closed way.
func (s *osmSite) area(id string, tags []Member, line wayLine) {
	if !line.whole() {
		s.warn("osm_way_cut", id, line.near(), "left out: is an area and "+lacks(line))
		return
	}
	row := trace{points: line.parts[0]}
	row.dropRepeats()
	row.close()
	if code, why := row.vain(); code != "" {
		s.warn(code, id, line.near(), "left out: "+why)
		return
	}
	row.wind(true)
	s.addFeature(newOSMFeature(id, tags, orb.Polygon{row.points}))
}

// line makes a line of a way, or of the stretches that are left of it.
func (s *osmSite) line(id string, tags []Member, line wayLine) {
	lines := line.lines()
	switch {
	case len(lines) == 0 && line.whole():
		s.warn("line_short", id, line.near(), "left out: line has fewer than two different points")
		return
	case len(lines) == 0:
		s.warn("osm_way_cut", id, line.near(), "left out: "+lacks(line))
		return
	case !line.whole():
		s.warn("osm_line_cut", id, line.near(), lacks(line)+", kept what lies between them")
	}
	if len(lines) == 1 {
		s.addFeature(newOSMFeature(id, tags, lines[0]))
		return
	}
	s.addFeature(newOSMFeature(id, tags, orb.MultiLineString(lines)))
}

// lacks says which nodes of a way are missing.
func lacks(line wayLine) string {
	text := fmt.Sprintf("lacks %d of its %d nodes", line.absent, line.nodes)
	if isUnnamed(line.first) {
		return text
	}
	return text + " (" + osmID(osmNode, line.first) + " first)"
}
