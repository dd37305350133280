package material

import "testing"

// The rate of product for a rate of a nutrient, and what it comes to. Printed
// totals are what their sources print; two truncate, and Purdue prints 37 lb
// for 37.5, which is allowed for beside them.
func TestProductForNutrient(t *testing.T) {
	const arithmetic = "computed"
	for _, tt := range []struct {
		source       string
		grade, rate  string
		ft2          float64
		exact, total float64 // lb / 1000 ft2, lb
		rateP        float64 // printed; 0 = not
		totalP       float64
		within       float64 // of the printed total
	}{
		{"Purdue Turfgrass Science, Calculating the pounds of fertilizer to apply (2019; AY-22)", "16-8-8", "0.75 lb N / 1000 ft2", 8000, 4.6875, 37.5, 4.69, 37, 0.5},
		{"University of Nebraska-Lincoln Extension, Lawn Fertilizer Calculations", "28-3-6", "1 lb N / 1000 ft2", 6000, 100.0 / 28, 600.0 / 28, 3.57, 21.42, 0.01},
		{"University of Massachusetts Amherst, Rotary Spreader Calibration Procedures", "20-5-10", "1 lb N / 1000 ft2", 1000, 5, 5, 5, 0, 0},
		{"Schlossberg, A Practical Method of Rotary Spreader Calibration, Pennsylvania Turfgrass, Fall 2022", "0-0-22", "2 lb K2O / 1000 ft2", 1000, 200.0 / 22, 200.0 / 22, 9.1, 0, 0},
		{"Texas A&M turf programme, rotary spreader catch-pan calibration", "21-0-0", "1 lb N / 1000 ft2", 1000, 100.0 / 21, 100.0 / 21, 4.76, 0, 0},
		{"LSU AgCenter, broadcast spreader calibration", "20-0-0", "1 lb N / 1000 ft2", 1000, 5, 5, 5, 0, 0},
		{"garden tip page", "16-4-8", "1 lb N / 1000 ft2", 1000, 6.25, 6.25, 6.25, 0, 0},
		{"general garden page, which truncates", "21-0-0", "3 lb N / 1000 ft2", 5000, 300.0 / 21, 1500.0 / 21, 14.28, 71.42, 0.01},
		{"garden centre page", "20-0-0", "1 lb N / 1000 ft2", 12000, 5, 60, 5, 60, 0.5},
		{arithmetic, "46-0-0", "1 lb N / 1000 ft2", 5000, 100.0 / 46, 500.0 / 46, 0, 0, 0},
		{arithmetic, "32-0-10", "0.9 lb N / 1000 ft2", 7350, 2.8125, 20.671875, 0, 0, 0},
		{arithmetic, "24-0-11", "0.7 lb N / 1000 ft2", 12000, 70.0 / 24, 35, 0, 0, 0},
		{arithmetic, "10-10-10", "1 lb N / 1000 ft2", 2500, 10, 25, 0, 0, 0},
		{arithmetic, "5-2-0", "0.5 lb N / 1000 ft2", 4000, 10, 40, 0, 0, 0},
		{arithmetic, "18-24-12", "0.75 lb N / 1000 ft2", 10000, 75.0 / 18, 750.0 / 18, 0, 0, 0},
		{arithmetic, "0-0-50", "1 lb K2O / 1000 ft2", 1000, 2, 2, 0, 0, 0},
		{arithmetic, "25-0-10", "0.75 lb N / M", 6240, 3, 18.72, 0, 18.7, 0.05},
	} {
		p := Product{Grade: must(ParseGrade(tt.grade)), Packs: []Pack{{Size: amount("50 lb")}}}
		wanted := rate(tt.rate)
		r, err := p.Rate(wanted)
		if err != nil {
			t.Errorf("%s: %v", tt.source, err)
			continue
		}
		what := tt.grade + ", " + tt.source
		got := must(r.In(unit("lb / 1000 ft2")))
		total := must(r.Over(feet2(tt.ft2)).In(unit("lb")))
		near(t, what, got, tt.exact, exact)
		near(t, what+", total", total, tt.total, exact)
		if tt.rateP > 0 {
			printed(t, what, got, tt.rateP, 0.01)
		}
		if tt.totalP > 0 {
			printed(t, what+", total", total, tt.totalP, tt.within)
		}
		near(t, what+", back", must(p.Delivers(wanted.Of, r)).PerM2, wanted.PerM2, 1e-12)
	}
}

