package program

import (
	"strings"
	"testing"
	"time"
)

// A plan's calendar has an event a step that is still to come, from its first
// day to its last, by ids that stay as the season goes on.
func TestCalendar(t *testing.T) {
	p, _ := BuiltIn("cool")
	uids := make(map[string]string)
	for i, on := range []time.Time{{}, date(2026, 5, 18)} {
		at := Occasion{Today: on}
		plan := lay(t, p, yard(), at)
		c := CalendarOf([]*Plan{plan}, "turfplat")
		if err := c.Write(new(strings.Builder)); err != nil {
			t.Fatal(err)
		}
		n := 0
		for _, s := range plan.Steps {
			if s.Status == Skipped {
				continue
			}
			e := c.Events[n]
			n++
			if !e.First.Equal(s.From) || !e.Last.Equal(s.To) || !strings.HasPrefix(e.Summary, s.Step.Name()) || e.Categories[0] != string(s.Step.Does) {
				t.Errorf("%s: %+v", s.Step.ID, e)
			}
			if i == 0 {
				uids[s.Step.ID] = e.UID
			} else if uids[s.Step.ID] != e.UID {
				t.Errorf("%s: uid %s, before %s", s.Step.ID, e.UID, uids[s.Step.ID])
			}
		}
		if n != len(c.Events) || n < 10 {
			t.Errorf("%d events, %d steps", len(c.Events), n)
		}
	}
}
