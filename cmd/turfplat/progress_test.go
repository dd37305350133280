package main

import (
	"testing"
	"time"
)

func TestProgressText(t *testing.T) {
	start := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	for _, tt := range []struct {
		count               int
		passed              time.Duration
		taken, first, whole int64
		want                string
	}{
		{500, 2 * time.Second, 1000, 0, 0, "500 sites, 250 a second"},
		{500, 2 * time.Second, 1000, 0, 4000, "500 sites, 250 a second, 25 %, 6 s left"},
		{500, 2 * time.Second, 2000, 1000, 5000, "500 sites, 250 a second, 25 %, 6 s left"}, // gone on with
		{90000, time.Minute, 1, 0, 10, "90000 sites, 1500 a second, 10 %, 9 min left"},
		{90000, time.Hour, 1, 0, 4, "90000 sites, 25 a second, 25 %, 3.0 h left"},
		{10, 2 * time.Second, 30, 0, 20, "10 sites, 5 a second"}, // the file grew
	} {
		p := &progress{start: start, count: tt.count, taken: func() int64 { return tt.taken }, first: tt.first, whole: tt.whole}
		if got := p.text(start.Add(tt.passed)); got != tt.want {
			t.Errorf("%s, want %s", got, tt.want)
		}
	}
}
