package lanes

import (
	"fmt"
	"math"
	"slices"
)

// Mode is how often, and how far apart, ground is walked.
type Mode string

// The modes. Half the rate twice forgives a pattern that is off.
const (
	Tight  Mode = "tight"  // half the rate, lanes half a swath apart
	Single Mode = "single" // the rate, lanes a swath apart
	Cross  Mode = "cross"  // half the rate, two sets of lanes at right angles
)

// ModeOf returns the mode of a name.
func ModeOf(name string) (Mode, error) {
	m := Mode(name)
	if !slices.Contains([]Mode{Tight, Single, Cross}, m) {
		return "", fmt.Errorf("mode %q is not known: write tight, single or cross", name)
	}
	return m, nil
}

// Rounds is how many times each place is gone over, each at its part of the
// rate.
func (m Mode) Rounds() int {
	if m == Single {
		return 1
	}
	return 2
}

// spacing is how far apart the fill lanes of one set lie at most.
func (m Mode) spacing(swath float64) float64 {
	if m == Tight {
		return swath / 2
	}
	return swath
}

// Spacing is the nominal way between lanes, all sets taken together: ground
// over it is the least length of lanes that can serve the ground.
func (m Mode) Spacing(swath float64) float64 { return swath / float64(m.Rounds()) }

// slack is the width, in metres, for which no lane is added: what the
// rounding of an inset leaves.
const slack = 0.003

// Abreast returns how many lanes a width takes that are no farther apart than
// spacing, and how far apart they are when evened out over the width.
func Abreast(width, spacing float64) (n int, pitch float64) {
	n = max(1, int(math.Ceil((width-min(slack, spacing/100))/spacing)))
	return n, width / float64(n)
}

// A swath outside these is no spreader's, in metres.
const (
	narrowestSwath = 0.3
	widestSwath    = 40
)

// CheckSwath refuses a pattern whose swath no spreader has.
func CheckSwath(p Pattern) error {
	if s := p.Swath(); !(s >= narrowestSwath && s <= widestSwath) {
		return fmt.Errorf("a swath of %.3g m is not within %g to %g m", s, narrowestSwath, float64(widestSwath))
	}
	return nil
}
