package calendar

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"
)

// Write writes the calendar as a stream of RFC 5545. It refuses what no calendar
// can hold and writes nothing then: an event without an id or with that of
// another, one that ends before it begins, years that have not four digits.
// Characters that the standard excludes from text are left out.
func (c Calendar) Write(w io.Writer) error {
	if err := c.check(); err != nil {
		return err
	}
	f := &file{}
	f.property("BEGIN", "VCALENDAR")
	f.property("VERSION", "2.0")
	f.property("PRODID", text(c.Product))
	f.property("CALSCALE", "GREGORIAN")
	if c.Name != "" {
		f.property("NAME", text(c.Name)) // RFC 7986 5.1
	}
	for _, e := range c.Events {
		f.event(e, c.Stamp)
	}
	f.property("END", "VCALENDAR")
	_, err := w.Write(f.Bytes())
	return err
}

func (c Calendar) check() error {
	if text(c.Product) == "" {
		return errors.New("a calendar must name what made it")
	}
	if len(c.Events) == 0 {
		return errors.New("a calendar must have an event")
	}
	if !fourDigits(c.Stamp.UTC()) {
		return fmt.Errorf("a calendar cannot be made in the year %d", c.Stamp.Year())
	}
	seen := make(map[string]bool)
	for _, e := range c.Events {
		uid := text(e.UID)
		switch {
		case uid == "":
			return fmt.Errorf("event %q has no id", e.Summary)
		case seen[uid]:
			return fmt.Errorf("two events have the id %q", e.UID)
		case dayOf(e.Last).Before(dayOf(e.First)):
			return fmt.Errorf("event %q ends before it begins", e.UID)
		case !fourDigits(e.First) || !fourDigits(e.end()):
			return fmt.Errorf("event %q lies in the year %d, or ends in %d: years have four digits", e.UID, e.First.Year(), e.end().Year())
		}
		seen[uid] = true
	}
	return nil
}

func fourDigits(t time.Time) bool { return t.Year() >= 0 && t.Year() <= 9999 }

// dayOf is the date of a time.
func dayOf(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
}

// end is the first day after the event.
func (e Event) end() time.Time { return dayOf(e.Last).AddDate(0, 0, 1) }

// A file is a calendar being written.
type file struct{ bytes.Buffer }

// The forms of a date and of a moment in UTC (RFC 5545 3.3.4 and 3.3.5).
const (
	dateForm   = "20060102"
	momentForm = "20060102T150405Z"
)

func (f *file) event(e Event, stamp time.Time) {
	f.property("BEGIN", "VEVENT")
	f.property("UID", text(e.UID))
	f.property("DTSTAMP", stamp.UTC().Format(momentForm))
	f.property("DTSTART;VALUE=DATE", e.First.Format(dateForm))
	f.property("DTEND;VALUE=DATE", e.end().Format(dateForm))
	f.property("SUMMARY", text(e.Summary))
	if e.Description != "" {
		f.property("DESCRIPTION", text(e.Description))
	}
	if e.Location != "" {
		f.property("LOCATION", text(e.Location))
	}
	if len(e.Categories) > 0 {
		f.property("CATEGORIES", texts(e.Categories))
	}
	f.property("TRANSP", "TRANSPARENT") // a day of work does not make its people busy
	f.property("END", "VEVENT")
}

// property writes one, folded into lines of at most 75 octets.
func (f *file) property(name, value string) {
	const most = 75
	line := name + ":" + value
	room := most
	for len(line) > room {
		at := room
		for !startsCharacter(line[at]) {
			at--
		}
		f.WriteString(line[:at])
		f.WriteString("\r\n ")
		line, room = line[at:], most-1
	}
	f.WriteString(line)
	f.WriteString("\r\n")
}

// startsCharacter reports whether an octet of UTF-8 does not go on with the
// character before it.
func startsCharacter(octet byte) bool { return octet&0xc0 != 0x80 }

// escapes of text (RFC 5545 3.3.11); all ways to end a line are one.
var escapes = strings.NewReplacer(
	`\`, `\\`, ";", `\;`, ",", `\,`,
	"\r\n", `\n`, "\n", `\n`, "\r", `\n`,
)

// text is a value of type TEXT.
func text(s string) string {
	return strings.Map(allowed, escapes.Replace(strings.ToValidUTF8(s, "\uFFFD")))
}

// texts is a list of them.
func texts(list []string) string {
	var escaped []string
	for _, s := range list {
		escaped = append(escaped, text(s))
	}
	return strings.Join(escaped, ",")
}

// allowed leaves out control characters but the tab (RFC 5545 3.1).
func allowed(r rune) rune {
	if r < ' ' && r != '\t' || r == 0x7f {
		return -1
	}
	return r
}
