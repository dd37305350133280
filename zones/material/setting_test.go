package material

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// points of an invented spreader that gives 0.5 x setting^1.5 lb / 1000 ft2.
func settingPoints(settings ...float64) []SettingPoint {
	var points []SettingPoint
	for _, s := range settings {
		points = append(points, SettingPoint{s, rate("0.5 lb / M").Times(math.Pow(s, 1.5))})
	}
	return points
}

func TestSettings(t *testing.T) {
	line := must(FitSettings(settingPoints(2, 4, 9)))
	near(t, "for 4 lb / M", must(line.For(rate("4 lb / M"), SettingReach.Share())), 4, 1e-12)
	near(t, "for 6.75 lb / M", must(line.For(rate("6.75 lb / M"), SettingReach.Share())), math.Pow(13.5, 2.0/3), 1e-12)
	for rate9, within := range map[float64]bool{1.19: true, 1.21: false, 1: true} {
		_, err := line.For(rate("13.5 lb / M").Times(rate9), SettingReach.Share())
		if within != (err == nil) {
			t.Errorf("%g of the highest rate: %v", rate9, err)
		}
	}
	const beyond = "the rate lies more than 20 % beyond the calibration (run a strip at a setting nearer to it)"
	for _, r := range []Rate{rate("0.7 lb / M"), rate("17 lb / M"), rate("0 lb / M")} {
		_, err := line.For(r, SettingReach.Share())
		checkError(t, "beyond", err, beyond)
	}
	_, err := line.For(rate("4 gal / M"), 0.2)
	checkError(t, "gallons", err, "the calibration is not for such a rate")
}

// A line so flat that a rate within reach would take a setting far from all
// that were tried is not followed.
func TestSettingsBeyondTheScale(t *testing.T) {
	points := []SettingPoint{{4, rate("3 lb / M")}, {5, rate("3.05 lb / M")}, {6, rate("3.1 lb / M")}}
	_, err := must(FitSettings(points)).For(rate("3.6 lb / M"), 0.2)
	checkError(t, "flat", err, "the rate lies more than 20 % beyond the calibration (run a strip at a setting nearer to it)")
}

func TestSettingsRefused(t *testing.T) {
	const more = "the points show no setting that gives more than another (measure again; settings must differ, and wider ones give more)"
	for _, tt := range []struct {
		points []SettingPoint
		want   string
	}{
		{settingPoints(2, 4), "2 points make no calibration (run at least three settings over a strip of known ground)"},
		{settingPoints(2, 2, 2), more},
		{[]SettingPoint{{2, rate("4 lb / M")}, {3, rate("3 lb / M")}, {4, rate("2 lb / M")}}, more},
		{settingPoints(0, 2, 4), "setting 0 is no point of a calibration (state settings above 0 and rates of one product)"},
		{append(settingPoints(2, 4), SettingPoint{5, rate("1 gal / M")}), "setting 5 is no point of a calibration (state settings above 0 and rates of one product)"},
	} {
		_, err := FitSettings(tt.points)
		checkError(t, tt.want, err, tt.want)
	}
}

// Points that lie on a line give it back, whatever their order.
func TestSettingsOnALine(t *testing.T) {
	check(t, 100, func(t *rapid.T) {
		a, b := rapid.Float64Range(0.01, 5).Draw(t, "a"), rapid.Float64Range(0.3, 3).Draw(t, "b")
		var points []SettingPoint
		for _, s := range rapid.SliceOfNDistinct(rapid.IntRange(1, 40), 3, 8, rapid.ID[int]).Draw(t, "settings") {
			points = append(points, SettingPoint{float64(s), rate("1 lb / M").Times(a * math.Pow(float64(s), b))})
		}
		line := must(FitSettings(points))
		for _, p := range points {
			near(t, "setting", must(line.For(p.Rate, 0.2)), p.Setting, 1e-9)
		}
	})
}
