package track

import "example.org/turfplat/geo"

// Side tells on which side of the edge somebody walked.
type Side int

// The sides. Inside is on the ground measured: within a lawn's edge, and
// outside that of a bed cut out of it.
const (
	NotStated Side = iota // taken as on the edge, with a question
	OnEdge
	Inside
	Outside
)

// Options are what the walker knows and the fixes do not tell.
type Options struct {
	Offset geo.Length // how far from the edge the receiver was carried
	Side   Side
	Sigma  geo.Length // 1-sigma error of a fix on one axis; 0 = from the fixes
	Feet   bool       // problems tell in feet and square feet; steps are in metres always
}
