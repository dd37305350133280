package sun

import (
	"math"
	"time"
)

const degree = math.Pi / 180

// A wave is one term a cos(b + c t) of the earth's longitude, a in 1e-8
// radians, t in Julian millennia from 2000.
type wave struct{ a, b, c float64 }

// earthLongitude holds the terms of the theory VSOP87 (Bretagnon & Francou
// 1988, Astron. Astrophys. 202:309-315) that are above 0.2", for each power of
// t, as tabled by Meeus, Astronomical Algorithms, 2nd ed. 1998, appendix III,
// and by Reda & Andreas, NREL/TP-560-34302, 2008. What is left out adds up to
// 4" at the very most.
var earthLongitude = [][]wave{{
	{175347046, 0, 0},
	{3341656, 4.6692568, 6283.07585},
	{34894, 4.6261, 12566.1517},
	{3497, 2.7441, 5753.3849},
	{3418, 2.8289, 3.5231},
	{3136, 3.6277, 77713.7715},
	{2676, 4.4181, 7860.4194},
	{2343, 6.1352, 3930.2097},
	{1324, 0.7425, 11506.7698},
	{1273, 2.0371, 529.691},
	{1199, 1.1096, 1577.3435},
	{990, 5.233, 5884.927},
	{902, 2.045, 26.298},
	{857, 3.508, 398.149},
	{780, 1.179, 5223.694},
	{753, 2.533, 5507.553},
	{505, 4.583, 18849.228},
	{492, 4.205, 775.523},
	{357, 2.92, 0.067},
	{317, 5.849, 11790.629},
	{284, 1.899, 796.298},
	{271, 0.315, 10977.079},
	{243, 0.345, 5486.778},
	{206, 4.806, 2544.314},
	{205, 1.869, 5573.143},
	{202, 2.458, 6069.777},
	{156, 0.833, 213.299},
	{132, 3.411, 2942.463},
	{126, 1.083, 20.775},
	{115, 0.645, 0.98},
	{103, 0.636, 4694.003},
	{102, 0.976, 15720.839},
	{102, 4.267, 7.114},
}, {
	{628331966747, 0, 0},
	{206059, 2.678235, 6283.07585},
	{4303, 2.6351, 12566.1517},
	{425, 1.59, 3.523},
	{119, 5.796, 26.298},
	{109, 2.966, 1577.344},
}, {
	{52919, 0, 0},
	{8720, 1.0721, 6283.0758},
	{309, 0.867, 12566.152},
}}

// deltaT is how far the even time of the theory is ahead of the clock, in
// days. It was 29 s in 1950 and 69 s in 2026 and nobody knows it for 2100; 60 s
// of it move the sun by 0.0007 degrees.
const deltaT = 69.0 / 86400

// apparentSun is the sun among the stars, seen from the earth's centre.
type apparentSun struct {
	declination float64 // radians
	hourAngle   float64 // of Greenwich, westwards, radians
}

// apparent returns where the sun is: right to about 0.001 degrees from 1950 to
// 2100. Formulas from Meeus, chapters 12, 22 and 25; the sun's latitude, never
// above 1.2", is left out.
func apparent(t time.Time) apparentSun {
	days := (float64(t.Unix())+float64(t.Nanosecond())*1e-9)/86400 + 2440587.5 - 2451545 // from 1 January 2000, 12:00
	centuries := (days + deltaT) / 36525
	node := (125.04452 - 1934.136261*centuries) * degree
	sun := (280.4665 + 36000.7698*centuries) * degree
	moon := (218.3165 + 481267.8813*centuries) * degree
	nutation := -17.20*math.Sin(node) - 1.32*math.Sin(2*sun) - 0.23*math.Sin(2*moon) + 0.21*math.Sin(2*node)
	nodding := 9.20*math.Cos(node) + 0.57*math.Cos(2*sun) + 0.10*math.Cos(2*moon) - 0.09*math.Cos(2*node)
	const aberration = -20.4898
	longitude := earthAt(centuries/10) + math.Pi + (nutation+aberration)/3600*degree
	tilt := (23 + (26*60+21.448-46.8150*centuries+nodding)/3600) * degree
	sinL, cosL := math.Sincos(longitude)
	sidereal := 280.46061837 + 360.98564736629*days + 0.000387933*centuries*centuries + nutation/3600*math.Cos(tilt)
	return apparentSun{
		declination: math.Asin(math.Sin(tilt) * sinL),
		hourAngle:   sidereal*degree - math.Atan2(math.Cos(tilt)*sinL, cosL),
	}
}

// earthAt returns the earth's longitude from the sun, radians.
func earthAt(millennia float64) float64 {
	sum, power := 0.0, 1e-8
	for _, waves := range earthLongitude {
		for _, w := range waves {
			sum += power * w.a * math.Cos(w.b+w.c*millennia)
		}
		power *= millennia
	}
	return sum
}
