package soil

import (
	"time"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones/material"
)

// A Statistic is what of a day's readings counts.
type Statistic int

// The statistics: the mean of the day's 24 hours, its lowest and its highest
// reading.
const (
	Mean Statistic = iota
	Lowest
	Highest
)

var statisticNames = [...]string{Mean: "mean", Lowest: "min", Highest: "max"}

// String is the statistic's name in names of columns.
func (s Statistic) String() string { return statisticNames[s] }

// A DayValue is the temperature of a day.
type DayValue struct {
	Day      time.Time // midnight UTC, for the local day
	Value    material.Temperature
	Readings int // it rests on
}

// A Series is the days of a sensor in order; days that are not known are not
// in it.
type Series struct {
	Station   string
	Column    string     // of the log
	Depth     geo.Length // of the sensor; 0 for the air
	Statistic Statistic
	Days      []DayValue
	Note      string // what is to be told of the choice of this sensor; may be empty
}
