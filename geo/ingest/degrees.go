package ingest

import (
	"fmt"
	"math"

	"github.com/paulmach/orb"
)

// A degreeRule is one way a position can be off the globe.
type degreeRule struct {
	severity Severity
	code     string
	axis     int // of the number in text: 0 longitude, 1 latitude
	text     string
	hint     string
}

var (
	projected = &degreeRule{Refusal, "degrees_projected", 0,
		"%s looks like projected metres, not degrees",
		"convert to longitude and latitude (WGS 84) first"}
	swapped = &degreeRule{Refusal, "axes_swapped", 1,
		"latitude %s is outside -90..90: are longitude and latitude swapped?", ""}
	latitudeOff  = &degreeRule{Refusal, "latitude_range", 1, "latitude %s is outside -90..90", ""}
	longitudeOff = &degreeRule{Refusal, "longitude_range", 0, "longitude %s is outside -180..180", ""}

	// Outlines across the antimeridian are often drawn past 180, where RFC
	// 7946 3.1.9 wants them to go on at -180.
	pastAntimeridian = &degreeRule{Warning, "longitude_wrapped", 0,
		"longitude %s is outside -180..180, took off one turn", ""}
)

// checkDegrees returns the rule a position breaks, or nil.
func checkDegrees(p orb.Point) *degreeRule {
	const metres = 400 // degrees no slip of the hand reaches
	lon, lat := math.Abs(p.Lon()), math.Abs(p.Lat())
	switch {
	case lon <= 180 && lat <= 90:
		return nil
	case lon > metres || lat > metres:
		return projected
	case lat > 90 && lon <= 90:
		return swapped
	case lat > 90:
		return latitudeOff
	case lon > 360:
		return longitudeOff
	}
	return pastAntimeridian
}

// OfWholeFile reports whether a problem of a feature has its cause in how the whole
// file was made, so that most of its features have it.
func (p Problem) OfWholeFile() bool {
	return p.Severity == Refusal && (p.Code == projected.code || p.Code == swapped.code)
}

// remedy says what to do about positions that break the rule, "" if nothing is
// known.
func (r *degreeRule) remedy() string {
	if r == swapped {
		return "are latitude and longitude swapped?"
	}
	return r.hint
}

// finding says that p breaks the rule.
func (r *degreeRule) finding(p orb.Point) finding {
	return finding{
		severity: r.severity, code: r.code, hint: r.hint, near: &p, plural: "positions",
		text: fmt.Sprintf(r.text, appendBrief(nil, p[r.axis])),
	}
}

// wrap brings a longitude by one turn into -180..180.
func wrap(lon float64) float64 {
	if math.Abs(lon) <= 180 {
		return lon
	}
	return lon - math.Copysign(360, lon)
}

// rounded is v as it reads back when written with decimals.
func rounded(v float64) float64 {
	var b [32]byte
	v, _ = parseNumber(appendDegrees(b[:0], v, decimals))
	return v
}
