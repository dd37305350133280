package material

import (
	"testing"
	"time"
)

// Computed from the spacing.
func TestCores(t *testing.T) {
	for _, tt := range []struct {
		across, along string
		perFt2        float64
		removed       float64 // percent, by tines of 1/2 in, to 0.001
	}{
		{"2 in", "2 in", 36, 4.909}, {"2 in", "3 in", 24, 3.272}, {"3 in", "3 in", 16, 2.182},
		{"4 in", "4 in", 9, 1.227}, {"6 in", "6 in", 4, 0.545}, {"2.5 in", "2.5 in", 23.04, 3.142},
	} {
		c := Cores{length(tt.across), length(tt.along), length("1/2 in"), 1}
		near(t, "holes", must(c.PerM2())*unit("ft2").factor(), tt.perFt2, 1e-12)
		printed(t, "removed", 100*float64(must(c.SurfaceRemoved())), tt.removed, 0.0005)
		c.Passes = 2
		near(t, "holes of two passes", must(c.PerM2())*unit("ft2").factor(), 2*tt.perFt2, 1e-12)
	}
	_, err := Cores{Across: 1, Passes: 1}.PerM2()
	checkError(t, "no spacing", err, "the holes have no spacing, or there is no pass (measure from hole to hole both ways)")
	_, err = Cores{Tine: 1}.SurfaceRemoved()
	checkError(t, "no spacing", err, "the holes have no spacing, or there is no pass (measure from hole to hole both ways)")
	_, err = Cores{0.01, 0.01, 0.02, 1}.SurfaceRemoved()
	checkError(t, "wide tines", err, "holes so wide and so close do not go into the ground (state the inner diameter of the tine)")
}

// University of Tennessee, 2014: grass kept at 1, 2 and 3 in is mown at 1.5, 3
// and 4.5 in.
func TestOneThirdRule(t *testing.T) {
	for height, want := range map[string]string{"1 in": "1.5 in", "2 in": "3 in", "3 in": "4.5 in"} {
		m := Mowing{Height: length(height), Share: MowingShare.Share()}
		near(t, height, float64(must(m.MowAt())), float64(length(want)), 1e-12)
	}
}

// Worked by hand.
func TestMowings(t *testing.T) {
	m := Mowing{Height: length("3 in"), Growth: length("0.25 in"), Share: MowingShare.Share()} // every 6 days
	for days, want := range map[int]int{0: 0, 5: 0, 6: 1, 11: 1, 12: 2, 30: 5} {
		if got := must(m.Times(time.Duration(days) * 24 * time.Hour)); got != want {
			t.Errorf("%d cuts in %d days, want %d", got, days, want)
		}
	}
	for from, want := range map[string]int{"2 in": 0, "3 in": 0, "3.1 in": 1, "4.5 in": 1, "4.6 in": 2, "6.75 in": 2, "12 in": 4} {
		if got := must(m.CutsDown(length(from))); got != want {
			t.Errorf("%d cuts down from %s, want %d", got, from, want)
		}
	}
	m.Growth = 0
	if got := must(m.Times(time.Hour)); got != 0 {
		t.Errorf("%d cuts of grass that does not grow", got)
	}
	m.Growth = 1e300
	_, err := m.Times(time.Hour)
	checkError(t, "fast grass", err, "that is more cuts than can be counted")
	_, err = Mowing{Height: 1, Share: 1}.CutsDown(2)
	checkError(t, "all of it", err, "grass is cut to a height above nothing, by less than all of it")
}

