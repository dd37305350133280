package material

import (
	"testing"
	"time"

	"example.org/turfplat/geo/ingest"
)

// Factors are exact: the foot by 85 FR 62698 (2020), the gallon of 231 in3 and
// the 128 fl oz in it by Utah State University Extension NR/RM/05, the pound
// and the imperial gallon from memory of NIST Handbook 44, appendix C.
func TestUnits(t *testing.T) {
	for _, tt := range []struct {
		one, of string
		want    float64
	}{
		{"1 ft2", "m2", 0.09290304},
		{"1 m2", "ft2", 10.763910416709722},
		{"1 M", "m2", 92.90304},
		{"1 acre", "ft2", 43560},
		{"1 acre", "m2", 4046.8564224},
		{"1 ha", "acre", 2.471053814671653},
		{"1 ha", "are", 100},
		{"1 yd2", "ft2", 9},
		{"1 in2", "ft2", 1.0 / 144},
		{"1 gal", "L", 3.785411784},
		{"1 gal", "fl oz", 128},
		{"1 qt", "fl oz", 32},
		{"1 pt", "fl oz", 16},
		{"1 tbsp", "tsp", 3},
		{"1 fl oz", "tbsp", 2},
		{"1 imp gal", "L", 4.54609},
		{"1 imp gal", "gal", 1.200949926},
		{"1 imp gal", "imp fl oz", 160},
		{"1 imp gal", "imp qt", 4},
		{"1 imp qt", "imp pt", 2},
		{"1 fl oz", "mL", 29.5735295625},
		{"1 imp fl oz", "mL", 28.4130625},
		{"1 lb", "g", 453.59237},
		{"1 lb", "oz", 16},
		{"1 oz", "g", 28.349523125},
		{"1 ton", "lb", 2000},
		{"1 t", "kg", 1000},
		{"1 yd3", "ft3", 27},
		{"1 yd3", "m3", 0.764554857984},
		{"1 yd", "in", 36},
		{"1 lb / 1000 ft2", "lb / acre", 43.56},
		{"1 lb / 1000 ft2", "g / m2", 4.882427636},
		{"1 lb / 1000 ft2", "kg / ha", 48.82427636},
		{"1 lb / acre", "kg / ha", 1.120851156},
		{"1 lb / acre", "g / 100 ft2", 1.041304798},
		{"200 lb / acre", "lb / 1000 ft2", 4.591368228},
		{"1 gal / 1000 ft2", "gal / acre", 43.56},
		{"1 gal / 1000 ft2", "L / 100 m2", 4.074583333},
		{"1 gal / 1000 ft2", "L / ha", 407.4583333},
		{"1 gal / acre", "L / ha", 37854.11784 / 4046.8564224},
		{"1 fl oz / M", "mL / 100 m2", 31.83268229},
		{"1 mm", "L / m2", 1},
		{"0.25 in", "mm", 6.35},
		{"1 week", "h", 168},
		{"55 F", "C", 115.0 / 9},
		{"12.8 C", "F", 55.04},
		{"-40 F", "C", -40},
		{"2 fl oz / gal", "%", 1.5625},
	} {
		got, err := mustParse(tt.one).In(unit(tt.of))
		if err != nil {
			t.Errorf("%s in %s: %v", tt.one, tt.of, err)
		}
		near(t, tt.one+" in "+tt.of, got, tt.want, 1e-9)
	}
}

