package material

import (
	"fmt"
	"testing"
)

// Computed; the units are those of NIST Handbook 44.
func TestCarrierAndProduct(t *testing.T) {
	for _, tt := range []struct {
		product, carrier   string
		ft2                float64
		floz, perAcre, mL  float64
		gal, galPerAcre, l float64 // l: litres on 100 m2
	}{
		{"", "1 gal / 1000 ft2", 5000, 0, 0, 0, 5, 43.56, 4.074583},
		{"", "2 gal / 1000 ft2", 8712, 0, 0, 0, 17.424, 87.12, 8.149167},
		{"", "0.5 gal / 1000 ft2", 43560, 0, 0, 0, 21.78, 21.78, 2.037292},
		{"", "1.5 gal / 1000 ft2", 3300, 0, 0, 0, 4.95, 65.34, 6.111875},
		{"1.5 fl oz / 1000 ft2", "1 gal / 1000 ft2", 5000, 7.5, 65.34, 221.8015, 5, 43.56, 4.074583},
		{"3 fl oz / 1000 ft2", "2 gal / 1000 ft2", 10000, 30, 130.68, 887.2059, 20, 87.12, 8.149167},
		{"0.8 fl oz / 1000 ft2", "1 gal / 1000 ft2", 2750, 2.2, 34.848, 65.0618, 2.75, 43.56, 4.074583},
		{"3 fl oz / M", "1.5 gal / M", 6240, 18.72, 130.68, 553.6165, 9.36, 65.34, 6.111875},
	} {
		ground := feet2(tt.ft2)
		carrier := rate(tt.carrier)
		near(t, tt.carrier, must(carrier.Over(ground).In(unit("gal"))), tt.gal, exact)
		near(t, tt.carrier, must(carrier.In(unit("gal / acre"))), tt.galPerAcre, exact)
		near(t, tt.carrier, must(carrier.In(unit("L / 100 m2"))), tt.l, exact)
		if tt.product == "" {
			continue
		}
		product := rate(tt.product)
		near(t, tt.product, must(product.Over(ground).In(unit("fl oz"))), tt.floz, exact)
		near(t, tt.product, must(product.In(unit("fl oz / acre"))), tt.perAcre, exact)
		near(t, tt.product, must(product.Over(ground).In(unit("mL"))), tt.mL, exact)
	}
}

// 1 lb N / 1000 ft2 of 20-0-0 that weighs 10.7 lb / gal is 5 lb, or 5 / 10.7 gal
// (computed). What a pack sells by weight, and a powder, stay weighed.
func TestLiquidsAreMeasuredByVolume(t *testing.T) {
	density := must(mustParse("10.7 lb / gal").Density())
	for name, tt := range map[string]struct {
		product Product
		want    string
	}{
		"a liquid":                    {Product{Density: density, Liquid: true}, "60 fl oz / 1000 ft2"},
		"a powder":                    {Product{Density: density}, "5 lb / 1000 ft2"},
		"without a density":           {Product{Liquid: true}, "5 lb / 1000 ft2"},
		"a liquid in packs by weight": {Product{Density: density, Liquid: true, Packs: []Pack{{Size: amount("50 lb")}}}, "5 lb / 1000 ft2"},
	} {
		tt.product.Grade = must(ParseGrade("20-0-0"))
		got, want := must(tt.product.Rate(rate("1 lb N / 1000 ft2"))), rate(tt.want)
		if got.By != want.By {
			t.Errorf("%s: measured by %s, want %s", name, got.By, want.By)
		}
		near(t, name, got.PerM2, want.PerM2, 0.01)
		nitrogen := must(tt.product.Delivers(Nitrogen, got))
		near(t, name+": nitrogen", nitrogen.PerM2, rate("1 lb / 1000 ft2").PerM2, 1e-12)
	}
}

