package material

import (
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/zones"
)

func TestTold(t *testing.T) {
	us, metric := Figures{zones.US}, Figures{zones.Metric}
	for _, tt := range []struct{ text, us, metric string }{
		{"55 F", "55 F", "12.8 C"},
		{"50 F", "50 F", "10 C"},
		{"32 F", "32 F", "0 C"},
		{"-4 F", "-4 F", "-20 C"},
		{"13 C", "55.4 F", "13 C"},
		{"2 in", "2 in", "5 cm"},
		{"4 in", "4 in", "10 cm"},
		{"1 in", "1 in", "2.5 cm"},
		{"8 in", "8 in", "20 cm"},
		{"5 cm", "2 in", "5 cm"},
		{"10 cm", "4 in", "10 cm"},
		{"0.9 lb / 1000 ft2", "0.9 lb / 1000 ft2", "4.39 g / m2"},
		{"0.25 lb N / 1000 ft2", "0.25 lb N / 1000 ft2", "1.22 g N / m2"},
		{"3 fl oz", "3 fl oz", "3 fl oz"},
	} {
		q := mustParse(tt.text)
		if got := us.Told(q); got != tt.us {
			t.Errorf("%s is told as %s, want %s", tt.text, got, tt.us)
		}
		if got := metric.Told(q); got != tt.metric {
			t.Errorf("%s is told in metric units as %s, want %s", tt.text, got, tt.metric)
		}
	}
}

func TestProse(t *testing.T) {
	for text, want := range map[string]string{
		"soil at 50-55 F in the top 2 in (a source)":       "soil at 10-13 C in the top 5 cm (a source)",
		"between 55 and 85 F, no wind over 5 mph":          "between 13 and 29 C, no wind over 8 km/h",
		"cores 1/2-3/4 in wide and 3 in deep":              "cores 13-19 mm wide and 7.5 cm deep",
		"20-40 holes a square foot":                        "220-430 holes a square metre",
		"tall fescue 3.5-4 in; more than 0.5 in":           "tall fescue 9-10 cm; more than 13 mm",
		"10-50 lb / 1000 ft2, above 0.5 lb K2O / 1000 ft2": "49-240 g / m2, above 2.4 g K2O / m2",
		"about 1 ft3 / 1000 ft2":                           "about 0.3 L / m2",
		"0.5-1.5 cubic yards from 1,000 ft2":               "0.38-1.1 cubic metres from 93 m2",
		// what only looks like a figure
		"the one-call centre (811 in the US)":  "the one-call centre (811 in the US)",
		"a county of 2023 in an order of 1995": "a county of 2023 in an order of 1995",
		"15 degrees (27 %), 24-48 h, 2 passes": "15 degrees (27 %), 24-48 h, 2 passes",
		"Sci. 128(4)":                          "Sci. 128(4)",
	} {
		if got := (Figures{zones.Metric}).Prose(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
		if got := (Figures{zones.US}).Prose(text); got != text {
			t.Errorf("%q becomes %q for readers in the US", text, got)
		}
	}
}

// Any text is told, and a second telling changes nothing.
func TestProseOfAnyText(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		text := rapid.StringMatching(`([0-9/., -]{0,12} ?(F|in|lb / 1000 ft2|mph|ft2|and|to)?){0,4}`).Draw(t, "text")
		once := Figures{zones.Metric}.Prose(text)
		if twice := (Figures{zones.Metric}).Prose(once); twice != once {
			t.Errorf("%q, then %q", once, twice)
		}
	})
}
