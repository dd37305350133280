package ingest

import (
	"encoding/json"

	"github.com/paulmach/orb"
)

// A Feature is one object of a site: where it is and what is said of it.
type Feature struct {
	// Index is the feature's number in the features read, from 0.
	Index int
	// ID is the id among the properties, else the feature's own, as first
	// read; else empty.
	ID string
	// Geometry is in degrees, longitude first. Shells run counter-clockwise,
	// holes clockwise, rings are closed (RFC 7946 3.1.6). It is nil for a
	// feature without a place, and for one that was refused.
	Geometry   orb.Geometry
	Properties Properties

	source  string   // of the part of a joined site that it came with, else empty
	line    int      // of a newline-delimited input, else 0
	members []Member // the feature object as read, its geometry as repaired
}

var null = json.RawMessage("null")

// NewFeature makes a feature that was not read from a file. The properties
// are copied.
func NewFeature(props Properties, g orb.Geometry) *Feature {
	f := &Feature{Geometry: g, Properties: props.Clone(), members: featureMembers(null)}
	f.ID, _ = f.Properties.Text("id")
	return f
}

// featureMembers are those of a feature object that has nothing but a geometry.
func featureMembers(geometry json.RawMessage) []Member {
	return []Member{
		{"type", json.RawMessage(`"Feature"`)},
		{"properties", null},
		{"geometry", geometry},
	}
}

// Label is what people call the feature: its name, else its id, else nothing.
func (f *Feature) Label() string {
	if name, ok := f.Properties.Text("name"); ok && name != "" {
		return name
	}
	return f.ID
}
