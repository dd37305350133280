package soil

import (
	"strconv"
	"strings"
	"time"
)

// A moment is one of a log, as the clock of the place shows it.
type moment struct {
	at  int64 // seconds from the beginning of 1970
	utc bool  // it was written in UTC, which need not be the time of the place
}

// momentLayouts are the forms of ISO 8601 in use, a blank for the T and slashes
// for dashes made good before. Fractions of seconds are understood with each.
var momentLayouts = []string{
	"2006-01-02", "20060102",
	"2006-01-02T15:04:05", "2006-01-02T15:04",
	"2006-01-02T15:04:05Z07:00", "2006-01-02T15:04Z07:00",
	"2006-01-02T15:04:05Z0700", "2006-01-02T15:04Z0700",
	"2006-01-02T15:04:05Z07", "2006-01-02T15:04Z07",
}

const longestMoment = 40 // bytes

// readMoment reads the cells that make a moment: one of ISO 8601, a date and a
// clock, or a year, its day and perhaps the hour.
func readMoment(cells []string) (moment, bool) {
	for _, cell := range cells {
		if len(cell) > longestMoment {
			return moment{}, false
		}
	}
	var m moment
	ok := false
	switch {
	case len(cells) == 1:
		m, ok = isoMoment(cells[0])
	case len(cells[0]) == len("2026"):
		m, ok = dayOfYear(cells)
	case len(cells) == 2:
		m, ok = dateAndClock(cells[0], cells[1])
	}
	year := midnight(m.at).Year()
	return m, ok && year >= 1850 && year < 2200
}

func isoMoment(text string) (moment, bool) {
	date, clock := text, ""
	if len(text) > len("2026-04-05") {
		date, clock = text[:len("2026-04-05")], text[len("2026-04-05"):]
		if clock[0] != 'T' && clock[0] != 't' && clock[0] != ' ' {
			return moment{}, false
		}
		clock = "T" + strings.ReplaceAll(strings.Replace(strings.TrimSpace(clock[1:]), "UTC", "Z", 1), " ", "")
	}
	// Some clocks call midnight 24:00 of the day that ends.
	extra := int64(0)
	if strings.HasPrefix(clock, "T24:00") {
		clock, extra = "T00:00"+clock[len("T24:00"):], daySeconds
	}
	text = strings.ReplaceAll(date, "/", "-") + clock
	for _, layout := range momentLayouts {
		t, err := time.Parse(layout, text)
		if err != nil {
			continue
		}
		_, offset := t.Zone()
		zoned := strings.HasSuffix(layout, "7") || strings.HasSuffix(layout, "00")
		return moment{at: t.Unix() + int64(offset) + extra, utc: zoned && offset == 0}, true
	}
	return moment{}, false
}

// dateAndClock reads a date and a clock, which may be 13:30, 1330 or an hour
// such as 13.5; no clock is the day.
func dateAndClock(date, clock string) (moment, bool) {
	if strings.Contains(clock, ":") {
		if strings.IndexByte(clock, ':') == 1 {
			clock = "0" + clock
		}
		return isoMoment(date + "T" + clock)
	}
	m, ok := isoMoment(date)
	if !ok || clock == "" || len(date) > len("2026-04-05") {
		return m, ok && clock == ""
	}
	if n := len(clock); n == 4 && onlyDigits(clock) {
		clock = clock[:2] + ":" + clock[2:]
		if clock == "24:00" {
			return moment{at: m.at + daySeconds}, true
		}
		t, err := time.Parse("15:04", clock)
		return moment{at: m.at + int64(t.Hour()*3600+t.Minute()*60)}, err == nil
	}
	seconds, ok := hourSeconds(clock)
	return moment{at: m.at + seconds}, ok
}

// dayOfYear reads a year, the number of a day in it, the first being 1, and
// perhaps an hour of the day. Day 366 of a common year is the first of the next.
func dayOfYear(cells []string) (moment, bool) {
	year, err := strconv.Atoi(cells[0])
	day, ok := readNumber(cells[1])
	if err != nil || !ok || day != float64(int(day)) || day < 1 || day > 366 {
		return moment{}, false
	}
	at := time.Date(year, time.January, int(day), 0, 0, 0, 0, time.UTC).Unix()
	if len(cells) < 3 {
		return moment{at: at}, true
	}
	seconds, ok := hourSeconds(cells[2])
	return moment{at: at + seconds}, ok
}

// hourSeconds turns an hour of the day, up to 24, into seconds.
func hourSeconds(text string) (int64, bool) {
	hour, ok := readNumber(text)
	if !ok || hour < 0 || hour > 24 {
		return 0, false
	}
	return int64(hour*3600 + 0.5), true
}

func onlyDigits(text string) bool { return strings.Trim(text, "0123456789") == "" }

// readNumber reads a decimal number, no word for one and in no other base.
func readNumber(text string) (float64, bool) {
	const longest = 40 // bytes
	if len(text) > longest || strings.Trim(text, "+-.0123456789eE") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}
