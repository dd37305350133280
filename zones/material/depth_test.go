package material

import (
	"testing"
)

// Computed: a cubic yard covers 324 / depth in inches square feet.
func TestDepthTable(t *testing.T) {
	for _, tt := range []struct {
		depth        string
		ft3, yd3, m3 float64 // on 1,000 ft2
		shown        float64 // yd3 to 0.01
	}{
		{"1/16 in", 5.208333, 0.192901, 0.147484, 0.19},
		{"1/8 in", 10.416667, 0.385802, 0.294967, 0.39},
		{"1/4 in", 20.833333, 0.771605, 0.589934, 0.77},
		{"3/8 in", 31.25, 1.157407, 0.884901, 1.16},
		{"1/2 in", 41.666667, 1.543210, 1.179869, 1.54},
		{"1 in", 83.333333, 3.086420, 2.359737, 3.09},
	} {
		a := rate(tt.depth).Over(area("1000 ft2"))
		yd3 := must(a.In(unit("yd3")))
		printed(t, tt.depth+", ft3", must(a.In(unit("ft3"))), tt.ft3, 5e-7)
		printed(t, tt.depth+", yd3", yd3, tt.yd3, 5e-7)
		printed(t, tt.depth+", m3", must(a.In(unit("m3"))), tt.m3, 5e-7)
		printed(t, tt.depth+", yd3", yd3, tt.shown, 0.005)
		near(t, tt.depth+", back", float64(must(RateOf(a, area("1000 ft2"))).Depth()), float64(length(tt.depth)), 1e-12)
	}
}

func TestTopdressing(t *testing.T) {
	for _, tt := range []struct {
		source, depth, ground string
		yd3                   float64
		printed, within       float64
	}{
		{"computed", "1/4 in", "5000 ft2", 5000 * 0.25 / 324, 3.86, 0.005},
		{"computed, mulch", "3 in", "450 ft2", 450 * 3 / 324.0, 4.17, 0.005},
		{"Cornell Composting, formula page, whose factor 0.0031 is 0.44 % high", "2 in", "70000 ft2", 70000 * 2 / 324.0, 434, 434 * 0.0045},
	} {
		got := must(rate(tt.depth).Over(area(tt.ground)).In(unit("yd3")))
		near(t, tt.source, got, tt.yd3, 1e-12)
		printed(t, tt.source, got, tt.printed, tt.within)
	}
	compost := must(rate("1/4 in").Over(area("5000 ft2")).As(Weight, must(mustParse("1200 lb / yd3").Density())))
	near(t, "tons of compost", must(compost.In(unit("ton"))), 5000*0.25/324*1200/2000, 1e-12)
	printed(t, "tons of compost", must(compost.In(unit("ton"))), 2.31, 0.006) // 3.86 rounded first gives 2.316
	back := must(compost.As(Bulk, must(mustParse("1200 lb / yd3").Density())))
	near(t, "yards again", must(back.In(unit("yd3"))), 5000*0.25/324, 1e-12)
}

// Computed: an inch on an acre is printed as 27,154 gal, one on 1,000 ft2 as
// 623 gal, by general extension pages; a millimetre on a square metre is 1 L.
func TestIrrigation(t *testing.T) {
	for _, tt := range []struct {
		depth, ground string
		gal           float64
	}{
		{"1 in", "1000 ft2", 144000.0 / 231},
		{"1/2 in", "1000 ft2", 72000.0 / 231},
		{"1/4 in", "5000 ft2", 180000.0 / 231},
		{"1 in", "43560 ft2", 27154.285714},
		{"1 in", "1 ft2", 0.623376623},
		{"1.5 in", "7500 ft2", 7012.987013},
		{"0.5 in", "5000 ft2", 1558.441558},
	} {
		got := must(Rate{By: Liquid, PerM2: float64(length(tt.depth))}.Over(area(tt.ground)).In(unit("gal")))
		near(t, tt.depth+" on "+tt.ground, got, tt.gal, 1e-9)
	}
	near(t, "1 mm on 1 m2", Volume(Rate{By: Liquid, PerM2: float64(length("1 mm"))}.Over(1).Size).Litres(), 1, 1e-12)
}
