package ingest

import (
	"bytes"
	"slices"
	"strings"
	"time"
)

// A column is one of a table of fixes.
type column int

const (
	latColumn column = iota
	lonColumn
	timeColumn
	dateColumn
	hdopColumn
	accuracyColumn
	sigmaColumn
	qualityColumn
	satellitesColumn
	columnCount
)

// columnNames are the names in use for each column, as columnName spells them
// (common practice, no source). An accuracy is the radius a phone states, a
// sigma the 1-sigma error on one axis, both in metres.
var columnNames = [columnCount][]string{
	latColumn:        {"lat", "latitude"},
	lonColumn:        {"lon", "lng", "long", "longitude"},
	timeColumn:       {"time", "timestamp", "datetime", "date_time", "utc", "utc_time", "time_utc", "unix_time", "unixtime"},
	dateColumn:       {"date", "utc_date"},
	hdopColumn:       {"hdop"},
	accuracyColumn:   {"accuracy", "horizontal_accuracy", "hacc"},
	sigmaColumn:      {"sigma"},
	qualityColumn:    {"quality", "fix", "fix_quality", "gga_quality"},
	satellitesColumn: {"satellites", "sats", "sat", "num_sats", "num_satellites", "nsat", "ns"},
}

// columns are those of a table.
type columns struct {
	separator byte
	at        [columnCount]int // -1 = the table has none
}

// findColumns reads the line of names; ok is false if it does not name
// latitude and longitude.
func findColumns(line []byte) (c columns, ok bool) {
	for _, separator := range []byte{';', '\t', ','} {
		c = columns{separator: separator}
		for i := range c.at {
			c.at[i] = -1
		}
		for i, cell := range splitRow(nil, bytes.TrimRight(line, "\r"), separator) {
			name := columnName(cell)
			for kind, names := range columnNames {
				if c.at[kind] < 0 && slices.Contains(names, name) {
					c.at[kind] = i
				}
			}
		}
		if c.at[latColumn] >= 0 && c.at[lonColumn] >= 0 {
			return c, true
		}
	}
	return c, false
}

// columnName spells the name of a column in small letters and digits with
// underscores between the words, without units and without the path that
// recorders put before it: "Latitude (deg)" and "%field.latitude" are latitude.
func columnName(cell []byte) string {
	const longest = 100 // bytes
	if len(cell) > longest {
		return ""
	}
	name := strings.ToLower(string(cell[bytes.LastIndexByte(cell, '.')+1:]))
	words := strings.FieldsFunc(name, func(r rune) bool { return (r < 'a' || r > 'z') && (r < '0' || r > '9') })
	if n := len(words); n > 1 && slices.Contains([]string{"deg", "degrees", "m", "meters", "metres"}, words[n-1]) {
		words = words[:n-1]
	}
	return strings.Join(words, "_")
}

// splitRow appends the cells of a line. A quoted cell may hold separators.
func splitRow(cells [][]byte, line []byte, separator byte) [][]byte {
	for {
		end := cellEnd(line, separator)
		cells = append(cells, bytes.Trim(line[:end], "\" "))
		if end == len(line) {
			return cells
		}
		line = line[end+1:]
	}
}

// cellEnd is the index after the cell a line begins with.
func cellEnd(line []byte, separator byte) int {
	quoted := false
	for i, c := range line {
		switch {
		case c == '"':
			quoted = !quoted
		case c == separator && !quoted:
			return i
		}
	}
	return len(line)
}

// tableTime reads the time of a row: ISO 8601, perhaps with the date in a
// column of its own, or a count of seconds, which may be thousandths,
// millionths or milliardths of them, from the beginning of 1970.
func (l *trackLog) tableTime(date, clock []byte, line int) time.Time {
	text := string(clock)
	if v, ok := plainNumber(clock); ok && len(date) == 0 {
		if t, ok := countedTime(v); ok {
			return t
		}
		l.unread("time", text, line)
		return time.Time{}
	}
	if len(date) > 0 && len(clock) > 0 {
		text = string(date) + "T" + text
	}
	return l.moment(text, line)
}

// countedTime is the time of a count of seconds or fractions of them: the unit
// is the one that puts it before the year 2100.
func countedTime(v float64) (time.Time, bool) {
	const most, least = 4102444800, 100_000_000 // seconds: 2100, 1973
	if v >= 0 && v < most {
		return momentAt(v)
	}
	for _, unit := range []float64{1e3, 1e6, 1e9} {
		if s := v / unit; s >= least && s < most {
			return momentAt(s)
		}
	}
	return time.Time{}, false
}
