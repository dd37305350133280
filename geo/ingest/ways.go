package ingest

import (
	"slices"

	"github.com/paulmach/orb"
)

// A wayLine is what is known of where a way runs.
type wayLine struct {
	parts  [][]orb.Point // between nodes that are missing; a whole way is one
	nodes  int
	absent int   // nodes that are missing
	first  int64 // of those
	closed bool
}

// whole reports whether no node is missing.
func (l *wayLine) whole() bool { return l.absent == 0 }

// near is a place on the line, if any is known.
func (l *wayLine) near() *orb.Point {
	if len(l.parts) == 0 {
		return nil
	}
	return &l.parts[0][0]
}

// lineOf finds the nodes of a way. It is closed if it ends at the node it
// begins with, or at the same place.
func (e *extract) lineOf(way *osmObject) wayLine {
	l := wayLine{nodes: len(way.nodes)}
	part := make([]orb.Point, 0, len(way.nodes))
	for _, id := range way.nodes {
		if p, ok := e.at(id); ok {
			part = append(part, p)
			continue
		}
		if l.absent++; l.absent == 1 {
			l.first = id
		}
		if len(part) > 0 {
			l.parts = append(l.parts, part)
			part = nil
		}
	}
	if len(part) > 0 {
		l.parts = append(l.parts, part)
	}
	if last := len(way.nodes) - 1; last > 0 {
		p, ok1 := e.at(way.nodes[0])
		q, ok2 := e.at(way.nodes[last])
		l.closed = way.nodes[0] == way.nodes[last] || ok1 && ok2 && p == q
	}
	return l
}

// lines are the stretches of at least two different places.
func (l *wayLine) lines() []orb.LineString {
	var lines []orb.LineString
	for _, part := range l.parts {
		row := trace{points: slices.Clone(part)}
		row.dropRepeats()
		if len(row.points) > 1 {
			lines = append(lines, row.points)
		}
	}
	return lines
}

// A lineKey is a key that makes a closed way a line. Meanings are those of the
// OSM wiki pages of the keys.
type lineKey struct {
	key    string
	values []string
	except bool // all values but these
}

var lineKeys = []lineKey{
	{"aerialway", []string{"station"}, true},
	{"aeroway", []string{"runway", "taxiway"}, false},
	{"barrier", nil, true},
	{"golf", []string{"cartpath", "hole", "path"}, false},
	{"highway", []string{"elevator", "platform", "rest_area", "services"}, true},
	{"leisure", []string{"slipway", "track"}, false},
	{"man_made", []string{"breakwater", "cutline", "embankment", "groyne", "pipeline"}, false},
	{"natural", []string{"arete", "cliff", "coastline", "earth_bank", "ridge", "tree_row", "valley"}, false},
	{"power", []string{"cable", "line", "minor_line"}, false},
	{"railway", []string{"platform", "roundhouse", "station", "turntable", "yard"}, true},
	{"route", nil, true},
	{"waterway", []string{"boatyard", "dam", "dock", "fuel", "riverbank"}, true},
}

// areaKeys are those beside which a barrier is taken for the edge of the area.
var areaKeys = []string{"amenity", "building", "golf", "landuse", "leisure", "natural", "tourism"}

// says reports whether the tags of a closed way hold the key in a sense that
// makes it a line.
func (k lineKey) says(tags []Member) bool {
	value := tagValue(tags, k.key)
	return value != "" && slices.Contains(k.values, value) != k.except
}

// isArea reports whether a closed way with these tags is an area.
func isArea(tags []Member) bool {
	switch area, _ := lookup(tags, "area"); string(area) {
	case `"yes"`:
		return true
	case `"no"`:
		return false
	}
	return !slices.ContainsFunc(lineKeys, func(k lineKey) bool { return k.says(tags) })
}

// isFenced reports whether a closed way with these tags is a barrier and an
// area too, and returns the tags of the area.
func isFenced(tags []Member) (area []Member, ok bool) {
	if tagValue(tags, "barrier") == "" || isArea(tags) {
		return nil, false
	}
	area = slices.Clone(tags)
	area = without(area, "barrier")
	if !isArea(area) || !slices.ContainsFunc(areaKeys, func(key string) bool { return tagValue(area, key) != "" }) {
		return nil, false
	}
	return area, true
}