func TestKnownAreas(t *testing.T) {
	for _, tt := range []struct {
		source, ground, swath string
		length                string
		want, within          float64
	}{
		{"slides on broadcast spreader calibration: 12 ft by 83 ft 4 in", "1000 ft2", "12 ft", "ft", 83.3333, 0.00005},
		{"equipment manual, printed 167", "1000 ft2", "6 ft", "ft", 166.667, 0.0005},
		{"equipment manual, printed 167", "1000 ft2", "6 ft", "ft", 167, 0.5},
		{"equipment manual, 93 m2 at 1.8 m, which prints 51 m", "93 m2", "1.8 m", "m", 51, 0.7},
		{"Fundamentals of Tropical Turf Management: 3 m by 33.3 m are about 100 m2", "99.9 m2", "3 m", "m", 33.3, 1e-9},
		{"LSU AgCenter: 10 ft by 100 ft", "1000 ft2", "10 ft", "ft", 100, 1e-9},
	} {
		l := must(CourseLength(area(tt.ground), length(tt.swath)))
		printed(t, tt.source, unit(tt.length).fromSI(float64(l)), tt.want, tt.within)
	}
	_, err := CourseLength(1, 0)
	checkError(t, "no swath", err, "the strip has no width (measure the swath with trays)")
}

// Computed: 25.0 lb before, 21.4 lb after, 8 ft by 125 ft.
func TestStripRun(t *testing.T) {
	s := StripRun{amount("25 lb"), amount("21.4 lb"), length("8 ft"), length("125 ft")}
	near(t, "rate", must(must(s.Rate()).In(unit("lb / 1000 ft2"))), 3.6, 1e-12)
	s.Left = amount("26 lb")
	_, err := s.Rate()
	checkError(t, "more left", err, "more is left than was there (weigh the hopper before and after in the same way)")
	s.Left, s.Swath = amount("0 lb"), 0
	_, err = s.Rate()
	checkError(t, "no swath", err, "the strip has no area (measure the swath and the length of the strip)")
}

// University of Massachusetts Amherst: 4.75 to 5.25 for 5.00 lb, and half of
// it each way at right angles.
func TestCalibrated(t *testing.T) {
	wanted := rate("5 lb / M")
	for measured, want := range map[string]bool{"4.75 lb / M": true, "5.25 lb / M": true, "5 lb / M": true, "4.74 lb / M": false, "5.26 lb / M": false, "0 lb / M": false} {
		off, within, err := OffBy(rate(measured), wanted, StripTolerance.Share())
		if err != nil || within != want {
			t.Errorf("%s is within: %t, %v", measured, within, err)
		}
		near(t, measured, (1+off)*wanted.PerM2, rate(measured).PerM2, 1e-12)
	}
	_, _, err := OffBy(rate("1 gal / M"), wanted, 0.05)
	checkError(t, "in gallons", err, "the measured rate cannot be compared with the wanted one")
	near(t, "each way", must(must(Crossed(wanted, 2)).In(unit("lb / M"))), 2.5, 1e-12)
	// Wheel to wheel and in two directions, by a calibration chart: a quarter.
	near(t, "four passes", must(must(Crossed(wanted, 4)).In(unit("lb / M"))), 1.25, 1e-12)
	_, err = Crossed(wanted, 0)
	checkError(t, "no pass", err, "a rate takes at least one pass")
}

// On 1/128 acre, a square of 18.5 ft, fluid ounces caught are gallons an acre:
// Mississippi State University, Turf Tip, 2013. 65 gal / acre is printed as
// 1.5 gal on 1,000 ft2.
func TestSprayerCourse(t *testing.T) {
	course := must(SprayerCourse.Value.Area())
	printed(t, "course", course.SquareFeet(), 340, 0.5)
	printed(t, "its square", 18.5*18.5, course.SquareFeet(), 2)
	r := must(RateOf(amount("65 fl oz"), course))
	near(t, "gal / acre", must(r.In(unit("gal / acre"))), 65, 1e-12)
	printed(t, "gal / 1000 ft2", must(r.In(unit("gal / M"))), 1.5, 0.01)
	_, err := RateOf(amount("65 fl oz"), 0)
	checkError(t, "no course", err, "an amount on no ground has no rate")
}
