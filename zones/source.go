package zones

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"example.org/turfplat/geo"
)

// Source is where an object's edge comes from; it decides how far the edge
// may be off.
type Source string

// The sources of edges.
const (
	Traced       Source = "traced"
	Walked       Source = "walked"
	Taped        Source = "taped"
	Imported     Source = "imported"
	DefaultWidth Source = "default_width"
)

// statedWidth is the row of lines whose width is known; no object names it.
const statedWidth Source = "stated_width"

// sourcesCSV holds a row a source: the 1-sigma error of its edges, how it
// hangs together along an edge, and on what the figure rests.
//
//go:embed sources.csv
var sourcesCSV string

var edgeErrors = mustReadSources(sourcesCSV)

var errorKinds = map[string]geo.ErrorKind{"vertices": geo.Vertices, "width": geo.Width, "walk": geo.Walk}

// mustReadSources panics on a malformed row: the table is part of the program.
func mustReadSources(table string) map[Source]geo.EdgeError {
	rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("zones: sources.csv: %v", err))
	}
	errors := make(map[Source]geo.EdgeError)
	for _, row := range rows[1:] {
		kind, known := errorKinds[row[1]]
		sigma, err1 := strconv.ParseFloat(row[2], 64)
		reach, err2 := strconv.ParseFloat(row[3], 64)
		if !known || err1 != nil || err2 != nil {
			panic(fmt.Sprintf("zones: sources.csv: bad row %q", row))
		}
		errors[Source(row[0])] = geo.EdgeError{Kind: kind, Sigma: geo.Length(sigma), Reach: geo.Length(reach)}
	}
	return errors
}

// Known reports whether there is such a source.
func (s Source) Known() bool {
	_, known := edgeErrors[s]
	return known && s != statedWidth
}

// EdgeError returns the default error of edges from the source.
func (s Source) EdgeError() geo.EdgeError { return edgeErrors[s] }
