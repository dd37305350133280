package render

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

func TestScaleString(t *testing.T) {
	for s, want := range map[Scale]string{
		120:  "1 in = 10 ft (1:120)",
		240:  "1 in = 20 ft (1:240)",
		250:  "1:250",
		100:  "1:100",
		1200: "1 in = 100 ft (1:1200)",
		2500: "1:2500",
	} {
		if got := s.String(); got != want {
			t.Errorf("Scale(%d) = %q, want %q", int(s), got, want)
		}
	}
}

func TestParseScale(t *testing.T) {
	for text, want := range map[string]Scale{
		"1:240":                240,
		"1 : 2,400":            2400,
		"20ft":                 240,
		"20 FT":                240,
		"20'":                  240,
		`1" = 30'`:             360,
		"1 in = 50 feet":       600,
		"1in=20ft (1:240)":     240,
		"1:1":                  1,
		"1:1000000":            1_000_000,
		"1 inch = 1000 ft":     12_000,
		"1 in = 20 ft (1:250)": 0,
		"":                     0,
		"1:0":                  0,
		"0ft":                  0,
		"1:1000001":            0,
		"90000ft":              0,
		"1:99999999999999999":  0,
		"2:240":                0,
		"1:24.5":               0,
		"-20ft":                0,
		"20m":                  0,
		"20":                   0,
		"1:240 or so":          0,
	} {
		got, err := ParseScale(text)
		if got != want || (err != nil) != (want == 0) {
			t.Errorf("ParseScale(%q) = %d, %v, want %d", text, int(got), err, int(want))
		}
	}
}

func TestParseScaleUndoesString(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Scale(rapid.IntRange(1, 1_000_000).Draw(t, "denominator"))
		if got, err := ParseScale(s.String()); got != s || err != nil {
			t.Fatalf("ParseScale(%q) = %d, %v", s.String(), int(got), err)
		}
	})
}

func FuzzParseScale(f *testing.F) {
	for _, seed := range []string{"1:240", "20ft", "1 in = 20 ft (1:240)", `1"=20'`, "1:"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if s, err := ParseScale(text); (err == nil) != (s >= 1 && s <= smallestScale) {
			t.Errorf("ParseScale(%q) = %d, %v", text, int(s), err)
		}
	})
}

func TestLengthsOnPaper(t *testing.T) {
	const foot = geo.FootM
	for _, tt := range []struct {
		scale  Scale
		metres float64
		mm     float64
	}{
		{240, 100 * foot, 127},
		{240, 10, 41.6667},
		{240, 50 * foot, 2.5 * 25.4},
		{500, 25, 50},
		{200, 100 * foot, 152.4},
		{1, 1, 1000},
	} {
		if got := tt.scale.MM(tt.metres); math.Abs(got-tt.mm) > 5e-5 {
			t.Errorf("%g m at %s is %g mm, want %g", tt.metres, tt.scale, got, tt.mm)
		}
		if back := tt.scale.metres(tt.scale.MM(tt.metres)); math.Abs(back-tt.metres) > 1e-12*tt.metres {
			t.Errorf("%g m at %s and back is %g m", tt.metres, tt.scale, back)
		}
	}
}

func TestFit(t *testing.T) {
	const foot = geo.FootM
	liveWidth, liveHeight := 10*mmPerInch, 7.5*mmPerInch // of a letter sheet
	for _, tt := range []struct {
		name          string
		series        scaleSeries
		width, height float64
		want          Scale
	}{
		{"just fits 1 in = 10 ft", engineerScales, 100 * foot, 75 * foot, 120},
		{"an inch too wide", engineerScales, 100.1 * foot, 75 * foot, 240},
		{"an inch too high", engineerScales, 100 * foot, 75.1 * foot, 240},
		{"just fits 1 in = 30 ft", engineerScales, 300 * foot, 10, 360},
		{"just fits 1 in = 60 ft", engineerScales, 600 * foot, 450 * foot, 720},
		{"just fits 1 in = 80 ft", engineerScales, 800 * foot, 450 * foot, 960},
		{"next decade", engineerScales, 800.1 * foot, 450 * foot, 1200},
		{"ten kilometres", engineerScales, 10_000, 10_000, 60_000},
		{"a point", engineerScales, 0, 0, 120},
		{"metric", metricScales, 25.4, 19.05, 100},
		{"metric half", metricScales, 25.5, 19.05, 200},
		{"metric quarter", metricScales, 60, 30, 250},
		{"metric eighth", metricScales, 150, 75, 750},
		{"metric decade", metricScales, 200, 100, 1000},
		{"too wide for any", metricScales, 1e9, 1, 0},
		{"not a number", metricScales, math.NaN(), 1, 0},
		{"endless", engineerScales, math.Inf(1), 1, 0},
	} {
		got, err := tt.series.fit(tt.width, tt.height, liveWidth, liveHeight)
		if got != tt.want || (err != nil) != (tt.want == 0) {
			t.Errorf("%s: %d, %v, want %d", tt.name, int(got), err, int(tt.want))
		}
	}
	if _, err := engineerScales.fit(10, 10, 0, 100); err == nil {
		t.Error("a yard fits a window without width")
	}
}
