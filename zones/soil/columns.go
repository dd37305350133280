package soil

import (
	"fmt"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
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

// A sensorColumn is one that holds temperatures. Its statistic is Mean if it
// holds readings, or means, from which those of days are made.
type sensorColumn struct {
	name      string
	medium    medium
	depth     geo.Length // of a sensor in the ground
	unit      material.Unit
	statistic Statistic
}

// ParseColumns reads what names the columns of a log,
//
//	time=COLUMN,temp=COLUMN,unit=c,depth=5cm,missing=-9999
//
// in any order, but that depth and statistic (min or max, for a column of daily
// lows or highs) speak of the temp before them. Time may be made of several
// columns: time=date+clock, time=year+day_of_year or time=year+day_of_year+hour.
// Further keys are station, air, air_min and air_max; missing, temp and air may
// be repeated. What is not named is found by its name, as without columns.
func ParseColumns(text string) (Columns, error) {
	var p columnsText
	for part := range strings.SplitSeq(text, ",") {
		key, value, ok := strings.Cut(part, "=")
		key, value = strings.TrimSpace(key), strings.TrimSpace(value)
		if !ok || value == "" {
			return Columns{}, columnsErrorf("write KEY=COLUMN, parted by commas", "%s names no column", ingest.Quoted(part))
		}
		read, known := columnsKeys[strings.ToLower(key)]
		if !known {
			return Columns{}, columnsErrorf("keys are time, station, temp, depth, statistic, air, air_min, air_max, unit and missing", "%s is no key of columns", ingest.Quoted(key))
		}
		if err := read(&p, value); err != nil {
			return Columns{}, err
		}
	}
	return p.columns()
}

// columnsText is what was read of a text that names columns.
type columnsText struct {
	Columns
	unit material.Unit
}

var columnsKeys = map[string]func(*columnsText, string) error{
	"time":      (*columnsText).setTime,
	"station":   func(p *columnsText, name string) error { p.station = name; return nil },
	"missing":   func(p *columnsText, code string) error { p.missing = append(p.missing, code); return nil },
	"unit":      (*columnsText).setUnit,
	"temp":      func(p *columnsText, name string) error { return p.sensor(name, ground, Mean) },
	"air":       func(p *columnsText, name string) error { return p.sensor(name, air, Mean) },
	"air_min":   func(p *columnsText, name string) error { return p.sensor(name, air, Lowest) },
	"air_max":   func(p *columnsText, name string) error { return p.sensor(name, air, Highest) },
	"depth":     (*columnsText).setDepth,
	"statistic": (*columnsText).setStatistic,
}

func (p *columnsText) setTime(names string) error {
	p.time = strings.Split(names, "+")
	if len(p.time) > 3 {
		return columnsErrorf("write time=date+clock or time=year+day_of_year+hour", "time is made of at most three columns, not %d", len(p.time))
	}
	for i, name := range p.time {
		if p.time[i] = strings.TrimSpace(name); p.time[i] == "" {
			return columnsErrorf("", "%s lacks a name", ingest.Quoted("time="+names))
		}
	}
	return nil
}

func (p *columnsText) setUnit(name string) error {
	q, err := material.ParseUnit(name)
	if err != nil || !isTemperature(q) {
		return columnsErrorf("write unit=c or unit=f", "%s is no unit of temperature", ingest.Quoted(name))
	}
	p.unit = q
	return nil
}

func isTemperature(u material.Unit) bool { return u.Dimension() == material.Dimension{C: 1} }

// sensor adds a column; what its own name says of it holds until more is said.
func (p *columnsText) sensor(name string, m medium, s Statistic) error {
	c, _ := sensorOfName(name)
	c.name, c.medium = name, m
	if s != Mean {
		c.statistic = s
	}
	p.sensors = append(p.sensors, c)
	return nil
}

// soilColumn is the one that depth and statistic speak of.
func (p *columnsText) soilColumn(key string) (*sensorColumn, error) {
	if n := len(p.sensors); n > 0 && p.sensors[n-1].medium == ground {
		return &p.sensors[n-1], nil
	}
	return nil, columnsErrorf("write temp=COLUMN before it", "%s speaks of no column", key)
}

func (p *columnsText) setDepth(text string) error {
	c, err := p.soilColumn("depth")
	if err != nil {
		return err
	}
	q, err := material.Parse(text)
	if err == nil {
		c.depth, err = q.Length()
	}
	if err != nil || !(c.depth > 0) || c.depth > deepest {
		return columnsErrorf("write it as in depth=2in or depth=5cm, at most 2 m", "%s is no depth of a sensor", ingest.Quoted(text))
	}
	return nil
}

func (p *columnsText) setStatistic(name string) error {
	c, err := p.soilColumn("statistic")
	if err != nil {
		return err
	}
	s, known := statisticOf(strings.ToLower(name))
	if !known {
		return columnsErrorf("write mean, min or max", "%s is no statistic", ingest.Quoted(name))
	}
	c.statistic = s
	return nil
}

// columns are those read, if all is said that must be.
func (p *columnsText) columns() (Columns, error) {
	for i := range p.sensors {
		c := &p.sensors[i]
		if p.unit != (material.Unit{}) {
			c.unit = p.unit
		}
		if c.unit == (material.Unit{}) {
			return Columns{}, columnsErrorf("add unit=c or unit=f", "columns do not say the unit of %s", ingest.Quoted(c.name))
		}
		if c.medium == ground && c.depth == 0 {
			return Columns{}, columnsErrorf("add depth=5cm or the like after its temp=...", "columns do not say how deep the sensor of %s is", ingest.Quoted(c.name))
		}
	}
	return p.Columns, nil
}

// columnsErrorf is an error of a text that names columns.
func columnsErrorf(hint, format string, v ...any) error {
	return &material.InputError{Text: fmt.Sprintf(format, v...), Hint: hint}
}
