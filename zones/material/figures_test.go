package material

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/zones"
)

func TestFigures(t *testing.T) {
	us, metric := Figures{zones.US}, Figures{zones.Metric}
	volume := func(text string) Volume { return must(mustParse(text).Volume()) }
	for _, tt := range []struct {
		got  Figure
		want string
	}{
		{us.Amount(amount("18.72 lb")), "18.7 lb"},
		{us.Amount(amount("4629.63 lb")), "4,630 lb"},
		{us.Amount(amount("0.1 lb")), "1.6 oz"},
		{us.Amount(amount("0.283 oz")), "0.28 oz"},
		{us.Amount(amount("0 lb")), "0.0 oz"},
		{us.Amount(amount("0.367 fl oz")), "0.37 fl oz"},
		{us.Amount(amount("5.12 fl oz")), "5.1 fl oz"},
		{us.Amount(amount("8 fl oz")), "8.0 fl oz"},
		{us.Amount(amount("18.72 fl oz")), "18.5 fl oz"},
		{us.Amount(amount("5 gal")), "5.0 gal"},
		{us.Amount(amount("3.858 yd3")), "3.9 yd3"},
		{us.Amount(amount("5 ft3")), "5.0 ft3"},
		{us.AtMost(amount("2.76 fl oz")), "2.7 fl oz"},
		{us.AtMost(amount("18.99 fl oz")), "18.5 fl oz"},
		{us.AtMost(amount("18.5 fl oz")), "18.5 fl oz"},
		{us.AtMost(amount("0.3 oz")), "0.30 oz"},
		{us.Mix(volume("9.36 gal")), "9.4 gal"},
		{us.Mix(volume("1558.44 gal")), "1,558 gal"},
		{us.Mix(volume("1234567.8 gal")), "1,234,568 gal"},
		{us.Rate(rate("0.769 lb / acre")), "0.018 lb / 1000 ft2"},
		{us.Rate(rate("3.571 lb / M")), "3.57 lb / 1000 ft2"},
		{us.Rate(rate("0.5 fl oz / M")), "0.50 fl oz / 1000 ft2"},
		{us.Rate(rate("1/4 in")), "0.25 in"},
		{us.Rate(rate("1/8 in")), "0.125 in"},
		{us.Rate(rate("1 1/8 in")), "1.125 in"},
		{us.Rate(rate("0.13 in")), "0.13 in"},
		{us.Rate(rate("3 mm")), "0.12 in"},
		{us.MixRate(rate("1.5 gal / M")), "1.50 gal / 1000 ft2"},
		{metric.Amount(amount("8.74 kg")), "8.75 kg"},
		{metric.Amount(amount("420.4 g")), "420 g"},
		{metric.Amount(amount("2.2 fl oz")), "65 mL"},
		{metric.Amount(amount("1.5 gal")), "5.70 L"},
		{metric.Amount(amount("0.59 m3")), "0.60 m3"},
		{metric.Amount(amount("500 kg")), "500.0 kg"},
		{metric.Mix(volume("20 gal")), "75.5 L"},
		{metric.Mix(volume("1001 L")), "1,000 L"},
		{metric.Rate(rate("5 lb / M")), "24.4 g / m2"},
		{metric.Rate(rate("1 in")), "25.5 mm"},
		{metric.Rate(rate("3 fl oz / M")), "95 mL / 100 m2"},
		{metric.MixRate(rate("1 gal / M")), "4.1 L / 100 m2"},
	} {
		if got := tt.got.String(); got != tt.want {
			t.Errorf("%s, want %s", got, tt.want)
		}
	}
}

// A figure is off by at most a twentieth, and reads back as it is written.
func TestFiguresAreNear(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		f := Figures{rapid.SampledFrom([]zones.Units{zones.US, zones.Metric}).Draw(t, "units")}
		a := Amount{rapid.SampledFrom([]Measure{Weight, Liquid, Bulk}).Draw(t, "by"), math.Pow(10, rapid.Float64Range(-6, 5).Draw(t, "log"))}
		figure := f.Amount(a)
		near(t, figure.String(), must(mustParse(figure.String()).Amount()).Size, a.Size, 0.05+1e-9)
		most := must(mustParse(f.AtMost(a).String()).Amount()).Size
		near(t, "at most", most, a.Size, 0.1+1e-9)
		if most > a.Size*(1+2e-9) {
			t.Errorf("%s is more than %g", f.AtMost(a), a.Size)
		}
		near(t, figure.String(), mustParse(figure.String()).Number, figure.Value, 1e-12)
	})
}

func TestAmountsInSI(t *testing.T) {
	for text, want := range map[string]struct {
		value float64
		unit  string
	}{"1 lb": {0.45359237, "kg"}, "1 gal": {3.785411784, "L"}, "1 yd3": {0.764554857984, "m3"}} {
		if v, u := amount(text).SI(); v != want.value || u != want.unit {
			t.Errorf("%s is %v %s", text, v, u)
		}
	}
}

func TestAmountsMeasuredAnotherWay(t *testing.T) {
	liquid := must(amount("1 ft3").As(Liquid, 0))
	near(t, "1 ft3", must(liquid.In(unit("gal"))), 1728.0/231, 1e-12)
	_, err := amount("1 gal").As(Weight, 0)
	checkError(t, "1 gal by weight", err, "weights and volumes of one product cannot be mixed without its density (oz is a weight and fl oz a volume; use one kind throughout, or state the density, such as 9 lb / gal or 1200 lb / yd3)")
	_, err = amount("1 lb").In(unit("gal"))
	checkError(t, "1 lb in gal", err, "a weight amount cannot be shown in gal")
	_, err = rate("1 lb / M").In(unit("gal / M"))
	checkError(t, "1 lb / M in gal / M", err, "a weight rate cannot be shown in gal / M")
	_, err = mustParse("1 lb").In(unit("gal"))
	checkError(t, "1 lb in gal", err, `"1 lb" is a weight, not a volume`)
}