func TestMetricNutrient(t *testing.T) {
	r := must(Product{Grade: must(ParseGrade("20-0-0"))}.Rate(rate("5 g N / m2")))
	near(t, "g / m2", must(r.In(unit("g / m2"))), 25, 1e-12)
	near(t, "lb / 1000 ft2", must(r.In(unit("lb / 1000 ft2"))), 25/4.88242763638305, 1e-12)
}

// The pan of 1 ft2 that catches 21-0-0 at 1 lb N: Texas A&M turf programme.
func TestPanCatch(t *testing.T) {
	r := must(Product{Grade: must(ParseGrade("21-0-0"))}.Rate(rate("1 lb N / 1000 ft2")))
	catch := r.Over(area("1 ft2"))
	printed(t, "lb", must(catch.In(unit("lb"))), 0.00476, 0.000005)
	printed(t, "g", must(catch.In(unit("g"))), 2.16, 0.005)
}

func TestNutrientsThatRideAlong(t *testing.T) {
	for _, tt := range []struct {
		grade, rate string
		of          Substance
		want        float64 // lb / 1000 ft2
	}{
		{"10-10-10", "10 lb / 1000 ft2", Nitrogen, 1},
		{"10-10-10", "10 lb / 1000 ft2", Phosphate, 1},
		{"10-10-10", "10 lb / 1000 ft2", Potash, 1},
		{"10-10-10", "10 lb / 1000 ft2", Phosphorus, 0.436427},
		{"10-10-10", "10 lb / 1000 ft2", Potassium, 0.830151},
		{"16-8-8", "4.6875 lb / 1000 ft2", Phosphate, 0.375},
		{"16-8-8", "4.6875 lb / 1000 ft2", Potash, 0.375},
		{"18-24-12", "75 lb / 18 M", Phosphate, 1},
		{"18-24-12", "75 lb / 18 M", Potash, 0.5},
		{"25-0-10", "3 lb / M", Potash, 0.3},
		{"25-0-10", "3 lb / M", Phosphate, 0},
		{"25-0-10", "3 lb / M", Itself, 3},
	} {
		r := must(Product{Grade: must(ParseGrade(tt.grade))}.Delivers(tt.of, rate(tt.rate)))
		near(t, tt.grade+" "+string(tt.of), must(r.In(unit("lb / M"))), tt.want, exact)
		if r.Of != tt.of {
			t.Errorf("%s: a rate of %q, want of %q", tt.grade, r.Of, tt.of)
		}
	}
}

// Penn State Center for Turfgrass Science, 2022, rounds to two decimals;
// Virginia Cooperative Extension SPES-201 prints 0.4365, 2.2910, 0.8301 and
// 1.2051, of which the last does not follow from the atomic weights.
func TestOxides(t *testing.T) {
	near(t, "P in P2O5", PhosphorusInPhosphate, 0.436427, exact)
	near(t, "P2O5 for P", 1/PhosphorusInPhosphate, 2.291335, exact)
	near(t, "K in K2O", PotassiumInPotash, 0.830151, exact)
	near(t, "K2O for K", 1/PotassiumInPotash, 1.204600, exact)
	printed(t, "P in P2O5, Penn State", PhosphorusInPhosphate, 0.44, 0.005)
	printed(t, "P in P2O5, Virginia", PhosphorusInPhosphate, 0.4365, 0.0001)
	printed(t, "P2O5 for P, Virginia", 1/PhosphorusInPhosphate, 2.2910, 0.0005)
	printed(t, "K in K2O, Virginia", PotassiumInPotash, 0.8301, 0.0001)
	printed(t, "K2O for K, Virginia", 1/PotassiumInPotash, 1.2051, 0.0006)
	g := Grade{P2O5: 0.20, K2O: 0.10}
	printed(t, "20 % P2O5 as P, Penn State", float64(g.Of(Phosphorus)), 0.088, 0.0015) // 0.44 rounded first
	printed(t, "10 % K2O as K, Penn State", float64(g.Of(Potassium)), 0.083, 0.0005)
	printed(t, "49.8 % K as K2O, Virginia", 0.498/PotassiumInPotash, 0.60, 0.0005)
}

