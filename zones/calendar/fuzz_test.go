package calendar

import (
	"bytes"
	"strings"
	"testing"
)

// asRead is a text as it must come back: valid UTF-8, one kind of line end, no
// control characters but the tab.
func asRead(s string) string {
	s = strings.ToValidUTF8(s, "\uFFFD")
	s = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(s)
	return strings.Map(func(r rune) rune {
		if r == '\n' || r == '\t' || r >= ' ' && r != 0x7f {
			return r
		}
		return -1
	}, s)
}

// FuzzWrite: any text comes through a strict reader as it went in.
func FuzzWrite(f *testing.F) {
	for _, seed := range [][4]string{
		{"a1@turfplat", "spread fertilizer", "front: 12 lb\nback: 8 lb", "spread"},
		{"id:1;2,3", `back\slash\n, comma; semi`, "line\r\nline\rline", "a,b"},
		{strings.Repeat("u", 200), strings.Repeat("é", 100), strings.Repeat("😀\n", 50), ""},
		{"\"quoted\"", "\xff\xfe", "null\x00bell\a", "BEGIN:VEVENT"},
		{" ", "\r\nEND:VCALENDAR\r\n", "\r\n folded", "\t"},
	} {
		f.Add(seed[0], seed[1], seed[2], seed[3], 3)
	}
	f.Fuzz(func(t *testing.T, uid, summary, description, category string, days int) {
		c := sound()
		c.Name = description
		e := &c.Events[0]
		e.UID, e.Summary, e.Description, e.Location, e.Categories = uid, summary, description, category, []string{category, summary}
		e.Last = e.First.AddDate(0, 0, days%1000)
		var b bytes.Buffer
		if err := c.Write(&b); err != nil {
			if asRead(uid) != "" && days%1000 >= 0 {
				t.Fatal(err)
			}
			return
		}
		got, err := strictRead(b.String())
		if err != nil {
			t.Fatalf("%v\n%q", err, b.String())
		}
		r := got.events[0]
		for _, pair := range [][2]string{
			{r.uid, uid}, {r.summary, summary}, {r.description, description}, {r.location, category},
			{got.name, description}, {r.categories[0], category}, {r.categories[1], summary},
		} {
			if pair[0] != asRead(pair[1]) {
				t.Fatalf("%q comes back as %q", pair[1], pair[0])
			}
		}
		if !r.start.Equal(e.First) || !r.end.Equal(e.Last.AddDate(0, 0, 1)) {
			t.Fatalf("%v to %v comes back as %v until %v", e.First, e.Last, r.start, r.end)
		}
	})
}
