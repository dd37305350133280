package zones

import (
	_ "embed"
	"strconv"

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

var errorKinds = map[string]geo.ErrorKind{"vertices": geo.Vertices, "width": geo.Width, "walk": geo.Walk}

var edgeErrors = edgeErrorsOf(mustReadRows("sources.csv", sourcesCSV, readSource,
	"source", "error", "sigma_m", "reach_m", "basis"))

type sourceRow struct {
	source Source
	error  geo.EdgeError
}

func readSource(cells []string) (sourceRow, bool) {
	kind, known := errorKinds[cells[1]]
	sigma, err1 := strconv.ParseFloat(cells[2], 64)
	reach, err2 := strconv.ParseFloat(cells[3], 64)
	row := sourceRow{Source(cells[0]), geo.EdgeError{Kind: kind, Sigma: geo.Length(sigma), Reach: geo.Length(reach)}}
	return row, known && err1 == nil && err2 == nil
}

func edgeErrorsOf(rows []sourceRow) map[Source]geo.EdgeError {
	errors := make(map[Source]geo.EdgeError)
	for _, row := range rows {
		errors[row.source] = row.error
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
