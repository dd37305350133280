package calendar

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"testing"
	"time"
)

func on(year int, month time.Month, day int) time.Time {
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
}

// sound is a calendar of one event, for tests to change.
func sound() Calendar {
	return Calendar{
		Product: "-//turfplat//test//EN", Stamp: time.Date(2026, 4, 6, 7, 8, 9, 0, time.UTC),
		Events: []Event{{UID: UID("site", "step"), First: on(2026, 4, 6), Last: on(2026, 4, 7), Summary: "spread"}},
	}
}

func written(t *testing.T, c Calendar) string {
	t.Helper()
	var b bytes.Buffer
	if err := c.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// Folding counts octets, and splits no character (RFC 5545 3.1). The lengths
// follow from that rule: 75 octets without the line break, the blank of a
// continued line among them.
func TestFolding(t *testing.T) {
	tests := []struct {
		summary string
		octets  []int // of the lines
	}{
		{strings.Repeat("a", 67), []int{75}},
		{strings.Repeat("a", 68), []int{75, 2}},
		{strings.Repeat("a", 100), []int{75, 34}},
		{strings.Repeat("é", 70), []int{74, 75}}, // 33 letters, then a blank and 37
		{strings.Repeat("a", 67+74), []int{75, 75}},
		{strings.Repeat("a", 67+74+1), []int{75, 75, 2}},
		{strings.Repeat("😀", 17), []int{72, 5}},
	}
	for _, tt := range tests {
		c := sound()
		c.Events[0].Summary = tt.summary
		_, rest, _ := strings.Cut(written(t, c), "SUMMARY:")
		rest, _, _ = strings.Cut("SUMMARY:"+rest, "\r\nTRANSP")
		var octets []int
		for _, line := range strings.Split(rest, "\r\n") {
			octets = append(octets, len(line))
		}
		if !slices.Equal(octets, tt.octets) {
			t.Errorf("%.10s...: lines of %v octets, want %v", tt.summary, octets, tt.octets)
		}
	}
}

// The end of an all-day event is the day after its last: 28 June to 8 July 2007
// (RFC 5545 3.6.1, example of a conference).
func TestEndIsExclusive(t *testing.T) {
	tests := []struct {
		first, last time.Time
		want        string
	}{
		{on(2007, 6, 28), on(2007, 7, 8), "DTSTART;VALUE=DATE:20070628\r\nDTEND;VALUE=DATE:20070709\r\n"},
		{on(2026, 4, 6), on(2026, 4, 6), "DTSTART;VALUE=DATE:20260406\r\nDTEND;VALUE=DATE:20260407\r\n"},
		{on(2028, 2, 28), on(2028, 2, 29), "DTSTART;VALUE=DATE:20280228\r\nDTEND;VALUE=DATE:20280301\r\n"},
		{on(2026, 12, 31), on(2026, 12, 31), "DTSTART;VALUE=DATE:20261231\r\nDTEND;VALUE=DATE:20270101\r\n"},
		{time.Date(2026, 4, 6, 23, 30, 0, 0, time.FixedZone("", -6*3600)), on(2026, 4, 6), "DTSTART;VALUE=DATE:20260406\r\nDTEND;VALUE=DATE:20260407\r\n"},
	}
	for _, tt := range tests {
		c := sound()
		c.Events[0].First, c.Events[0].Last = tt.first, tt.last
		if got := written(t, c); !strings.Contains(got, tt.want) {
			t.Errorf("%v to %v: %q lacks %q", tt.first, tt.last, got, tt.want)
		}
	}
}

// Text is escaped as RFC 5545 3.3.11 has it; the first row is its own example.
func TestEscapes(t *testing.T) {
	tests := []struct{ text, want string }{
		{"Project XYZ Final Review\nConference Room - 3B\nCome Prepared.", `Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`},
		{`back\slash, comma; semicolon: colon "quote"`, `back\\slash\, comma\; semicolon: colon "quote"`},
		{"one\r\ntwo\rthree", `one\ntwo\nthree`},
		{"\\n is not a line break", `\\n is not a line break`},
		{"bell\a, tab\t, null\x00", "bell\\, tab\t\\, null"},
		{"Latin-1 \xe9", "Latin-1 \uFFFD"},
	}
	for _, tt := range tests {
		if got := text(tt.text); got != tt.want {
			t.Errorf("%q is written %q, want %q", tt.text, got, tt.want)
		}
	}
}

// TestWhole: a whole file, so that its order and its bytes are seen.
func TestWhole(t *testing.T) {
	c := sound()
	c.Name = "Alder Lane, season"
	e := &c.Events[0]
	e.UID, e.Description, e.Location, e.Categories = "a1@turfplat", "back: 12 lb\nfront: 8 lb", "Alder Lane", []string{"spread", "a,b"}
	want := strings.Join([]string{
		"BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//turfplat//test//EN", "CALSCALE:GREGORIAN", `NAME:Alder Lane\, season`,
		"BEGIN:VEVENT", "UID:a1@turfplat", "DTSTAMP:20260406T070809Z", "DTSTART;VALUE=DATE:20260406", "DTEND;VALUE=DATE:20260408",
		"SUMMARY:spread", `DESCRIPTION:back: 12 lb\nfront: 8 lb`, "LOCATION:Alder Lane", `CATEGORIES:spread,a\,b`, "TRANSP:TRANSPARENT",
		"END:VEVENT", "END:VCALENDAR", "",
	}, "\r\n")
	if got := written(t, c); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	c.Stamp = c.Stamp.In(time.FixedZone("", 9*3600))
	if got := written(t, c); got != want {
		t.Errorf("the stamp is not in UTC:\n%s", got)
	}
}

// What no calendar can hold is refused, and nothing is written.
func TestRefusals(t *testing.T) {
	tests := []struct {
		change func(*Calendar)
		want   string
	}{
		{func(c *Calendar) { c.Product = "\x00" }, "a calendar must name what made it"},
		{func(c *Calendar) { c.Events = nil }, "a calendar must have an event"},
		{func(c *Calendar) { c.Events[0].UID = "" }, `event "spread" has no id`},
		{func(c *Calendar) { c.Events = append(c.Events, c.Events[0]) }, "two events have the id "},
		{func(c *Calendar) { c.Events[0].Last = on(2026, 4, 5) }, "ends before it begins"},
		{func(c *Calendar) { c.Events[0].Last = on(9999, 12, 31) }, "lies in the year 2026, or ends in 10000"},
		{func(c *Calendar) { c.Events[0].First = on(-1, 1, 1) }, "lies in the year -1"},
		{func(c *Calendar) { c.Stamp = on(12026, 1, 1) }, "cannot be made in the year 12026"},
	}
	for _, tt := range tests {
		c := sound()
		tt.change(&c)
		var b bytes.Buffer
		if err := c.Write(&b); err == nil || !strings.Contains(err.Error(), tt.want) || b.Len() > 0 {
			t.Errorf("error %v, %d bytes written; want %q and none", err, b.Len(), tt.want)
		}
	}
}

type full struct{}

var errFull = errors.New("disk full")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestWriteFails(t *testing.T) {
	if err := sound().Write(full{}); !errors.Is(err, errFull) {
		t.Errorf("error %v, want %v", err, errFull)
	}
}

// An id is the same each time, and tells the parts apart however they are cut.
// The first is fixed here: if it moves, calendars that people have taken in
// hold every event twice.
func TestUID(t *testing.T) {
	const want = "db9778af1f50323ea07b5a4b30760df0@turfplat"
	if got := UID("alder-lane", "cool", "2026", "pre-emergent"); got != want {
		t.Errorf("id is %s, want %s", got, want)
	}
	seen := make(map[string][]string)
	for _, parts := range [][]string{{}, {""}, {"", ""}, {"a", "b"}, {"ab"}, {"a", "", "b"}, {"ab", ""}, {"a\x00", "b"}, {"a", "\x00b"}, {"a\x00\x00b"}, {"a\x00\x01", "b"}} {
		id := UID(parts...)
		if other, known := seen[id]; known {
			t.Errorf("%q and %q have one id", parts, other)
		}
		seen[id] = parts
	}
}
