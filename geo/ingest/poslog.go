package ingest

import (
	"bufio"
	"bytes"
	"time"
)

// A posLog reads a position log of RTKLIB with latitude and longitude in
// degrees (manual of version 2.4.2, appendix B.1, from memory): comments and
// the names of the columns stand in lines that begin with %, and the time
// takes two columns. Times are as the log has them, mostly GPS time.
type posLog struct {
	log     *trackLog
	columns map[string]int // by name, without the unit; nil until they are known
}

// posMarks are what the names of the columns have in the various forms of the
// log.
var posMarks = []string{"latitude(", "x-ecef(m)", "e-baseline(m)"}

// isPosLog reports whether a text begins like a position log.
func isPosLog(text []byte) bool {
	if text[0] != '%' {
		return false
	}
	for _, mark := range posMarks {
		if bytes.Contains(text, []byte(mark)) {
			return true
		}
	}
	return false
}

func readPosLog(r *bufio.Reader, log *trackLog, _ Limits) *fault {
	p := &posLog{log: log}
	lines := &textLines{r: r, log: log}
	for line, ok := lines.next(); ok; line, ok = lines.next() {
		cells := bytes.FieldsFunc(line, func(r rune) bool { return r == ' ' || r == '\t' || r == ',' })
		switch {
		case len(cells) == 0:
		case line[0] == '%':
			p.names(cells, lines.number)
		case p.columns == nil:
			return posFault()
		default:
			p.row(cells, lines.number)
		}
	}
	if p.columns == nil {
		return posFault()
	}
	return nil
}

func posFault() *fault {
	return &fault{
		code: "pos_columns",
		text: "position log does not name columns of latitude and longitude in degrees",
		hint: "write it again with positions in decimal degrees and a header",
	}
}

// names reads the names of the columns, if the line has them: %, the scale of
// the times, latitude and so on. The % stands where rows have the first of the
// two columns of the time.
func (p *posLog) names(cells [][]byte, line int) {
	columns := make(map[string]int)
	for i, cell := range cells[:min(len(cells), mostPosColumns)] {
		columns[string(cell)] = i
	}
	if columns["latitude(deg)"] < 2 || columns["longitude(deg)"] < 2 {
		return
	}
	p.columns = columns
	p.log.begin(0)
	if string(cells[1]) != "UTC" {
		p.log.note(finding{
			severity: Note, code: "time_scale", plural: "times",
			text: "times are " + Quoted(string(cells[1])) + ", not UTC, kept as they stand (GPS time is 18 s ahead since 2017)",
		}, line)
	}
}

// mostPosColumns is more than the log has.
const mostPosColumns = 40

// row adds the fix of a row.
func (p *posLog) row(cells [][]byte, line int) {
	at, ok := p.log.position(p.cell(cells, "longitude(deg)"), p.cell(cells, "latitude(deg)"), line)
	if !ok {
		return
	}
	p.log.add(Fix{
		At:         at,
		Time:       p.time(cells, line),
		Satellites: p.log.satellites(p.cell(cells, "ns"), line),
		Quality:    p.quality(p.cell(cells, "Q"), line),
		Sigma: axisSigma(
			p.log.positive("accuracy", p.cell(cells, "sdn(m)"), line),
			p.log.positive("accuracy", p.cell(cells, "sde(m)"), line),
		),
	}, line)
}

// cell is that of a column; empty if there is none.
func (p *posLog) cell(cells [][]byte, name string) []byte {
	if i := p.columns[name]; i > 0 && i < len(cells) {
		return cells[i]
	}
	return nil
}

// time reads the first two cells: week and second of the week, counted from
// the beginning of GPS time, or date and time of day.
func (p *posLog) time(cells [][]byte, line int) time.Time {
	const week, gpsBegins = 7 * 86400, 315964800 // seconds; 1980-01-06
	weeks, counted := plainNumber(cells[0])
	second, ok := plainNumber(cells[1])
	if counted && ok {
		if t, ok := momentAt(gpsBegins + float64(weeks*week) + second); ok {
			return t
		}
	}
	text := string(cells[0]) + " " + string(cells[1])
	t, _, ok := parseMoment(text)
	if !ok {
		p.log.unread("time", text, line)
	}
	return t
}

// posQualities are the codes of NMEA 0183 GGA for those of the log (1 fixed, 2
// float, 3 SBAS, 4 differential, 5 single, 6 precise point positioning), as
// RTKLIB itself writes NMEA (from memory).
var posQualities = [...]int{0, 4, 5, 2, 2, 1, 3}

func (p *posLog) quality(text []byte, line int) int {
	if len(text) == 0 {
		return -1
	}
	q, ok := plainCount(text)
	if !ok || q >= len(posQualities) {
		p.log.unread("fix", string(text), line)
		return -1
	}
	return posQualities[q]
}
