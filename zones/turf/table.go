package turf

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"example.org/turfplat/zones/tables"
)

// speciesCSV holds a row a species, each figure with the short name of its
// source; sourcesCSV says what those are.
var (
	//go:embed species.csv
	speciesCSV string
	//go:embed sources.csv
	sourcesCSV string
)

// A Table is the grasses that are known. It never changes.
type Table struct {
	species []Species
	at      map[string]int // by the key of each name
}

// Species returns the grasses in the order of the table.
func (t *Table) Species() []Species { return slices.Clone(t.species) }

// Default is the built-in table.
func Default() *Table { return builtIn() }

var builtIn = sync.OnceValue(func() *Table {
	t, err := read(strings.NewReader(speciesCSV), &Table{at: make(map[string]int)})
	if err != nil {
		panic("turf: species.csv: " + err.Error()) // part of the program
	}
	return t
})

// Citation says in full what the source of a built-in figure is; the source of
// a user's figure is its own citation.
func Citation(source string) string {
	if full, ok := citations()[source]; ok {
		return full
	}
	return source
}

var citations = sync.OnceValue(func() map[string]string {
	full := make(map[string]string)
	for _, row := range tables.BuiltIn("turf: sources.csv", sourcesCSV, "source", "citation") {
		full[row[0]] = row[1]
	}
	return full
})
