package soil

import (
	"strings"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
)

// noReading are the words that loggers write for one that is missing (common
// practice, no source).
var noReading = map[string]bool{"": true, "na": true, "n/a": true, "nan": true, "null": true, "none": true, "nil": true, "-": true, "--": true, "---": true, "m": true, "nd": true}

// row takes the readings of a row.
func (l *logReader) row(line string, number int) {
	l.cells = splitCells(l.cells[:0], line, l.layout.separator)
	l.time = l.time[:0]
	for _, i := range l.layout.time {
		l.time = append(l.time, l.cell(i))
	}
	m, ok := readMoment(l.time)
	if !ok {
		l.findings.warn(number, "time", "rows", "soil_time", ingest.Quoted(strings.Join(l.time, " "))+" is no time, row passed over",
			"write it as in 2026-04-05 or 2026-04-05T13:30")
		return
	}
	if m.utc {
		l.tellUTC(number)
		m.at += int64(l.options.Longitude / 360 * daySeconds)
	}
	station := ""
	if l.layout.station >= 0 {
		station = l.cell(l.layout.station)
	}
	for i := range l.layout.sensors {
		if v, ok := l.temperature(i, number); ok {
			l.keep(sensorKey{station, i}, reading{m.at, v, number})
		}
	}
}

func (l *logReader) tellUTC(line int) {
	text := "times are in UTC; days are taken by the sun at the site"
	if l.options.Longitude == 0 {
		text = "times are in UTC, and so are the days"
	}
	l.findings.add(line, "time", "times", ingest.Problem{Severity: ingest.Note, Code: "soil_utc", Text: text})
}

func (l *logReader) cell(i int) string {
	if i < len(l.cells) {
		return l.cells[i]
	}
	return ""
}

// temperature reads a cell of the row at hand; ok is false if it has none.
func (l *logReader) temperature(sensor, line int) (material.Temperature, bool) {
	column, text := &l.layout.sensors[sensor], l.cell(l.layout.at[sensor])
	if noReading[strings.ToLower(text)] || l.isMissing(text) {
		return 0, false
	}
	plain := text
	if l.layout.separator != ',' {
		plain = strings.Replace(text, ",", ".", 1)
	}
	number, ok := readNumber(plain)
	if !ok {
		l.findings.warn(line, column.name, "readings", "soil_unread", ingest.Quoted(text)+" is no temperature, left out", "")
		return 0, false
	}
	v := material.Temperature(material.Quantity{Number: number, Unit: column.unit}.SI())
	if v < possibleLow || v > hottestNamed {
		l.tellImpossible(column, v, line)
		return 0, false
	}
	return v, true
}

// hottestNamed is what the hottest reading becomes if its column is named as of
// degrees Celsius and holds Fahrenheit: what is beyond is a code, what is not
// may tell of the wrong unit ([logReader.judgeUnit]).
var hottestNamed = possibleHigh*9/5 + 32

func (l *logReader) tellImpossible(c *sensorColumn, v material.Temperature, line int) {
	shown := c.shown(v)
	code, _, _ := strings.Cut(shown, " ")
	l.findings.warn(line, c.name, "readings", "soil_impossible", shown+" is no temperature of soil or air, left out",
		"if it stands for a missing reading, say so with --columns missing="+code)
}

// isMissing reports whether a cell holds a code for a missing reading.
func (l *logReader) isMissing(text string) bool {
	for _, code := range l.options.Columns.missing {
		if strings.EqualFold(text, code) {
			return true
		}
		stated, isNumber := readNumber(code)
		if v, ok := readNumber(text); ok && isNumber && v == stated {
			return true
		}
	}
	return false
}

// keep adds a reading to its sensor.
func (l *logReader) keep(key sensorKey, r reading) {
	s := l.sensors[key]
	if s == nil {
		key.station = strings.Clone(key.station)
		s = &sensor{column: &l.layout.sensors[key.column]}
		l.sensors[key] = s
		station := l.stations[key.station]
		if station == nil {
			station = &Station{Name: key.station, last: r.at}
			l.stations[key.station] = station
		}
		station.sensors = append(station.sensors, s)
	}
	s.readings = append(s.readings, r)
	station := l.stations[key.station]
	station.last = max(station.last, r.at)
	l.readings++
}
