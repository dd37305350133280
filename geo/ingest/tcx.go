package ingest

import (
	"bufio"
	"encoding/xml"
)

// A tcxReader reads the tracks of TCX, one for each activity or course (schema
// TrainingCenterDatabase v2, from memory). Laps follow each other without a
// break; a second Track within a lap tells that the receiver was off.
type tcxReader struct {
	log   *trackLog
	inLap int // Track elements of the lap at hand

	fix      Fix
	line     int    // of the fix
	lon, lat []byte // of the fix
}

func readTCX(r *bufio.Reader, log *trackLog, limits Limits) *fault {
	return walkXML(r, log, &tcxReader{log: log}, limits.Depth)
}

func (t *tcxReader) open(path []string, _ []xml.Attr, line int) {
	switch {
	case within(path, "Activities", "Activity"), within(path, "Courses", "Course"):
		t.log.begin(line)
		t.inLap = 0
	case within(path, "Activity", "Lap"):
		t.inLap = 0
	case within(path, "Lap", "Track"), within(path, "Course", "Track"):
		if t.inLap++; t.inLap > 1 && len(t.log.tracks) > 0 {
			t.log.pause()
		}
	case within(path, "Track", "Trackpoint"):
		t.fix, t.line, t.lon, t.lat = Fix{Quality: -1}, line, t.lon[:0], t.lat[:0]
	}
}

func (t *tcxReader) close(path []string, text []byte, line int) {
	switch {
	case within(path, "Track", "Trackpoint"):
		t.add()
	case within(path, "Trackpoint", "Time"):
		t.fix.Time = t.log.moment(string(text), line)
	case within(path, "Trackpoint", "Position", "LongitudeDegrees"):
		t.lon = append(t.lon[:0], text...)
	case within(path, "Trackpoint", "Position", "LatitudeDegrees"):
		t.lat = append(t.lat[:0], text...)
	case within(path, "Courses", "Course", "Name"), within(path, "Activities", "Activity", "Id"):
		t.log.track().name = string(text)
	}
}

// add takes the point at hand, if it has a position.
func (t *tcxReader) add() {
	if len(t.lon) == 0 && len(t.lat) == 0 {
		t.log.nowhere(t.line)
		return
	}
	var ok bool
	if t.fix.At, ok = t.log.position(t.lon, t.lat, t.line); ok {
		t.log.add(t.fix, t.line)
	}
}
