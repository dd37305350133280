package main

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

// Without a day the clock gives the year of a plan, and says when most of that year's
// season is past.
func TestSeasonByTheClock(t *testing.T) {
	for _, tt := range []struct {
		today, want string
		args        []string
	}{
		{"2026-03-20", "", nil},
		{"2026-11-29", "of season 2026 had to be done before 2026-11-29: --year 2027 plans the next season, --on 2026-11-29 what is left of this one", nil},
		{"2026-11-29", "", []string{"--year", "2027"}},
	} {
		today, err := time.Parse(time.DateOnly, tt.today)
		if err != nil {
			t.Fatal(err)
		}
		var out, messages bytes.Buffer
		d := newDesk(strings.NewReader(""), &out, &messages)
		d.now = func() time.Time { return today }
		args := append([]string{"turfplat", "plan", "--program", "cool", "../../samples/alder-lane.geojson", "../../samples/alder-lane.geojson"}, tt.args...)
		if code := d.run(args); code != 0 {
			t.Fatalf("%s: exit %d: %s", tt.today, code, messages.String())
		}
		const hint = "steps of season"
		if n := strings.Count(messages.String(), hint); n > 1 || (n == 1) != (tt.want != "") || !strings.Contains(messages.String(), tt.want) {
			t.Errorf("%s %v: %s, want %q", tt.today, tt.args, messages.String(), tt.want)
		}
	}
}
