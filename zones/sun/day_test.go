package sun

import (
	"fmt"
	"math"
	"testing"
	"time"
)

// upperLimb is the elevation of the sun's centre, without air, at which its
// upper edge stands on the horizon in usual air: refraction 34', radius 16'.
const upperLimb Degrees = -50.0 / 60

// Noon elevation = 90 - |lat - declination|; day lengths by the upper limb,
// computed with astronomy-engine 2.1.19. Declinations there are seen from the
// ground, up to 0.0024 degrees lower in the sky.
func TestNoonAndDayLength(t *testing.T) {
	for _, tt := range []struct {
		lat, lon          float64
		date              Date
		declination, noon float64
		dayLength         float64 // h
	}{
		{0, 0, Date{3, 20}, -0.0434, 89.9566, 12.1084},
		{40, -95, Date{3, 20}, 0.0594, 50.0594, 12.1491},
		{40, -95, Date{6, 21}, 23.4368, 73.4368, 15.0155},
		{40, -95, Date{12, 21}, -23.4398, 26.5602, 9.3284},
		{60, 25, Date{6, 21}, 23.4366, 53.4366, 18.8659},
		{60, 25, Date{12, 21}, -23.4393, 6.5607, 5.8716},
		{-34, 151, Date{6, 21}, 23.4398, 32.5602, 9.8856},
		{-34, 151, Date{12, 21}, -23.4347, 79.4347, 14.4252},
		{25, -80, Date{6, 21}, 23.4375, 88.4375, 13.6927},
		{45, -93, Date{5, 1}, 15.2428, 60.2428, 14.2763},
		{51.5, 0, Date{9, 22}, 0.1962, 38.6962, 12.2080},
	} {
		t.Run(fmt.Sprintf("lat=%g/%v", tt.lat, tt.date), func(t *testing.T) {
			c := courseOf(tt.lon, tt.lat, 2026, tt.date)
			p := At(tt.lon, tt.lat, c.noon)
			if math.Abs(float64(p.Declination)-tt.declination) > 0.004 || math.Abs(float64(p.Geometric)-tt.noon) > 0.004 {
				t.Errorf("noon at %.4f, declination %.4f; want %.4f, %.4f", p.Geometric, p.Declination, tt.noon, tt.declination)
			}
			rise, set := c.above(upperLimb + refraction(upperLimb))
			length := c.when(set).Sub(c.when(rise)).Hours()
			if math.Abs(length-tt.dayLength) > 1.0/60 {
				t.Errorf("the day lasts %.4f h, want %.4f", length, tt.dayLength)
			}
		})
	}
}

// Sunrise and sunset of the report on the Solar Position Algorithm (Reda &
// Andreas 2008), table A2.1, and of its worked example, UT. The example looks
// for its sunset on the UT day: that is the evening before by the sun.
func TestRiseAndSetSPA(t *testing.T) {
	for _, tt := range []struct {
		lat, lon  float64
		noonish   string
		rise, set string
	}{
		{35, 0, "1994-01-02T12:00:00Z", "1994-01-02T07:08:12.8Z", "1994-01-02T16:59:55.9Z"},
		{-35, 0, "1996-07-05T12:00:00Z", "1996-07-05T07:08:15.4Z", "1996-07-05T17:01:04.5Z"},
		{-35, 0, "2004-12-04T12:00:00Z", "2004-12-04T04:38:57.1Z", "2004-12-04T19:02:02.5Z"},
		{39.742476, -105.1786, "2003-10-17T19:00:00Z", "2003-10-17T13:12:43Z", ""},
		{39.742476, -105.1786, "2003-10-16T19:00:00Z", "", "2003-10-17T00:20:19Z"},
	} {
		day := utc(t, tt.noonish)
		c := courseOf(tt.lon, tt.lat, day.Year(), Date{day.Month(), day.Day()})
		rise, set := c.passes(upperLimb, -1), c.passes(upperLimb, 1)
		for _, end := range []struct {
			got  time.Time
			want string
		}{{c.when(rise), tt.rise}, {c.when(set), tt.set}} {
			if end.want == "" {
				continue
			}
			if off := end.got.Sub(utc(t, end.want)); off.Abs() > 2*time.Second {
				t.Errorf("lat %g, %s: %v, want %s", tt.lat, tt.noonish, end.got, end.want)
			}
		}
	}
}

func TestDaysWithoutRiseOrSet(t *testing.T) {
	for _, tt := range []struct {
		name      string
		lat       float64
		date      Date
		least     Degrees
		rise, set float64
	}{
		{"midnight sun", 78.22, Date{6, 21}, 5, -12, 12},
		{"polar night", 78.22, Date{12, 21}, 0, 0, 0},
		{"the sun never stands high enough", 60, Date{12, 21}, 10, 0, 0},
		{"midnight sun in the south", -78, Date{12, 21}, 5, -12, 12},
	} {
		rise, set := courseOf(15, tt.lat, 2026, tt.date).above(tt.least)
		if math.Abs(rise-tt.rise) > 1e-9 || math.Abs(set-tt.set) > 1e-9 {
			t.Errorf("%s: %g to %g, want %g to %g", tt.name, rise, set, tt.rise, tt.set)
		}
	}
}

// The hours between which the sun stands high enough are those that At finds,
// to a second, and At's hour is that of the course.
func TestAboveAgreesWithAt(t *testing.T) {
	for lat := -60.0; lat <= 60; lat += 15 {
		for _, date := range []Date{{1, 10}, {3, 20}, {6, 21}, {10, 5}} {
			for _, least := range []Degrees{0, 5, 15} {
				c := courseOf(171, lat, 2026, date)
				rise, set := c.above(least)
				if rise == set {
					continue
				}
				for _, hour := range []float64{rise, set} {
					p := At(171, lat, c.when(hour))
					if math.Abs(float64(p.Elevation-least)) > 0.002 {
						t.Errorf("lat %g, %v: %.4f high at %.4f h from noon, want %g", lat, date, p.Elevation, hour, least)
					}
					if q := c.at(hour); apart(q, float64(p.Elevation), float64(p.Azimuth)) > 0.002 {
						t.Errorf("lat %g, %v: %+v on the course, %+v by the clock", lat, date, q, p)
					}
				}
			}
		}
	}
}