// 6,240 ft2 from a 4-gal tank at 1.5 gal / 1000 ft2 takes two full fills of
// 2.67 thousand ft2 with 8 fl oz each and a third of 0.34 of a tank (computed).
func TestFills(t *testing.T) {
	s := Spray{Product: rate("3 fl oz / M"), Carrier: rate("1.5 gal / M"), Tank: must(mustParse("4 gal").Volume())}
	f := must(s.Fills(area("6240 ft2")))
	if f.Count != 2 {
		t.Errorf("%d full fills, want 2", f.Count)
	}
	near(t, "ground of a full tank", f.Full.Area.SquareFeet(), 4000/1.5, 1e-12)
	near(t, "product in a full tank", must(f.Full.Product.In(unit("fl oz"))), 8, 1e-12)
	near(t, "mix in a full tank", f.Full.Mix.Litres(), 4*3.785411784, 1e-12)
	near(t, "last mix", f.Last.Mix.Litres(), 1.36*3.785411784, 1e-9)
	near(t, "last product", must(f.Last.Product.In(unit("fl oz"))), 2.72, 1e-9)
	near(t, "last ground", f.Last.Area.SquareFeet(), 6240-8000/1.5, 1e-9)
}

func TestFillsOfAllSorts(t *testing.T) {
	for _, tt := range []struct {
		product, carrier, tank, ground string
		count                          int
		last                           string
	}{
		{"3 fl oz / M", "1 gal / M", "5 gal", "15 M", 3, "none"},
		{"3 fl oz / M", "0.1 gal / M", "0.3 gal", "3 M", 1, "none"}, // 0.1 x 3 is not 0.3 to a computer
		{"3 fl oz / M", "1 gal / M", "5 gal", "1 M", 0, "1 gal, 3 fl oz"},
		{"2 oz / M", "1 gal / M", "5 gal", "6 M", 1, "1 gal, 2 oz"},
		{"2 oz / M", "1 gal / M", "5 gal", "0 M", 0, "none"},
	} {
		s := Spray{rate(tt.product), rate(tt.carrier), must(mustParse(tt.tank).Volume())}
		f, err := s.Fills(area(tt.ground))
		if err != nil {
			t.Errorf("%+v: %v", tt, err)
			continue
		}
		last := "none"
		if f.Last.Area > 0 {
			of := unit("fl oz")
			if f.Last.Product.By == Weight {
				of = unit("oz")
			}
			last = fmt.Sprintf("%.9g gal, %.9g %s", must(Amount{Liquid, float64(f.Last.Mix)}.In(unit("gal"))), must(f.Last.Product.In(of)), of)
		}
		if f.Count != tt.count || last != tt.last {
			t.Errorf("%+v: %d full and %s", tt, f.Count, last)
		}
	}
}

func TestFillsRefused(t *testing.T) {
	good := Spray{rate("3 fl oz / M"), rate("1 gal / M"), must(mustParse("4 gal").Volume())}
	for _, tt := range []struct {
		change func(*Spray)
		ground string
		want   string
	}{
		{func(s *Spray) { s.Product = rate("1 lb ai / acre") }, "1 M", "a tank is filled with a product, not with active ingredient (turn it into a rate of the product)"},
		{func(s *Spray) { s.Carrier = Rate{} }, "1 M", "the carrier has no volume on an area (write it as in 1 gal / 1000 ft2)"},
		{func(s *Spray) { s.Carrier = rate("1 lb / M") }, "1 M", "the carrier has no volume on an area (write it as in 1 gal / 1000 ft2)"},
		{func(s *Spray) { s.Tank = 0 }, "1 M", "the tank holds nothing (write it as in 4 gal)"},
		{func(s *Spray) { s.Product = rate("2 gal / M") }, "1 M", "there is more product than mix (check both rates)"},
		{func(s *Spray) { s.Tank = 1e-9 }, "1000000 acre", "the job takes more than 2147483647 tanks (use a larger tank)"},
	} {
		s := good
		tt.change(&s)
		_, err := s.Fills(area(tt.ground))
		checkError(t, tt.want, err, tt.want)
	}
	_, err := good.Fills(-1)
	checkError(t, "less than nothing", err, "there is no such ground as -1 m2")
}

