package soil

import (
	"example.org/turfplat/geo"
	"example.org/turfplat/zones/material"
)

// A medium is what a sensor stands in.
type medium int

const (
	ground medium = iota
	air
)

// Columns say which columns of a log are read, and how. The zero Columns are
// found by their names: time, station, and soil_2in_f, soil_5cm_c,
// soil_2in_min_f, air_max_c, air_min_c, air_f and so on.
type Columns struct {
	time    []string // one column, or several that make a moment together
	station string
	missing []string
	sensors []sensorColumn
}

// A sensorColumn is one that holds temperatures.
type sensorColumn struct {
	name      string
	medium    medium
	depth     geo.Length // of a sensor in the ground
	unit      material.Unit
	statistic Statistic
	daily     bool // the name says that a value is a day's mean
}
