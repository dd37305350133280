package material

import "testing"

// University of Tennessee, 2014: grass kept at 1, 2 and 3 in is mown at 1.5, 3
// and 4.5 in.
func TestOneThirdRule(t *testing.T) {
	for height, want := range map[string]string{"1 in": "1.5 in", "2 in": "3 in", "3 in": "4.5 in"} {
		m := Mowing{Height: length(height), Share: MowingShare.Share()}
		near(t, height, float64(must(m.MowAt())), float64(length(want)), 1e-12)
	}
}

// On 1/128 acre, a square of 18.5 ft, fluid ounces caught are gallons an acre:
// Mississippi State University, Turf Tip, 2013. 65 gal / acre is printed as
// 1.5 gal on 1,000 ft2.
func TestSprayerCourse(t *testing.T) {
	course := area("1/128 acre")
	printed(t, "course", course.SquareFeet(), 340, 0.5)
	printed(t, "its square", 18.5*18.5, course.SquareFeet(), 2)
	r := must(RateOf(amount("65 fl oz"), course))
	near(t, "gal / acre", must(r.In(unit("gal / acre"))), 65, 1e-12)
	printed(t, "gal / 1000 ft2", must(r.In(unit("gal / M"))), 1.5, 0.01)
	_, err := RateOf(amount("65 fl oz"), 0)
	checkError(t, "no course", err, "an amount on no ground has no rate")
}
