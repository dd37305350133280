package ingest

import (
	"math"
	"strings"
	"time"
)

// momentLayouts are the forms of ISO 8601 date and time in use, the commonest
// first. Fractions of seconds are understood with each.
var momentLayouts = []struct {
	layout string
	zoned  bool
}{
	{"2006-01-02T15:04:05Z07:00", true},
	{"2006-01-02T15:04:05", false},
	{"2006-01-02T15:04:05Z0700", true},
	{"2006-01-02T15:04:05Z07", true},
	{"2006-01-02T15:04Z07:00", true},
	{"2006-01-02T15:04", false},
}

// parseMoment reads date and time in ISO 8601, also with a blank for the T, a
// blank before the zone, UTC for Z, and slashes in the date. Without a zone
// (zoned is false) the time is taken as UTC.
func parseMoment(text string) (t time.Time, zoned, ok bool) {
	const longest = 64 // bytes
	text = strings.TrimSpace(text)
	if len(text) < len("2006-01-02T15:04") || len(text) > longest {
		return time.Time{}, false, false
	}
	if text[10] != 'T' || text[4] != '-' || strings.Contains(text, " ") {
		date := strings.ReplaceAll(text[:10], "/", "-")
		clock := strings.ReplaceAll(strings.Replace(text[11:], "UTC", "Z", 1), " ", "")
		if text[10] != 'T' && text[10] != 't' && text[10] != ' ' {
			return time.Time{}, false, false
		}
		text = date + "T" + clock
	}
	for _, l := range momentLayouts {
		if t, err := time.Parse(l.layout, text); err == nil {
			return t.UTC(), l.zoned, true
		}
	}
	return time.Time{}, false, false
}

// momentAt is the time so many seconds after the beginning of 1970, UTC, to
// the microsecond; ok is false beyond the year 9999.
func momentAt(seconds float64) (t time.Time, ok bool) {
	const most = 253402300800 // the year 10000
	if !(math.Abs(seconds) < most) {
		return time.Time{}, false
	}
	return time.UnixMicro(int64(math.Round(seconds * 1e6))).UTC(), true
}

// moment reads the time of a fix, and notes what is odd about it.
func (l *trackLog) moment(text string, line int) time.Time {
	if text == "" {
		return time.Time{}
	}
	t, zoned, ok := parseMoment(text)
	if !ok {
		l.unread("time", text, line)
		return time.Time{}
	}
	if !zoned {
		l.note(finding{severity: Note, code: "time_zone", text: "time has no zone, taken as UTC", plural: "times"}, line)
	}
	return t
}
