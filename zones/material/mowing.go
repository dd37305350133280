package material

import (
	"math"
	"time"

	"example.org/turfplat/geo"
)

// Mowing is how grass is kept at a height while it grows.
type Mowing struct {
	Height geo.Length // to which it is cut
	Growth geo.Length // in a day
	Share  Share      // of its height that one cut may take, MowingShare by practice
}

// MowAt returns the height at which the grass must be cut so that no cut takes
// more than its share.
func (m Mowing) MowAt() (geo.Length, error) {
	if !(m.Height > 0 && m.Share > 0 && m.Share < 1) {
		return 0, inputErrorf("", "grass is cut to a height above nothing, by less than all of it")
	}
	return m.Height / geo.Length(1-m.Share), nil
}

// Times returns how often the grass is cut in a time that begins just after a
// cut.
func (m Mowing) Times(span time.Duration) (int, error) {
	at, err := m.MowAt()
	if err != nil || !(m.Growth > 0) {
		return 0, err
	}
	const day = 24 * time.Hour
	between := float64((at - m.Height) / m.Growth) // days
	return wholeTimes(float64(span) / float64(day) / between)
}

// CutsDown returns how many cuts, each of no more than its share, bring grass
// that stands too high down to its height.
func (m Mowing) CutsDown(from geo.Length) (int, error) {
	at, err := m.MowAt()
	if err != nil || from <= m.Height {
		return 0, err
	}
	cuts := math.Log(float64(from/m.Height)) / math.Log(float64(at/m.Height))
	whole, err := wholeTimes(cuts)
	if float64(whole) < cuts-wholeParts {
		whole++
	}
	return whole, err
}

// wholeTimes returns how many whole times there are in a number.
func wholeTimes(v float64) (int, error) {
	if !(v < math.MaxInt32) {
		return 0, inputErrorf("", "that is more cuts than can be counted")
	}
	return int(math.Floor(v + wholeParts)), nil
}
