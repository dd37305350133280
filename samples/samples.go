// Package samples holds an invented property, ready to run.
package samples

import _ "embed"

// AlderLaneName is the file name of AlderLane.
const AlderLaneName = "alder-lane.geojson"

// AlderLane is the site file of an invented corner lot: a house, drive and
// walks, beds, a pond, trees, four traced zones, a cutline and a keepout.
//
//go:embed alder-lane.geojson
var AlderLane []byte

// AlderLaneSeasonName is the file name of AlderLaneSeason.
const AlderLaneSeasonName = "alder-lane-season.yaml"

// AlderLaneSeason is an invented season's program for the property.
//
//go:embed alder-lane-season.yaml
var AlderLaneSeason []byte
