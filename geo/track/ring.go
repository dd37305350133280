package track

import (
	"math"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// A Ring is ground walked round.
type Ring struct {
	Number    int           // in the order found, from 1; those refused have theirs as well
	Outline   orb.Ring      // degrees; counter-clockwise, closed
	Within    int           // index of the ring right around it, or -1
	Hole      bool          // cut out of the ring around it
	Laps      int           // that its area is the mean of
	Used      int           // fixes it rests on, those of a stop counted as one
	Area      geo.Area      // of the outline
	Sigma     geo.Area      // 1-sigma error of the area
	CI95      geo.Area      // half of the 95 % interval
	Perimeter geo.Length    // of the outline
	EdgeSigma geo.Length    // the error of an edge taken as [geo.Walk] from which Sigma follows
	Class     byte          // 'A' to 'E', see below
	Strip     bool          // long and narrow
	WheelIt   bool          // a wheel or tape does better
	Noise     Noise         // of the receiver on this ring
	Assumed   bool          // the error is believed, not seen in the fixes
	Raw       [][]orb.Point // the fixes of each lap, for drawing
}

// Noise is how the errors of a receiver hang together on one axis.
type Noise struct {
	Sigma geo.Length // 1-sigma scatter within the time of the walk
	White float64    // share of its variance that is new at each fix
	Reach float64    // s, after which the rest has faded to 1/e; 0 if there is none
}

// The classes of a measured area by its 1-sigma error, as a share of the area
// (common practice, no source): A as good as taped, to 2 %, and with RTK fixes;
// B as traced on clear imagery, to 5 %; C as walked in several laps, to 8 %; D
// beyond; E if the error is assumed.
const (
	classA, classB, classC = 0.02, 0.05, 0.08
)

// judge sets the class of a ring and whether a wheel does better.
func (g *Ring) judge(b belief) {
	share := float64(g.Sigma) / float64(g.Area)
	g.Strip = float64(g.Perimeter) > stripShape.Value*math.Sqrt(float64(g.Area))
	g.WheelIt = share > wheelError.Value
	switch {
	case g.Assumed:
		g.Class = 'E'
	case share <= classA && b.sigma <= rtkFloat.sigma:
		g.Class = 'A'
	case share <= classB:
		g.Class = 'B'
	case share <= classC:
		g.Class = 'C'
	default:
		g.Class = 'D'
	}
}

// measure takes the outline, area and perimeter of a region of one piece, and
// the error of its edge from that of its area.
func (g *Ring) measure(region geo.Region, frame geo.Frame) {
	g.Outline = frame.MultiPolygon(region)[0][0]
	g.Area, g.Perimeter = frame.Area(region), frame.Perimeter(region)
	g.EdgeSigma = geo.Length(float64(g.Sigma) / (walkBound.Value * float64(g.Perimeter)))
}

// used counts the stations that laps rest on. One may be in several: a lap that
// was not finished is completed from another.
func used(laps []lap) int {
	seen := make(map[int]bool)
	for _, l := range laps {
		for _, s := range l.stations {
			seen[s] = true
		}
	}
	return len(seen)
}

// raw returns the fixes of a lap.
func (t traverse) raw(l lap) []orb.Point {
	points := make([]orb.Point, len(l.stations))
	for i, s := range l.stations {
		points[i] = t.path.fixes[t.path.stations[s].fix].At
	}
	return points
}