// One pound of active ingredient an acre on 1,000 ft2, in the whole millilitres
// and grams that are printed: PNW Pest Management Handbooks, Weights and
// Measures.
func TestActiveIngredientTable(t *testing.T) {
	for _, tt := range []struct {
		strength string
		unit     string
		printed  float64
		exact    float64
	}{
		{"0.67 lb / gal", "mL", 130, 129.7031}, {"1 lb / gal", "mL", 87, 86.9011}, {"1.5 lb / gal", "mL", 58, 57.9341}, {"2 lb / gal", "mL", 43, 43.4505},
		{"2.5 lb / gal", "mL", 35, 34.7604}, {"3 lb / gal", "mL", 29, 28.9670}, {"3.34 lb / gal", "mL", 26, 26.0183}, {"4 lb / gal", "mL", 22, 21.7253},
		{"6 lb / gal", "mL", 14, 14.4835}, {"7 lb / gal", "mL", 12, 12.4144},
		{"100 %", "g", 10, 10.4130}, {"90 %", "g", 12, 11.5701}, {"80 %", "g", 13, 13.0163}, {"75 %", "g", 14, 13.8841}, {"70 %", "g", 15, 14.8758},
		{"65 %", "g", 16, 16.0201}, {"60 %", "g", 17, 17.3551}, {"50 %", "g", 21, 20.8261}, {"40 %", "g", 26, 26.0326}, {"30 %", "g", 35, 34.7102}, {"20 %", "g", 52, 52.0652},
	} {
		p := Product{Strength: must(mustParse(tt.strength).Strength())}
		r := must(p.Rate(rate("1 lb ai / acre")))
		got := must(r.Over(area("1000 ft2")).In(unit(tt.unit)))
		printed(t, tt.strength, got, tt.exact, 0.00005)
		printed(t, tt.strength, got, tt.printed, 0.5)
		near(t, tt.strength+", back", must(must(p.Delivers(Active, r)).In(unit("lb / acre"))), 1, 1e-12)
	}
}

// Computed: 0.5 lb an acre takes 16 fl oz an acre of 4 lb / gal, or 0.769 lb
// an acre, 0.283 oz on 1,000 ft2, of a product of 65 %.
func TestActiveIngredient(t *testing.T) {
	liquid := Product{Strength: must(mustParse("4 lb ai / gal").Strength()), Packs: []Pack{{Size: amount("1 gal")}}}
	r := must(liquid.Rate(rate("0.5 lb ai / acre")))
	near(t, "fl oz / acre", must(r.In(unit("fl oz / acre"))), 16, 1e-12)
	near(t, "fl oz / M", must(r.In(unit("fl oz / M"))), 16/43.56, 1e-12)
	dry := Product{Strength: must(mustParse("65 % ai").Strength()), Packs: []Pack{{Size: amount("3 lb")}}}
	r = must(dry.Rate(rate("0.5 lb ai / acre")))
	near(t, "lb / acre", must(r.In(unit("lb / acre"))), 0.5/0.65, 1e-12)
	near(t, "oz / M", must(r.In(unit("oz / M"))), 0.5/0.65*16/43.56, 1e-12)
	metric := Product{Strength: must(mustParse("480 g / L").Strength())}
	r = must(metric.Rate(rate("720 g ai / ha")))
	near(t, "L / ha", must(r.In(unit("L / ha"))), 1.5, 1e-12)
	byWeight := Product{Strength: must(mustParse("22.4 % ai").Strength()), Density: must(mustParse("8.9 lb / gal").Density()), Packs: []Pack{{Size: amount("1 qt")}}}
	r = must(byWeight.Rate(rate("0.5 lb ai / acre")))
	near(t, "gal / acre of a liquid given by weight", must(r.In(unit("gal / acre"))), 0.5/0.224/8.9, 1e-12)
	near(t, "and back", must(must(byWeight.Delivers(Active, r)).In(unit("lb / acre"))), 0.5, 1e-12)
}
