package ingest

import (
	"encoding/json"
	"fmt"
)

// A site gathers the features of one collection.
type site struct {
	*Collection
	limits     Limits
	geometries *geometries
	ids        map[string]*Feature // that were met first with them
	count      int                 // features met, refused ones too
	full       bool
	turned     int      // areas of which a ring ran the wrong way round
	unlisted   int      // problems beyond the limit
	worst      Severity // of those
}

func newSite(source string, line int, limits Limits) *site {
	return newSiteFor(newGeometries(newObjects(), limits.Positions), source, line, limits)
}

// newSiteFor returns a site whose geometries are read by a reader that served
// another site before.
func newSiteFor(geometries *geometries, source string, line int, limits Limits) *site {
	return &site{
		Collection: &Collection{Source: source, Line: line},
		limits:     limits,
		geometries: geometries,
		ids:        make(map[string]*Feature),
	}
}

// file is the place of what concerns the site as a whole.
func (s *site) file() Place { return Place{Source: s.Source, Line: s.Line, Feature: -1} }

// report adds a problem, or only counts it when there are too many.
func (s *site) report(p Problem) {
	if len(s.Problems) < s.limits.Problems {
		s.Problems = append(s.Problems, p)
		return
	}
	s.unlisted++
	s.worst = max(s.worst, p.Severity)
}

func (s *site) refuse(code, text string) {
	s.report(Problem{Severity: Refusal, Code: code, Place: s.file(), Text: text})
}

// done returns the collection once all has been added.
func (s *site) done() *Collection {
	if s.unlisted > 0 {
		s.Problems = append(s.Problems, Problem{
			Severity: s.worst, Code: "limit_problems", Place: s.file(),
			Text: fmt.Sprintf("has %d more problems, not listed", s.unlisted),
		})
	}
	return s.Collection
}

// top adds a whole GeoJSON text of the given kind, which stands on a line of
// its own, or 0.
func (s *site) top(kind string, value []byte, line int) {
	switch kind {
	case "FeatureCollection":
		s.collection(value)
	case "Feature":
		s.feature(value, line)
	default:
		s.bare(value, line)
	}
}

// collection adds what a FeatureCollection object holds.
func (s *site) collection(object []byte) {
	for value := range elements(s.envelope(object)) {
		s.feature(value, 0)
		if s.full {
			break
		}
	}
}

// envelope takes the members of a FeatureCollection object, and returns its
// features: an empty array if it has none.
func (s *site) envelope(object []byte) (features []byte) {
	members, fs := s.geometries.objects.judged(object)
	for _, f := range fs {
		s.report(f.problem(s.file()))
	}
	for _, m := range members {
		if m.Name != "type" && m.Name != "features" {
			s.Members = append(s.Members, m)
		}
	}
	features, ok := lookup(members, "features")
	switch {
	case !ok:
		s.refuse("features_missing", "collection has no features")
	case features[0] != '[':
		s.refuse("features_type", "features is "+describe(features)+", not an array")
	default:
		return features
	}
	return []byte("[]")
}

// feature adds a feature object that stands on a line of its own, or 0.
func (s *site) feature(value []byte, line int) {
	f := &Feature{line: line}
	if value[0] != '{' {
		s.add(f, findings{{
			severity: Refusal, code: "feature_type", text: "feature is " + describe(value) + ", not an object",
		}})
		return
	}
	g := s.geometries
	g.findings = g.findings[:0]
	f.members = g.members(value)
	s.checkType(f)
	s.readProperties(f)
	s.readID(f)
	geometry, ok := lookup(f.members, "geometry")
	if !ok {
		geometry = null
	}
	s.readGeometry(f, geometry)
	s.add(f, g.findings)
}

// bare adds a geometry object that stands where a feature could.
func (s *site) bare(value []byte, line int) {
	s.geometries.findings = s.geometries.findings[:0]
	f := &Feature{line: line, members: featureMembers(value)}
	s.readGeometry(f, value)
	s.add(f, s.geometries.findings)
}

func (s *site) checkType(f *Feature) {
	value, ok := lookup(f.members, "type")
	kind, _ := scalarText(value)
	switch {
	case !ok:
		s.geometries.refuse("feature_type", `has no type, must be "Feature"`)
	case isGeometry(kind):
		s.geometries.refuse("feature_type", "is a bare "+kind+`, must be a "Feature" around it`)
	case kind != "Feature":
		s.geometries.refuse("feature_type", "type is "+describe(value)+`, must be "Feature"`)
	}
}

func (s *site) readProperties(f *Feature) {
	value, ok := lookup(f.members, "properties")
	switch {
	case !ok || value[0] == 'n':
	case value[0] != '{':
		s.geometries.refuse("properties_type", "properties is "+describe(value)+", not an object")
	default:
		members, repeated, found := s.geometries.objects.members(value)
		f.Properties = Properties{members}
		if found {
			s.geometries.findings.add(repeatedMember(repeated))
		}
	}
}

// readID finds the id among the properties, else that of the feature itself
// (RFC 7946 3.2: a string or a number).
func (s *site) readID(f *Feature) {
	if own, ok := lookup(f.members, "id"); ok && own[0] != 'n' {
		switch own[0] {
		case '{', '[', 't', 'f':
			s.geometries.warn("id_type", "id is "+describe(own)+", not a string or a number, ignored it")
		default:
			f.ID, _ = scalarText(own)
		}
	}
	if id, ok := f.Properties.Text("id"); ok && id != "" {
		f.ID = id
	}
	if f.ID == "" {
		return
	}
	earlier, taken := s.ids[f.ID]
	if !taken {
		s.ids[f.ID] = f
		return
	}
	s.geometries.findings.add(finding{
		severity: Warning, code: "id_repeated", hint: "give each an id of its own",
		text: "has the id of an earlier feature, " + Place{Feature: earlier.Index, Label: earlier.Label()}.object(),
	})
}

func (s *site) readGeometry(f *Feature, value json.RawMessage) {
	var repaired []byte
	f.Geometry, repaired = s.geometries.read(value)
	if repaired != nil {
		f.members = with(f.members, "geometry", repaired)
	}
}

// add takes a feature in, with what was found about it.
func (s *site) add(f *Feature, fs findings) {
	f.Index = s.count
	s.count++
	place := s.Place(f)
	for _, found := range fs {
		s.report(found.problem(place))
		if found.code == "ring_winding" {
			s.turned++
		}
	}
	if f.members != nil {
		s.Features = append(s.Features, f)
	}
	switch {
	case s.count > s.limits.Features:
		s.exceed("limit_features", s.limits.Features, "features")
	case s.geometries.coordinates.left < 0:
		s.exceed("limit_positions", s.limits.Positions, "positions")
	}
}

// exceed refuses a site that is too large, and lets go of what it has.
func (s *site) exceed(code string, limit int, of string) {
	s.full = true
	s.Features = nil
	s.report(Problem{
		Severity: Refusal, Code: code, Place: s.file(),
		Text: fmt.Sprintf("has more than %d %s, the limit for one site", limit, of),
		Hint: "split it into smaller files",
	})
}
