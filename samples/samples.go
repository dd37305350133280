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
