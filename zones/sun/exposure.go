package sun

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Exposure is how much direct sun turf gets, as people class it.
type Exposure string

// The exposures.
const (
	FullSun   Exposure = "full"
	PartSun   Exposure = "part"
	FullShade Exposure = "shade"
	DeepShade Exposure = "deep"
)

// Exposures are all of them, the sunniest first.
var Exposures = []Exposure{FullSun, PartSun, FullShade, DeepShade}

// Limits are hours of direct sun a day, in descending order, that part turf
// into classes, one more than there are limits: hours from the first limit on
// are of the first class, those below the last of the last. There are one to
// three of them.
//
// Limits of exposure are three: the least hours of full sun, part sun and
// shade; below the last it is deep shade.
type Limits []float64

// mostClasses are those of three limits.
const mostClasses = 4

// DefaultLimits are those of exposure: 6, 4 and 2 hours.
func DefaultLimits() Limits { return Limits{figures["full"], figures["part"], figures["shade"]} }

// ParseLimits reads limits of exposure as people write them: 6,4,2.
func ParseLimits(text string) (Limits, error) {
	l := make(Limits, len(Exposures)-1)
	parts := strings.Split(text, ",")
	if len(parts) != len(l) {
		return nil, fmt.Errorf("limits %q are not three: write the least hours of full sun, part sun and shade, as in 6,4,2", text)
	}
	for i, part := range parts {
		h, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		if err != nil || !(h > 0 && h < 24) {
			return nil, fmt.Errorf("limit %q is not a number of hours between 0 and 24", strings.TrimSpace(part))
		}
		if i > 0 && h >= l[i-1] {
			return nil, fmt.Errorf("limits %q do not descend: write them as in 6,4,2", text)
		}
		l[i] = h
	}
	return l, nil
}

// String writes limits as ParseLimits reads them.
func (l Limits) String() string {
	var parts []string
	for _, h := range l {
		parts = append(parts, strconv.FormatFloat(h, 'f', -1, 64))
	}
	return strings.Join(parts, ",")
}

// Exposure classes hours of direct sun a day by limits of exposure.
func (l Limits) Exposure(hours float64) Exposure { return Exposures[l.class(hours)] }

// class is the class of hours, counted from 0.
func (l Limits) class(hours float64) int8 {
	for i, least := range l {
		if hours >= least {
			return int8(i)
		}
	}
	return int8(len(l))
}

// distance is how far hours lie from the nearest hours of a class.
func (l Limits) distance(hours float64, class int8) float64 {
	i, d := int(class), 0.0
	if i > 0 {
		d = max(d, hours-l[i-1])
	}
	if i < len(l) {
		d = max(d, l[i]-hours)
	}
	return d
}

// doubtful reports whether hours lie so near a limit that the class is to be
// checked on site.
func (l Limits) doubtful(hours float64) bool {
	return slices.ContainsFunc(l, func(h float64) bool { return math.Abs(hours-h) <= figures["doubt"] })
}