func TestWritten(t *testing.T) {
	for text, want := range map[string]string{
		"0.75 lb N / 1000 ft2":              "0.75 lb N / 1000 ft2",
		"0.75lb n/1000ft2":                  "0.75 lb N / 1000 ft2",
		"3/4 lb N/M":                        "0.75 lb N / M",
		"2 lb of K2O per 1,000 square feet": "2 lb K2O / 1000 ft2",
		"0.44 lb P₂O₅ / M":                  "0.44 lb P2O5 / M",
		"96.25 lb/1000ft2 N":                "96.25 lb N / 1000 ft2",
		"3.6 lb / 1000 ft2":                 "3.6 lb / 1000 ft2",
		"3 fl oz/1000 ft2":                  "3 fl oz / 1000 ft2",
		"3 fl. oz. / M":                     "3 fl oz / M",
		"3 fluid ounces per 1000 sq. ft.":   "3 fl oz / 1000 ft2",
		"3 oz/1000 ft2":                     "3 oz / 1000 ft2",
		"1/4 in":                            "0.25 in",
		"¼\u00a0in":                         "0.25 in",
		`1 1/2"`:                            "1.5 in",
		"1½″":                               "1.5 in",
		"10ft":                              "10 ft",
		"10'":                               "10 ft",
		"40 g/m²":                           "40 g / m2",
		"20 kg/ha":                          "20 kg / ha",
		"0.5 lb a.i. per acre":              "0.5 lb ai / acre",
		"0.5 LB AE / AC":                    "0.5 lb ae / acre",
		"2 lb pls / 1000 ft2":               "2 lb PLS / 1000 ft2",
		"50 lbs":                            "50 lb",
		"1,200 lb / yd3":                    "1200 lb / yd3",
		"1,234,567.5 lb":                    "1234567.5 lb",
		".5 lb":                             "0.5 lb",
		"65%":                               "65 %",
		"65 % ai":                           "65 % ai",
		"1 % v/v":                           "1 %",
		"4 lb ai/gal":                       "4 lb ai / gal",
		"4 lb / US gal":                     "4 lb / gal",
		"5 imperial gallons":                "5 imp gal",
		"5 UK gal":                          "5 imp gal",
		"5 us gal":                          "5 gal",
		"2 yd³":                             "2 yd3",
		"24 h":                              "24 h",
		"14 weeks":                          "14 weeks",
		"2d":                                "2 d",
		"55 °F":                             "55 F",
		"55f":                               "55 F",
		"12.8 deg C":                        "12.8 C",
		"−4 °F":                             "-4 F",
		"5 M":                               "5 M",
		"5 m":                               "5 m",
		"0.5 in/h":                          "0.5 in / h",
		"5 gal/min":                         "5 gal / min",
		"5000 square feet":                  "5000 ft2",
		"0 lb":                              "0 lb",
		"0.000001 g":                        "0.000001 g",
		"1 lb / 0.5 acre":                   "1 lb / 0.5 acre",
		"123456789012345 mg":                "123456789012345 mg",
	} {
		q, err := Parse(text)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if q.String() != want {
			t.Errorf("%q is %q, want %q", text, q, want)
		}
	}
}