// A pack that covers ground says a rate: 40 lb on 5,000 ft2 is 8 lb / 1000 ft2.
func TestLabelRate(t *testing.T) {
	p := Product{Name: "feed", Packs: []Pack{{Size: amount("40 lb")}}, Covers: area("5000 ft2")}
	r := must(p.LabelRate())
	near(t, "rate", must(r.In(unit("lb / 1000 ft2"))), 8, 1e-12)
	near(t, "ground", must(r.Covers(amount("40 lb"))).SquareFeet(), 5000, 1e-12)
	near(t, "3.6 lb / M on 6240 ft2", must(rate("3.6 lb / M").Over(area("6240 ft2")).In(unit("lb"))), 22.464, 1e-12)
	near(t, "156.816 lb / acre", must(rate("156.816 lb / acre").In(unit("lb / M"))), 3.6, 1e-12)
	_, err := Product{Name: "feed", Covers: 1}.LabelRate()
	checkError(t, "without a pack", err, `"feed": the pack tells no rate (state one pack and the ground that it covers)`)
	_, err = r.Covers(amount("1 gal"))
	checkError(t, "of a liquid", err, "a liquid amount does not go out at a weight rate")
	_, err = Rate{}.Covers(amount("1 lb"))
	checkError(t, "of nothing", err, "a rate of nothing covers any ground")
}

func TestGrades(t *testing.T) {
	for text, want := range map[string]string{"24-0-6": "24-0-6", " 0 - 0 - 50 ": "0-0-50", "12.5-4-8": "12.5-4-8", "00-00-60": "0-0-60"} {
		if g, err := ParseGrade(text); err != nil || g.String() != want {
			t.Errorf("%q is %s, %v", text, g, err)
		}
	}
	const hint = " (write percents of N, P2O5 and K2O, such as 24-0-6)"
	for text, want := range map[string]string{
		"24-0":      `grade "24-0" is not understood` + hint,
		"24-0-6-1":  `grade "24-0-6-1" is not understood` + hint,
		"24/0/6":    `grade "24/0/6" is not understood` + hint,
		"240-0-6":   `grade "240-0-6" is not understood` + hint,
		"50-50-1":   `grade "50-50-1" adds up to more than all of it` + hint,
		"24-0-6 lb": `grade "24-0-6 lb" is not understood` + hint,
	} {
		_, err := ParseGrade(text)
		checkError(t, text, err, want)
	}
}

func TestWhatAProductDoesNotHold(t *testing.T) {
	for _, tt := range []struct {
		product Product
		rate    string
		want    string
	}{
		{Product{Name: "potash", Grade: Grade{K2O: 0.5}}, "1 lb N / M", `"potash": there is no N in it (state the grade, such as 24-0-6, or choose another product)`},
		{Product{}, "1 lb PLS / M", `there is no pure live seed in it (state purity and germination from the tag, or choose another product)`},
		{Product{}, "1 lb ai / acre", `how much active ingredient the product holds is not known (state it from the label, such as 65 % or 4 lb / gal)`},
		{Product{Strength: must(mustParse("3.8 lb ae / gal").Strength())}, "1 lb ai / acre", `a rate of active ingredient cannot be made from a strength in acid equivalent (use the figure of the label that is given in the same way)`},
		{Product{Name: "wetter", Packs: []Pack{{Size: amount("1 gal")}}}, "3 oz / M", `"wetter": weights and volumes of one product cannot be mixed without its density (oz is a weight and fl oz a volume; use one kind throughout, or state the density, such as 9 lb / gal or 1200 lb / yd3)`},
		{Product{Packs: []Pack{{Size: amount("50 lb")}}}, "3 fl oz / M", `weights and volumes of one product cannot be mixed without its density (oz is a weight and fl oz a volume; use one kind throughout, or state the density, such as 9 lb / gal or 1200 lb / yd3)`},
	} {
		_, err := tt.product.Rate(rate(tt.rate))
		checkError(t, tt.rate, err, tt.want)
	}
}

// With its density a liquid fertilizer answers a rate by weight: 10 lb / gal
// of 18-0-0 is 1.8 lb N in a gallon, from which 0.9 lb N takes half of one.
func TestLiquidFertilizer(t *testing.T) {
	p := Product{Grade: must(ParseGrade("18-0-0")), Density: must(mustParse("10 lb / gal").Density()), Packs: []Pack{{Size: amount("2.5 gal")}}}
	r := must(p.Rate(rate("0.9 lb N / M")))
	near(t, "gal / M", must(r.In(unit("gal / M"))), 0.5, 1e-12)
	near(t, "lb N / M", must(p.Delivers(Nitrogen, r)).PerM2, rate("0.9 lb / M").PerM2, 1e-12)
}
