package soil

import (
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// A layout says where the columns of a log stand in its rows.
type layout struct {
	separator byte
	time      []int
	station   int // -1 = there is none
	sensors   []sensorColumn
	at        []int    // of each sensor
	unclear   []string // names that begin as those of sensors do, but do not say depth and unit
}

// timeNames are the names under which time is found if columns do not name it.
var timeNames = []string{"time", "date", "datetime", "timestamp"}

// findLayout reads a line that names columns; lacks says what it is without,
// and is empty if it has all.
func findLayout(line string, c Columns) (l layout, lacks string) {
	best := -1
	for _, separator := range []byte{',', ';', '\t'} {
		names := splitCells(nil, line, separator)
		candidate, missing := newLayout(names, separator, c)
		if found := len(candidate.time) + len(candidate.sensors); found > best {
			best, l, lacks = found, candidate, missing
		}
	}
	return l, lacks
}

func newLayout(names []string, separator byte, c Columns) (l layout, lacks string) {
	l = layout{separator: separator, station: -1}
	var missing []string
	want := func(name string) int {
		i := findName(names, name)
		if i < 0 {
			missing = append(missing, ingest.Quoted(name))
		}
		return i
	}
	l.findTime(names, c.time, want)
	if l.station = findName(names, "station"); c.station != "" {
		l.station = want(c.station)
	}
	for _, s := range c.sensors {
		if i := want(s.name); i >= 0 {
			l.sensors, l.at = append(l.sensors, s), append(l.at, i)
		}
	}
	if len(c.sensors) == 0 {
		l.findSensors(names)
	}
	if len(l.sensors) == 0 && len(c.sensors) == 0 {
		missing = append(missing, "one of temperature, such as soil_2in_f")
	}
	return l, strings.Join(missing, ", ")
}

func (l *layout) findTime(names, time []string, want func(string) int) {
	if len(time) == 0 {
		time = timeNames[:1]
		for _, name := range timeNames {
			if findName(names, name) >= 0 {
				time = []string{name}
				break
			}
		}
	}
	for _, name := range time {
		if i := want(name); i >= 0 {
			l.time = append(l.time, i)
		}
	}
}

// findSensors takes the columns whose names say what they hold.
func (l *layout) findSensors(names []string) {
	for i, name := range names {
		s, ok := sensorOfName(name)
		if ok {
			l.sensors, l.at = append(l.sensors, s), append(l.at, i)
		} else if lower := strings.ToLower(name); strings.HasPrefix(lower, "soil_") || strings.HasPrefix(lower, "air_") {
			l.unclear = append(l.unclear, name)
		}
	}
}

// findName is where a column stands, -1 if nowhere; capitals matter only
// between columns whose names differ in nothing else.
func findName(names []string, name string) int {
	if i := slices.Index(names, name); i >= 0 {
		return i
	}
	return slices.IndexFunc(names, func(n string) bool { return strings.EqualFold(n, name) })
}

// twice names the first column that is named by two sensors; "" if none is.
func (l *layout) twice() string {
	for i := range l.at {
		for j := range i {
			a, b := l.sensors[i], l.sensors[j]
			if l.at[i] == l.at[j] || a.medium == b.medium && a.depth == b.depth && a.statistic == b.statistic {
				return fmt.Sprintf("%s and %s", ingest.Quoted(b.name), ingest.Quoted(a.name))
			}
		}
	}
	return ""
}

// splitCells appends the cells of a line. A quoted cell may hold separators,
// and quotes written twice (RFC 4180).
func splitCells(cells []string, line string, separator byte) []string {
	for {
		cell := line[:cellEnd(line, separator)]
		line = line[len(cell):]
		cell = strings.TrimSpace(cell)
		if n := len(cell); n > 1 && cell[0] == '"' && cell[n-1] == '"' {
			cell = strings.TrimSpace(strings.ReplaceAll(cell[1:n-1], `""`, `"`))
		}
		cells = append(cells, cell)
		if line == "" {
			return cells
		}
		line = line[1:]
	}
}

// cellEnd is the index after the cell that a line begins with.
func cellEnd(line string, separator byte) int {
	quoted := false
	for i := range len(line) {
		switch {
		case line[i] == '"':
			quoted = !quoted
		case line[i] == separator && !quoted:
			return i
		}
	}
	return len(line)
}
