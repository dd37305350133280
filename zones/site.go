package zones

import (
	"encoding/hex"
	"path/filepath"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/turf"
)

// A Site is one property: its objects, in the frame laid around it.
type Site struct {
	ID       string
	Name     string
	Units    Units
	Revision int
	Notes    string
	Access   AccessNotes
	Species  string // the grass of all turf for which nothing else says it; "" = not stated

	// Attribution names the makers of map data that must be named with it.
	Attribution string

	Frame   geo.Frame
	Objects []*Object // in the order read, those that play a part
	Beyond  []*Object // covers wholly outside the outline: drawn, never measured

	Problems []ingest.Problem

	collection *ingest.Collection
	afresh     bool
	idle       int    // features that play no part
	region     string // whose rules hold; "" = none's
	told       Figures
	misspelt   []misspelling
	spelt      map[string]string // keys by what they were perhaps meant as
	sun        *SunRequest
	grasses    *turf.Table
}

// Units are the units people read.
type Units string

// The systems of units.
const (
	US     Units = "us"
	Metric Units = "metric"
)

// An Object is one traced thing and the part it plays.
type Object struct {
	ID   string
	Name string
	Kind Kind

	Cover  Kind       // the ground it covers; "" if none
	Ground geo.Region // what it covers or encloses; empty for lines and points
	Lines  []geo.Line // the centre lines of what is traced as lines
	Width  float64    // m, of lines that have one
	Points []geo.XY   // where what is traced as points stands
	Crown  float64    // m, diameter of a tree traced as a point

	Stature Stature

	Source  Source
	Error   geo.EdgeError
	Feature *ingest.Feature
	Place   ingest.Place

	traced    []geo.Ring           // the rings whose edges carry the error
	crossings []*geo.CrossingError // of rings that were read by the non-zero rule
	fromTags  bool
}

// Label names the object for people: its name, else its id, else its place in
// the file.
func (o *Object) Label() string {
	if o.Name != "" {
		return o.Name
	}
	return o.ID
}

// Refused reports whether anything found in the site keeps it from being
// measured.
func (s *Site) Refused() bool { return ingest.Refuses(s.Problems) }

// Region is whose rules hold on the site, one of [Regions]; "" if none is
// named.
func (s *Site) Region() string { return s.region }

// Digest is the SHA-256 of the bytes the site was read from, in hexadecimal.
func (s *Site) Digest() string { return hex.EncodeToString(s.collection.Digest[:]) }

// Of returns the site's objects of a kind.
func (s *Site) Of(kind Kind) []*Object {
	var found []*Object
	for _, o := range s.Objects {
		if o.Kind == kind {
			found = append(found, o)
		}
	}
	return found
}

// idFromFile is the id of a site that gives none.
func idFromFile(name string) string {
	base := filepath.Base(ingest.UnpackedName(name))
	if id := strings.TrimSuffix(base, filepath.Ext(base)); id != "" {
		return id
	}
	return "site" // a name that is nothing but an ending
}

// Warn adds a warning about the site as a whole.
func (s *Site) Warn(code, text, hint string) {
	s.problem(ingest.Warning, code, s.place(), text, hint)
}

// Refuse adds a problem that blocks the site as a whole.
func (s *Site) Refuse(code, text, hint string) {
	s.problem(ingest.Refusal, code, s.place(), text, hint)
}

// place is the site as a whole.
func (s *Site) place() ingest.Place {
	return ingest.Place{Source: s.collection.Source, Line: s.collection.Line, Feature: -1}
}

func (s *Site) problem(severity ingest.Severity, code string, place ingest.Place, text, hint string) {
	s.Problems = append(s.Problems, ingest.Problem{Severity: severity, Code: code, Place: place, Text: text, Hint: hint})
}