func TestRefused(t *testing.T) {
	const (
		units    = " (weights are lb, oz, kg, g; liquids fl oz, gal, L, mL; bulk yd3, ft3, m3; lengths in, ft, mm, m; areas ft2, M, acre, m2, ha; times min, h, d, weeks; temperatures F, C; shares %)"
		unitless = " has a number without a unit (write it with its unit, such as lb, fl oz, ft2, lb / 1000 ft2, in, h or %)"
		digits   = ": the number is not understood (write 1200, 1,200 or 0.75, of at most 15 digits)"
		parts    = ": the fraction is not understood (write 1/4 or 1 1/2, and a unit before a / that means per)"
		begin    = " begins with no number (write a number and its unit, such as 3 lb / 1000 ft2)"
	)
	for text, want := range map[string]string{
		"":                         `""` + begin,
		"lb":                       `"lb"` + begin,
		"3":                        `"3"` + unitless,
		"3 / 1000 ft2":             `"3 / 1000 ft2"` + parts,
		"3.5 / 1000 ft2":           `"3.5 / 1000 ft2"` + unitless,
		"3 lb / 1000":              `"3 lb / 1000"` + unitless,
		"3 lb /":                   `"3 lb /"` + unitless,
		"0,5 kg":                   `"0,5 kg"` + digits,
		"0,500 kg":                 `"0,500 kg"` + digits,
		"1,2 lb":                   `"1,2 lb"` + digits,
		"12,3456 lb":               `"12,3456 lb"` + digits,
		"1.2.3 lb":                 `"1.2.3 lb"` + digits,
		"3. lb":                    `"3. lb"` + digits,
		"1234567890123456 lb":      `"1234567890123456 lb"` + digits,
		"3 lb / 1,2 ft2":           `"3 lb / 1,2 ft2"` + digits,
		"1234567/8 in":             `"1234567/8 in"` + parts,
		"1/0 in":                   `"1/0 in"` + parts,
		"1 3/2 in":                 `"1 3/2 in"` + parts,
		"1/1000 ft2":               `"1/1000 ft2"` + parts,
		"1e3 lb":                   `"1e3 lb": unit "e3" is not known` + units,
		"3 foo":                    `"3 foo": unit "foo" is not known` + units,
		"3 lb / foo":               `"3 lb / foo": unit "foo" is not known` + units,
		"3 months":                 `"3 months": months differ in length (write days or weeks, which are always as long)`,
		"1 year":                   `"1 year": years differ in length (write days or weeks, which are always as long)`,
		"2 bags":                   `"2 bags": a bag is no measure (write what it holds, such as 50 lb)`,
		"3 lb 4 oz":                `"3 lb 4 oz": "4 oz" is not understood (write a number, a unit and at most one / or per)`,
		"3 lb / M / year":          `"3 lb / M / year": "/ year" is not understood (write a number, a unit and at most one / or per)`,
		"3 lb X / M":               `"3 lb X / M": "X / M" is not understood (write a number, a unit and at most one / or per)`,
		"3 lb of":                  `"3 lb of": "of" is not understood (write a number, a unit and at most one / or per)`,
		"-3 lb":                    `"-3 lb" is less than nothing`,
		"-500 F":                   `"-500 F" is colder than anything can be`,
		"5 F / d":                  `"5 F / d": a temperature stands alone`,
		"5 lb / F":                 `"5 lb / F": a temperature stands alone`,
		"3 lb / 0 ft2":             `"3 lb / 0 ft2" is divided by nothing`,
		"3 gal N / M":              `"3 gal N / M": N is weighed, not measured by gal (write it as a weight, such as 0.75 lb N / 1000 ft2)`,
		"3 in N":                   `"3 in N": N is weighed, not measured by in (write it as a weight, such as 0.75 lb N / 1000 ft2)`,
		"3 lb\n/ ft2":              `"3 lb\n/ ft2": "\n/ ft2" is not understood (write a number, a unit and at most one / or per)`,
		"3 \xff":                   `"3 \xff"` + unitless,
		string(make([]byte, 1000)): ingest.Quoted(string(make([]byte, 1000))) + " is too long for a quantity (write a number and its unit)",
	} {
		q, err := Parse(text)
		checkError(t, text+" read as "+q.String(), err, want)
	}
}

