package material

import "math"

// A SettingPoint is a rate that a spreader was found to run at with a product.
type SettingPoint struct {
	Setting float64 // on the spreader's own scale, above 0
	Rate    Rate
}

// A SettingLine tells which setting gives which rate: a straight line in the
// logarithms of both, fitted by least squares.
type SettingLine struct {
	by               Measure
	a, b             float64 // ln(kg or m3 on a square metre) = a + b ln(setting)
	lowest, highest  float64 // rates of the points
	closest, openest float64 // settings of the points
}

const fewestPoints = 3 // that show whether they lie on a line at all

// FitSettings fits a line to three or more points of one product on one
// spreader. More must come out of wider settings.
func FitSettings(points []SettingPoint) (SettingLine, error) {
	if len(points) < fewestPoints {
		return SettingLine{}, inputErrorf("run at least three settings over a strip of known ground", "%d points make no calibration", len(points))
	}
	l := SettingLine{by: points[0].Rate.By, lowest: math.Inf(1), closest: math.Inf(1)}
	var x, y, xx, xy float64
	for _, p := range points {
		if !(p.Setting > 0 && p.Rate.PerM2 > 0) || math.IsInf(p.Setting*p.Rate.PerM2, 1) || p.Rate.By != l.by {
			return SettingLine{}, inputErrorf("state settings above 0 and rates of one product", "setting %s is no point of a calibration", number(p.Setting))
		}
		l.lowest, l.highest = min(l.lowest, p.Rate.PerM2), max(l.highest, p.Rate.PerM2)
		l.closest, l.openest = min(l.closest, p.Setting), max(l.openest, p.Setting)
	}
	n := float64(len(points))
	for _, p := range points {
		x += math.Log(p.Setting) / n
		y += math.Log(p.Rate.PerM2) / n
	}
	for _, p := range points {
		dx := math.Log(p.Setting) - x
		xx += dx * dx
		xy += dx * (math.Log(p.Rate.PerM2) - y)
	}
	if l.b = xy / xx; !(l.b > 0) || math.IsInf(l.b, 1) {
		return SettingLine{}, inputErrorf("measure again; settings must differ, and wider ones give more", "the points show no setting that gives more than another")
	}
	l.a = y - l.b*x
	return l, nil
}

// For returns the setting for a rate. It refuses one that lies more than a
// part beyond the points of the calibration, SettingReach by practice.
func (l SettingLine) For(r Rate, reach Share) (float64, error) {
	if r.By != l.by || r.Of != Itself {
		return 0, inputErrorf("", "the calibration is not for such a rate")
	}
	within := func(v, low, high float64) bool {
		return v >= low*(1-float64(reach)) && v <= high*(1+float64(reach))
	}
	setting := math.Exp((math.Log(r.PerM2) - l.a) / l.b)
	if !within(r.PerM2, l.lowest, l.highest) || !within(setting, l.closest, l.openest) {
		return 0, inputErrorf("run a strip at a setting nearer to it", "the rate lies more than %s %% beyond the calibration", number(100*float64(reach)))
	}
	return setting, nil
}
