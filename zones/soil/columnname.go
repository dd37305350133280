package soil

import (
	"regexp"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones/material"
)

// deepest is as deep as a sensor's column can say; the cellar of a house.
const deepest geo.Length = 2

// soilName and airName are the forms of names of columns; the medium, for soil
// the depth, what of a day it is, and the unit.
var (
	soilName = regexp.MustCompile(`(?i)^soil_(\d{1,3}(?:\.\d{1,3})?)_?(in|cm|mm)(?:_(mean|avg|min|max))?_([cf])$`)
	airName  = regexp.MustCompile(`(?i)^air(?:_(mean|avg|min|max))?_([cf])$`)
)

// sensorOfName reads the name of a column that says what it holds; ok is false
// if it does not.
func sensorOfName(name string) (c sensorColumn, ok bool) {
	if m := soilName.FindStringSubmatch(name); m != nil {
		c = sensorColumn{name: name, medium: ground, unit: unitOf(m[4])}
		c.statistic, _ = statisticOf(strings.ToLower(m[3]))
		q, err := material.Parse(m[1] + " " + strings.ToLower(m[2]))
		if err == nil {
			c.depth, err = q.Length()
		}
		return c, err == nil && c.depth > 0 && c.depth <= deepest
	}
	if m := airName.FindStringSubmatch(name); m != nil {
		c = sensorColumn{name: name, medium: air, unit: unitOf(m[2])}
		c.statistic, _ = statisticOf(strings.ToLower(m[1]))
		return c, true
	}
	return c, false
}

// celsius is the unit in which temperatures are kept.
var celsius = unitOf("C")

func unitOf(letter string) material.Unit {
	u, err := material.ParseUnit(strings.ToUpper(letter))
	if err != nil {
		panic("soil: " + err.Error())
	}
	return u
}

// statisticOf reads the name of a statistic; none is the mean.
func statisticOf(name string) (Statistic, bool) {
	switch name {
	case "", "mean", "avg":
		return Mean, true
	case "min":
		return Lowest, true
	case "max":
		return Highest, true
	}
	return Mean, false
}
