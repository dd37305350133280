package ingest

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// walkedFixes draws fixes that every format can carry: positions to a tenth of
// a microdegree and whole seconds of one day.
func walkedFixes(t *rapid.T) []Fix {
	n := rapid.IntRange(1, 20).Draw(t, "fixes")
	at := time.Date(2024, 2, 29, 0, 0, 0, 0, time.UTC)
	var fixes []Fix
	for range n {
		at = at.Add(time.Duration(rapid.IntRange(1, 3600).Draw(t, "later")) * time.Second)
		f := Fix{Time: at, Quality: -1}
		f.At[0] = float64(rapid.IntRange(-1_799_999_999, 1_799_999_999).Draw(t, "lon")) / 1e7
		f.At[1] = float64(rapid.IntRange(1, 899_999_999).Draw(t, "lat")) / 1e7
		fixes = append(fixes, f)
	}
	return fixes
}

// trackWriters write fixes in the formats that are texts.
var trackWriters = map[string]func(fixes []Fix) string{
	"GPX": func(fixes []Fix) string {
		return inGPX("<trkseg>" + eachFix(fixes, func(f Fix) string {
			return fmt.Sprintf(`<trkpt lat="%v" lon="%v"><time>%s</time></trkpt>`, f.At[1], f.At[0], f.Time.Format(time.RFC3339))
		}) + "</trkseg>")
	},
	"TCX": func(fixes []Fix) string {
		return inTCX("<Lap><Track>" + eachFix(fixes, func(f Fix) string {
			p := trackpoint(fmt.Sprint(f.At[1]), fmt.Sprint(f.At[0]))
			return strings.ReplaceAll(p, "2024-05-01T12:00:00Z", f.Time.Format(time.RFC3339))
		}) + "</Track></Lap>")
	},
	"KML": func(fixes []Fix) string {
		return inKML(placemark("<Track>" + eachFix(fixes, func(f Fix) string {
			return "<when>" + f.Time.Format(time.RFC3339) + "</when>"
		}) + eachFix(fixes, func(f Fix) string {
			return fmt.Sprintf("<coord>%v %v 0</coord>", f.At[0], f.At[1])
		}) + "</Track>"))
	},
	"CSV": func(fixes []Fix) string {
		return "time,lat,lon\n" + eachFix(fixes, func(f Fix) string {
			return fmt.Sprintf("%d,%v,%v\n", f.Time.Unix(), f.At[1], f.At[0])
		})
	},
	"RTKLIB": func(fixes []Fix) string {
		return "%  UTC latitude(deg) longitude(deg)\n" + eachFix(fixes, func(f Fix) string {
			return fmt.Sprintf("%s %v %v\n", f.Time.Format("2006/01/02 15:04:05.000"), f.At[1], f.At[0])
		})
	},
	"NMEA 0183": func(fixes []Fix) string {
		return eachFix(fixes, func(f Fix) string {
			return nmea("GNRMC," + f.Time.Format("150405.00") + ",A," + minutes(f.At[1], "N", "S") + "," + minutes(f.At[0], "E", "W") + ",,," + f.Time.Format("020106") + ",,,A")
		})
	},
}

func eachFix(fixes []Fix, write func(Fix) string) string {
	var b strings.Builder
	for _, f := range fixes {
		b.WriteString(write(f))
	}
	return b.String()
}

// minutes writes an angle as NMEA 0183 does, to 1e-9 degrees.
func minutes(angle float64, positive, negative string) string {
	half := positive
	if angle < 0 {
		half = negative
	}
	whole := math.Floor(math.Abs(angle))
	return fmt.Sprintf("%d%011.8f,%s", int(whole), (math.Abs(angle)-whole)*60, half)
}

// TestTracksReadBack: fixes written in any format are read as they were, in
// their order.
func TestTracksReadBack(t *testing.T) {
	for format, write := range trackWriters {
		tolerance := 0.0 // degrees
		if format == "NMEA 0183" {
			tolerance = 2e-10 // half of its last digit, and rounding
		}
		t.Run(format, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				want := walkedFixes(t)
				tracks := readTracks(write(want), "x", Limits{})
				if tracks.Format != format || len(tracks.Tracks) != 1 || len(tracks.Problems) > 0 {
					t.Fatalf("got %s", toldTracks(tracks))
				}
				same := slices.EqualFunc(tracks.Tracks[0].Segments[0], want, func(got, want Fix) bool {
					near := math.Abs(got.At[0]-want.At[0]) <= tolerance && math.Abs(got.At[1]-want.At[1]) <= tolerance
					got.At = want.At
					return near && got == want
				})
				if !same {
					t.Errorf("got %s", toldTracks(tracks))
				}
			})
		})
	}
}

// TestFixStore: what goes in comes out, in pieces of any size.
func TestFixStore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := rapid.SliceOf(rapid.IntRange(1, 700)).Draw(t, "pieces")
		var s fixStore
		var all []Fix
		for _, n := range pieces {
			for range n {
				f := Fix{Time: time.UnixMicro(int64(len(all))).UTC(), HDOP: float64(len(all)), Satellites: len(all) % 1000, Quality: len(all)%11 - 1}
				all = append(all, f)
				s.add(f)
			}
		}
		s.shift(time.Hour)
		for _, n := range pieces {
			for i, got := range s.take(n) {
				want := all[i]
				want.Time = want.Time.Add(time.Hour)
				if got != want {
					t.Fatalf("got %+v, want %+v", got, want)
				}
			}
			all = all[n:]
		}
		if s.n != 0 || len(s.blocks) != 0 {
			t.Errorf("%d fixes are left in %d blocks", s.n, len(s.blocks))
		}
	})
}
