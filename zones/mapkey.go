package zones

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/tables"
)

// mapKeyCSV holds the parts that OpenStreetMap tags play on a property, the
// first row that fits deciding. Meanings are those of the OSM wiki pages of
// the tags; widths say on what they rest.
//
//go:embed mapkey.csv
var mapKeyCSV string

// A MapKey says which part map tags play: tags to kinds, with the measures of
// objects mapped as lines or points.
type MapKey struct{ rows []mapKeyRow }

type mapKeyRow struct {
	tags   []tagMatch
	shapes shape
	kind   Kind    // "" = plays no part
	width  float64 // m, of a line without one
	lane   float64 // m a lane, of a road with lanes and no width
	radius float64 // m, of the ground round a point
}

type tagMatch struct {
	key      string
	patterns []string
}

// DefaultMapKey is the built-in table.
func DefaultMapKey() *MapKey {
	key, err := ReadMapKey(strings.NewReader(mapKeyCSV))
	if err != nil {
		panic("zones: mapkey.csv: " + err.Error()) // part of the program
	}
	return key
}

var mapKeyHeader = []string{"tags", "shape", "kind", "width_m", "lane_m", "radius_m", "note"}

// ReadMapKey reads a table like the built-in one: CSV with the columns tags,
// shape, kind, width_m, lane_m, radius_m and note. Tags are written
// key=value, separated by spaces; a value may hold alternatives split by |
// and the wildcard *. A tag whose value is "no" counts as absent. An empty
// kind leaves the object out. All bad rows are told, each with its line.
func ReadMapKey(r io.Reader) (*MapKey, error) {
	key := new(MapKey)
	err := tables.Read(r, "tags", checkMapKeyHeader, func(cells []string) []error {
		row, err := parseMapKeyRow(cells)
		if err != nil {
			return []error{err}
		}
		key.rows = append(key.rows, row)
		return nil
	})
	if err != nil {
		return nil, err
	}
	return key, nil
}

func checkMapKeyHeader(columns []string) error {
	if !slices.Equal(columns, mapKeyHeader) {
		return fmt.Errorf("the columns must be %s", strings.Join(mapKeyHeader, ","))
	}
	return nil
}

var mapKeyShapes = map[string]shape{"point": point, "line": line, "area": area, "any": point | line | area}

func parseMapKeyRow(record []string) (mapKeyRow, error) {
	row := mapKeyRow{kind: Kind(record[2])}
	var known bool
	if row.shapes, known = mapKeyShapes[record[1]]; !known {
		return row, fmt.Errorf("shape %q is not point, line, area or any", record[1])
	}
	if row.kind != "" && !row.kind.Known() {
		return row, fmt.Errorf("kind %q is not known", record[2])
	}
	var err error
	if row.tags, err = parseTags(record[0]); err != nil {
		return row, err
	}
	for i, size := range []*float64{&row.width, &row.lane, &row.radius} {
		if *size, err = parseSize(mapKeyHeader[3+i], record[3+i]); err != nil {
			return row, err
		}
	}
	return row, row.checkShapes()
}

func parseTags(text string) ([]tagMatch, error) {
	var tags []tagMatch
	for _, tag := range strings.Fields(text) {
		key, values, _ := strings.Cut(tag, "=")
		if key == "" || values == "" {
			return nil, fmt.Errorf("tag %q is not written key=value", tag)
		}
		tags = append(tags, tagMatch{key, strings.Split(values, "|")})
	}
	if len(tags) == 0 {
		return nil, errors.New("there are no tags, so the row would fit everything")
	}
	return tags, nil
}

// parseSize reads a length in metres; an empty one is 0.
func parseSize(column, text string) (float64, error) {
	if text == "" {
		return 0, nil
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v > 0 && v <= widest) {
		return 0, fmt.Errorf("%s %q is not a length of up to %d m", column, text, widest)
	}
	return v, nil
}

// checkShapes refuses a row that gives a kind a geometry which it cannot have,
// or gives a line or a point that covers ground no size.
func (r mapKeyRow) checkShapes() error {
	odd := r.shapes &^ shapes[r.kind]
	switch {
	case r.kind == "":
		return nil
	case r.kind.IsCover() && r.shapes&line != 0 && r.width == 0:
		return fmt.Errorf("kind %s mapped as a line needs a width_m", r.kind)
	case r.kind.IsCover() && r.shapes&point != 0 && r.radius == 0:
		return fmt.Errorf("kind %s mapped as a point needs a radius_m", r.kind)
	case r.kind.IsCover() || odd == 0:
		return nil
	case r.kind == Tree && odd == line && r.width > 0:
		return nil // a row of trees
	}
	return fmt.Errorf("kind %s can only be a %s", r.kind, shapes[r.kind])
}

// find returns the first row that fits an object's tags and geometry.
func (k *MapKey) find(tags ingest.Properties, s shape) (mapKeyRow, bool) {
	for _, row := range k.rows {
		if row.shapes&s != 0 && fitAll(row.tags, tags) {
			return row, true
		}
	}
	return mapKeyRow{}, false
}

// fitAll reports whether tags fit each of the wanted ones.
func fitAll(wanted []tagMatch, tags ingest.Properties) bool {
	for _, m := range wanted {
		value, tagged := tags.Tag(m.key)
		if !tagged || value == "no" || !m.fits(value) {
			return false
		}
	}
	return true
}

// fits reports whether a value is one of the alternatives.
func (m tagMatch) fits(value string) bool {
	return slices.ContainsFunc(m.patterns, func(pattern string) bool { return wildcard(pattern, value) })
}

// wildcard reports whether a value fits a pattern, in which each * stands for
// any text.
func wildcard(pattern, value string) bool {
	parts := strings.Split(pattern, "*")
	last := len(parts) - 1
	if last == 0 {
		return value == pattern
	}
	value, found := strings.CutPrefix(value, parts[0])
	for _, part := range parts[1:last] {
		if found {
			_, value, found = strings.Cut(value, part)
		}
	}
	return found && strings.HasSuffix(value, parts[last])
}
