package soil

import (
	"bufio"
	"bytes"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"example.org/turfplat/geo/ingest"
)

// What a log may ask of the machine: ten years of half-hours of ten sensors are
// a third of it.
const (
	mostReadings = 5_000_000
	mostStations = 100_000
	mostBytes    = 512 << 20
	longestLine  = 64 << 10 // bytes
	mostColumns  = 200      // of temperatures
	preamble     = 20       // lines before the one that names the columns
)

// Options say how to read a log.
type Options struct {
	Columns   Columns
	Longitude float64 // of the place, degrees east: moments in UTC count to the day by the sun there
	Latitude  float64 // of the place, degrees north: says when its soil does not freeze; 0 = not known
}

// ReadLog reads a log of temperatures: text in rows, parted by commas,
// semicolons or tabs (then decimals may have a comma), under a line that names
// the columns. Times are ISO 8601, a day or a moment. A moment counts to the
// day that its clock shows; one in UTC to the day of local mean solar time at
// the longitude. Rows may come in any order; of two of one moment the first
// stands. Every problem is told, with its line and column; the Log is nil if
// one of them is a Refusal.
func ReadLog(r io.Reader, source string, o Options) (*Log, []ingest.Problem) {
	reader := &logReader{options: o, findings: findings{source: source}, sensors: make(map[sensorKey]*sensor), stations: make(map[string]*Station)}
	reader.read(r)
	if !reader.findings.refused() {
		reader.settle()
	}
	if reader.findings.refused() {
		return nil, reader.findings.problems()
	}
	return reader.log(), reader.findings.problems()
}

// A logReader gathers readings.
type logReader struct {
	options  Options
	findings findings
	layout   layout
	cells    []string
	time     []string // the cells of the row's moment
	readings int
	stations map[string]*Station
	sensors  map[sensorKey]*sensor
}

// A sensorKey is a sensor by its station and its column.
type sensorKey struct {
	station string
	column  int // of the layout
}

func (l *logReader) read(r io.Reader) {
	limited := &io.LimitedReader{R: r, N: mostBytes}
	lines := bufio.NewScanner(limited)
	lines.Buffer(make([]byte, 0, longestLine), longestLine)
	number, named, first := 0, false, ""
	for lines.Scan() {
		number++
		line, ok := l.text(lines.Bytes(), number)
		if !ok {
			return
		}
		switch {
		case strings.TrimSpace(line) == "":
		case named:
			l.row(line, number)
		case number <= preamble:
			if first == "" {
				first = line
			}
			named = l.header(line, number)
		}
		if l.readings > mostReadings || len(l.stations) > mostStations {
			l.findings.refuse(number, "soil_large", "the log holds more readings than can be taken in", "give the station and the years that are needed")
			return
		}
	}
	l.end(lines.Err(), limited.N == 0, number)
	if !named && !l.findings.refused() {
		_, lacks := findLayout(first, l.options.Columns)
		l.findings.refuse(0, "soil_columns", "no line names the columns; the first lacks "+lacks,
			"name them time, soil_2in_f or soil_5cm_c at the top, or say which is which with --columns time=...,temp=...,unit=c,depth=5cm")
	}
}

// end tells why reading came to an end, if not by the end of the log.
func (l *logReader) end(err error, full bool, line int) {
	switch {
	case err == bufio.ErrTooLong:
		l.findings.refuse(line+1, "soil_line", "the line is too long to be a row of a log", "look whether this is a text file with line breaks")
	case err != nil:
		l.findings.refuse(0, "read_failed", "cannot be read on: "+err.Error(), "")
	case full:
		l.findings.refuse(line, "soil_large", "the log is longer than 512 MB", "give the station and the years that are needed")
	}
}

// text is a line without byte order mark; ok is false if it is no text.
func (l *logReader) text(line []byte, number int) (string, bool) {
	if number == 1 {
		line = bytes.TrimPrefix(line, []byte("\xef\xbb\xbf"))
	}
	if !utf8.Valid(line) || bytes.IndexByte(line, 0) >= 0 {
		l.findings.refuse(number, "utf8_invalid", "the line is not text in UTF-8", "save the log as CSV with the UTF-8 encoding")
		return "", false
	}
	return string(line), true
}

// header reads a line that may name the columns.
func (l *logReader) header(line string, number int) bool {
	found, lacks := findLayout(line, l.options.Columns)
	if lacks != "" {
		return false
	}
	for _, name := range found.unclear {
		l.findings.warn(number, name, "columns", "soil_column", "the name does not say depth and unit, passed over", "name it as in soil_2in_f or soil_5cm_c, or use --columns")
	}
	if both := found.twice(); both != "" {
		l.findings.refuse(number, "soil_columns", "columns "+both+" are of one sensor", "name with --columns the one to read")
	}
	if len(found.sensors) > mostColumns {
		l.findings.refuse(number, "soil_large", "there are more columns of temperatures than can be taken in", "name with --columns those to read")
	}
	l.layout = found
	return true
}

// log is what was read, stations in order of their names.
func (l *logReader) log() *Log {
	log := &Log{Source: l.findings.source}
	for _, s := range l.stations {
		log.stations = append(log.stations, s)
	}
	slices.SortFunc(log.stations, func(a, b *Station) int { return strings.Compare(a.Name, b.Name) })
	return log
}
