package zones

import (
	"fmt"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// widest is the largest width of a line or radius of a point that is believed,
// in metres.
const widest = 1000

// A role is the part a feature plays, with the measures that go with it.
type role struct {
	kind     Kind
	width    float64 // m, of lines; 0 = none known
	radius   float64 // m, of the ground round a point
	source   Source
	fromTags bool
}

// roleOf finds the part a feature plays. The second value is false if it
// plays none.
func (s *Site) roleOf(f *ingest.Feature, key *MapKey, place ingest.Place) (role, bool) {
	sort := shapeOf(f.Geometry)
	if text, ok := f.Properties.Text("kind"); ok && text != "" {
		return s.statedRole(Kind(text), f, sort, place)
	}
	row, ok := key.find(f.Properties, sort)
	if !ok || row.kind == "" {
		return role{}, false
	}
	r := role{kind: row.kind, width: row.width, radius: row.radius, source: Imported, fromTags: true}
	if sort == line && row.width > 0 {
		if w, tagged := taggedWidth(f.Properties, row.lane); tagged {
			r.width = w
		} else {
			r.source = DefaultWidth
		}
	}
	return r, true
}

// statedRole is the role of a feature whose kind the file states.
func (s *Site) statedRole(kind Kind, f *ingest.Feature, sort shape, place ingest.Place) (role, bool) {
	if !kind.Known() {
		hint := ""
		switch near := kind.nearest(); {
		case spokenOf(string(kind)) != "":
			hint = `trace it as a point of kind "hazard" with its setback_m, within which nothing is applied; a ditch is kind "water"`
		case near != "":
			hint = fmt.Sprintf("did you mean %q?", near)
		}
		s.problem(ingest.Refusal, "kind_unknown", place, fmt.Sprintf("kind %q is not known", kind), hint)
		return role{}, false
	}
	if shapes[kind]&sort == 0 || sort == 0 {
		s.problem(ingest.Refusal, "kind_shape", place, fmt.Sprintf("kind %s is traced as a %s, this is a %s", kind, shapes[kind], f.Geometry.GeoJSONType()), shapeHint(kind, sort))
		return role{}, false
	}
	r := role{kind: kind, source: Traced}
	r.width, _ = lengthOf(f.Properties, "width")
	if r.width > widest {
		s.problem(ingest.Refusal, "width_range", place, fmt.Sprintf("kind %s with a width of %g m is too wide, the limit is %d m", kind, r.width, widest), "give width_m in metres, or width_ft in feet")
		return role{}, false
	}
	if sort == line && kind.IsCover() && r.width <= 0 {
		s.problem(ingest.Refusal, "width_missing", place, fmt.Sprintf("kind %s traced as a line needs width_m", kind), "give its width, as in \"width_m\": 3, or trace it as a Polygon")
		return role{}, false
	}
	return r, true
}

func shapeHint(kind Kind, sort shape) string {
	if shapes[kind] == area && sort == line {
		return "close the line to a ring and make it a Polygon"
	}
	return ""
}

// lengthOf returns a length property in metres: name_m, else name_ft.
func lengthOf(p ingest.Properties, name string) (float64, bool) {
	if v, ok := p.Number(name + "_m"); ok && v > 0 {
		return v, true
	}
	if v, ok := p.Number(name + "_ft"); ok && v > 0 {
		return v * geo.FootM, true
	}
	return 0, false
}

// statesNone reports whether a length property is stated to be nothing.
func statesNone(p ingest.Properties, name string) bool {
	m, inMetres := p.Number(name + "_m")
	ft, inFeet := p.Number(name + "_ft")
	return inMetres && m == 0 || inFeet && ft == 0
}

// drawn reports whether the ground of a feature is drawn round its line or
// point, so that its edges err together.
func (r role) drawn(f *ingest.Feature) bool {
	sort := shapeOf(f.Geometry)
	return sort == line && r.width > 0 || sort == point && r.radius > 0
}

// sourceOf settles where the edge of an object comes from and how far it may
// be off.
func (s *Site) sourceOf(f *ingest.Feature, r role, place ingest.Place) (Source, geo.EdgeError) {
	source := r.source
	if text, ok := f.Properties.Text("source"); ok && !r.fromTags {
		if stated := Source(text); stated.Known() {
			source = stated
		} else {
			s.problem(ingest.Warning, "source_unknown", place, fmt.Sprintf("source %q is not known, traced taken", text), "")
		}
	}
	edge := source.EdgeError()
	if r.drawn(f) && source != DefaultWidth {
		edge = statedWidth.EdgeError()
	}
	if sigma, ok := f.Properties.Number("sigma_m"); ok && sigma >= 0 && sigma <= loosest {
		edge.Sigma = geo.Length(sigma)
	}
	return source, edge
}

// nearest returns the kind that was perhaps meant.
func (k Kind) nearest() Kind {
	wanted := strings.ToLower(strings.TrimSpace(string(k)))
	if meant, ok := synonyms[wanted]; ok {
		return meant
	}
	for known := range shapes {
		if strings.TrimSuffix(wanted, "s") == string(known) || lettersOnly(wanted) == string(known) {
			return known
		}
	}
	if i := strings.LastIndexAny(wanted, " _-"); i >= 0 { // a swimming pool is a pool
		return Kind(wanted[i+1:]).nearest()
	}
	return ""
}

// synonyms are words of the trade for kinds.
var synonyms = map[string]Kind{
	"lawn": Turf, "grass": Turf, "house": Building, "roof": Building, "shed": Building, "garage": Building,
	"drive": Hardscape, "driveway": Hardscape, "walk": Hardscape, "patio": Hardscape, "path": Hardscape, "pavement": Hardscape, "deck": Hardscape,
	"planting": Bed, "border": Bed, "flowerbed": Bed, "pond": Water, "gravel": Bare, "meadow": Rough, "parcel": Outline, "boundary": Outline, "gate": Access,
}
