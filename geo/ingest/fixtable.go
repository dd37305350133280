package ingest

import (
	"bufio"
	"bytes"
	"cmp"
)

// A fixTable reads a table of fixes, one a line, whose columns are named in a
// line at its top: latitude and longitude in degrees, and whatever
// [columnNames] has. Fields are separated by commas, semicolons or tabs; where
// it is not by commas, decimals may have a comma.
type fixTable struct {
	log     *trackLog
	columns columns
	cells   [][]byte // of the row at hand
}

// preambleLines is how many lines may stand before the names of the columns.
const preambleLines = 20

// isFixTable reports whether a text has the names of columns in its first
// lines.
func isFixTable(text []byte) bool {
	for range preambleLines {
		line, rest, more := bytes.Cut(text, []byte{'\n'})
		if _, ok := findColumns(line); ok {
			return true
		}
		if !more {
			return false
		}
		text = rest
	}
	return false
}

func readFixTable(r *bufio.Reader, log *trackLog, _ Limits) *fault {
	lines := &textLines{r: r, log: log}
	t := &fixTable{log: log}
	for range preambleLines {
		line, ok := lines.next()
		if !ok {
			break
		}
		if t.columns, ok = findColumns(line); ok {
			t.rows(lines)
			return nil
		}
	}
	return &fault{
		code: "csv_header",
		text: "has no line that names its columns, with lat and lon among them",
		hint: "put a line such as lat,lon,time,hdop at the top",
	}
}

func (t *fixTable) rows(lines *textLines) {
	t.log.begin(0)
	for line, ok := lines.next(); ok; line, ok = lines.next() {
		if len(trimBlanks(line)) > 0 {
			t.cells = splitRow(t.cells[:0], line, t.columns.separator)
			t.row(lines.number)
		}
	}
}

// row adds the fix of the row at hand.
func (t *fixTable) row(line int) {
	lon, lat := t.decimal(t.cell(lonColumn)), t.decimal(t.cell(latColumn))
	if len(lon) == 0 && len(lat) == 0 {
		t.log.nowhere(line)
		return
	}
	at, ok := t.log.position(lon, lat, line)
	if !ok {
		return
	}
	t.log.add(Fix{
		At:         at,
		Time:       t.log.tableTime(t.cell(dateColumn), t.decimal(t.cell(timeColumn)), line),
		HDOP:       t.measure("hdop", hdopColumn, line),
		Sigma:      cmp.Or(t.measure("sigma", sigmaColumn, line), sigmaOfAccuracy(t.measure("accuracy", accuracyColumn, line))),
		Satellites: t.log.satellites(t.cell(satellitesColumn), line),
		Quality:    t.log.quality(t.cell(qualityColumn), line),
	}, line)
}

func (t *fixTable) measure(what string, c column, line int) float64 {
	return t.log.positive(what, t.decimal(t.cell(c)), line)
}

// cell is that of a column in the row at hand; empty if there is none.
func (t *fixTable) cell(c column) []byte {
	if i := t.columns.at[c]; i >= 0 && i < len(t.cells) {
		return trimBlanks(t.cells[i])
	}
	return nil
}

// decimal makes a point of a decimal comma.
func (t *fixTable) decimal(text []byte) []byte {
	if i := bytes.IndexByte(text, ','); i >= 0 && t.columns.separator != ',' {
		text[i] = '.'
	}
	return text
}
