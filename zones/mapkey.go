package zones

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"path"
	"strconv"
	"strings"

	"example.org/turfplat/geo/ingest"
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
	crown  float64 // m, diameter of a tree's crown
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

var mapKeyHeader = []string{"tags", "shape", "kind", "width_m", "lane_m", "radius_m", "crown_m", "note"}

// ReadMapKey reads a table like the built-in one: CSV with the columns tags,
// shape, kind, width_m, lane_m, radius_m, crown_m and note. Tags are written
// key=value, separated by spaces; a value may hold alternatives split by |
// and the wildcard *. A tag whose value is "no" counts as absent. An empty
// kind leaves the object out. All bad rows are told, each with its line.
func ReadMapKey(r io.Reader) (*MapKey, error) {
	table := csv.NewReader(r)
	table.FieldsPerRecord = len(mapKeyHeader)
	header, err := table.Read()
	if err != nil {
		return nil, err
	}
	if strings.Join(header, ",") != strings.Join(mapKeyHeader, ",") {
		return nil, fmt.Errorf("line 1: the columns must be %s", strings.Join(mapKeyHeader, ","))
	}
	key := new(MapKey)
	var bad []error
	for {
		record, err := table.Read()
		if err == io.EOF {
			return key, errors.Join(bad...)
		}
		if err != nil {
			return nil, err
		}
		row, err := parseMapKeyRow(record)
		if err != nil {
			line, _ := table.FieldPos(0)
			bad = append(bad, fmt.Errorf("line %d: %w", line, err))
		}
		key.rows = append(key.rows, row)
	}
}

func parseMapKeyRow(record []string) (mapKeyRow, error) {
	row := mapKeyRow{kind: Kind(record[2])}
	var known bool
	if row.shapes, known = map[string]shape{"point": point, "line": line, "area": area, "any": point | line | area}[record[1]]; !known {
		return row, fmt.Errorf("shape %q is not point, line, area or any", record[1])
	}
	if row.kind != "" && !row.kind.Known() {
		return row, fmt.Errorf("kind %q is not known", record[2])
	}
	for _, tag := range strings.Fields(record[0]) {
		key, values, found := strings.Cut(tag, "=")
		if !found {
			return row, fmt.Errorf("tag %q is not written key=value", tag)
		}
		row.tags = append(row.tags, tagMatch{key, strings.Split(values, "|")})
	}
	for i, size := range []*float64{&row.width, &row.lane, &row.radius, &row.crown} {
		text := record[3+i]
		if text == "" {
			continue
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil || !(v > 0 && v < 1000) {
			return row, fmt.Errorf("%s %q is not a length in metres", mapKeyHeader[3+i], text)
		}
		*size = v
	}
	return row, nil
}

// find returns the first row that fits an object's tags and geometry.
func (k *MapKey) find(tags ingest.Properties, s shape) (mapKeyRow, bool) {
	for _, row := range k.rows {
		if row.shapes&s != 0 && row.fits(tags) {
			return row, true
		}
	}
	return mapKeyRow{}, false
}

func (r mapKeyRow) fits(tags ingest.Properties) bool {
	for _, m := range r.tags {
		value, tagged := tags.Tag(m.key)
		if !tagged || value == "no" || !m.fits(value) {
			return false
		}
	}
	return true
}

func (m tagMatch) fits(value string) bool {
	for _, pattern := range m.patterns {
		if ok, err := path.Match(pattern, value); ok && err == nil || pattern == "*" {
			return true
		}
	}
	return false
}