func TestNotWhatIsWanted(t *testing.T) {
	read := func(text string, as func(Quantity) error) error { return as(mustParse(text)) }
	volume := func(q Quantity) error { _, err := q.Volume(); return err }
	lengths := func(q Quantity) error { _, err := q.Length(); return err }
	areas := func(q Quantity) error { _, err := q.Area(); return err }
	share := func(q Quantity) error { _, err := q.Share(); return err }
	density := func(q Quantity) error { _, err := q.Density(); return err }
	temperature := func(q Quantity) error { _, err := q.Temperature(); return err }
	duration := func(q Quantity) error { _, err := q.Duration(); return err }
	rates := func(q Quantity) error { _, err := q.Rate(); return err }
	amounts := func(q Quantity) error { _, err := q.Amount(); return err }
	strength := func(q Quantity) error { _, err := q.Strength(); return err }
	for _, tt := range []struct {
		text string
		as   func(Quantity) error
		want string
	}{
		{"3 oz", volume, `"3 oz" is a weight, not a volume (oz is a weight; liquids are measured in fl oz)`},
		{"3 fl oz", density, `"3 fl oz" is a volume, not a weight in a volume (fl oz is a volume; weights are oz, lb, g or kg, and only a stated density turns one into the other)`},
		{"3 yd", volume, `"3 yd" is a length, not a volume (write yd3 for cubic yards)`},
		{"3 lb", volume, `"3 lb" is a weight, not a volume (write it in gal, fl oz, L, mL, yd3, ft3 or m3)`},
		{"3 lb / m", rates, `"3 lb / m" is nothing that is used here, not a rate (m is a metre; write M or 1000 ft2)`},
		{"3 lb", rates, `"3 lb" is a weight, not a rate (write it as in 3 lb / 1000 ft2, 3 fl oz / 1000 ft2, 40 g / m2 or 1/4 in)`},
		{"3 ft2 / M", rates, `"3 ft2 / M" is a share, not a rate (write it as in 3 lb / 1000 ft2, 3 fl oz / 1000 ft2, 40 g / m2 or 1/4 in)`},
		{"3 gal / M", lengths, `"3 gal / M" is a volume on an area, not a length (write it in in, ft, mm or m)`},
		{"3 M", lengths, `"3 M" is an area, not a length (M is 1000 ft2; write m for metres)`},
		{"3 ft", areas, `"3 ft" is a length, not an area (write it in ft2, acre, m2 or ha)`},
		{"150 %", share, `"150 %" is more than the whole`},
		{"3 lb", share, `"3 lb" is a weight, not a share (write it in %)`},
		{"3 lb", density, `"3 lb" is a weight, not a weight in a volume (write it in lb / yd3, lb / gal, kg / m3 or g / L)`},
		{"3 h", temperature, `"3 h" is a time, not a temperature (write it in F or C)`},
		{"3 F", duration, `"3 F" is a temperature, not a time (write it in min, h, d or weeks)`},
		{"40000 d", duration, `"40000 d" is longer than a hundred years`},
		{"3 in / h", lengths, `"3 in / h" is a depth in a time, not a length (write it in in, ft, mm or m)`},
		{"3 gal / min", volume, `"3 gal / min" is a volume in a time, not a volume (write it in gal, fl oz, L, mL, yd3, ft3 or m3)`},
		{"3 ft2", amounts, `"3 ft2" is an area, not a weight or a volume (write it in lb, oz, kg, g, gal, fl oz, L, mL, yd3, ft3 or m3)`},
		{"3 lb", strength, `"3 lb" is a weight, not a strength (write it as in 65 % or 4 lb / gal)`},
	} {
		checkError(t, tt.text, read(tt.text, tt.as), tt.want)
	}
	for name, as := range map[string]func(Quantity) error{
		"number": func(q Quantity) error { _, err := q.In(unit("%")); return err },
		"volume": volume, "rate": rates, "amount": amounts, "strength": strength, "time": duration,
	} {
		if as(Quantity{Number: 3}) == nil {
			t.Errorf("a bare number is taken for a %s", name)
		}
	}
	if bare := (Quantity{Number: 3}); bare.SI() != 3 || bare.String() != "3" {
		t.Errorf("a bare 3 is %v, %s", bare.SI(), bare)
	}
}

func TestDuration(t *testing.T) {
	for text, want := range map[string]time.Duration{
		"24 h": 24 * time.Hour, "14 weeks": 98 * 24 * time.Hour, "2 d": 48 * time.Hour, "1/2 h": 30 * time.Minute, "90 s": 90 * time.Second,
	} {
		if got := must(mustParse(text).Duration()); got != want {
			t.Errorf("%s is %s, want %s", text, got, want)
		}
	}
}

func TestParseUnit(t *testing.T) {
	if got := unit("fl oz per 1000 sq ft"); got != unit("fl oz / 1000 ft2") {
		t.Errorf("unit is %s", got)
	}
	for text, want := range map[string]string{
		"1/2 in":  `"1/2 in" is more than a unit (write it as in lb or fl oz / 1000 ft2)`,
		"lb N":    `"lb N" is more than a unit (write it as in lb or fl oz / 1000 ft2)`,
		"furlong": `"1 furlong": unit "furlong" is not known (weights are lb, oz, kg, g; liquids fl oz, gal, L, mL; bulk yd3, ft3, m3; lengths in, ft, mm, m; areas ft2, M, acre, m2, ha; times min, h, d, weeks; temperatures F, C; shares %)`,
	} {
		_, err := ParseUnit(text)
		checkError(t, text, err, want)
	}
}
