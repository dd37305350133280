// Package track makes rings of walked tracks and says how sure their areas
// are.
//
// Start with [Rings]: it cleans the fixes of a receiver carried round a lawn,
// finds the laps, and returns one [Ring] for each piece of ground gone round.
// Each step tells what it dropped ([Step]); the figures it goes by are rows
// with a source ([Rules]).
//
// # The area
//
// The area of a ring is the mean of its laps' traverse sums. A lap is smoothed
// by a filter that takes nothing off corners, and never simplified before it
// is measured; the outline is drawn from the mean of the laps and then set out
// or in all round until it encloses that area.
//
// # The error
//
// Fixes near in time err alike, so that many fixes on one lap do not make a
// small error, and a formula for independent vertices is too good by a factor
// of two to seven (own simulation). Laws of such errors are weighed: white
// noise, errors that fade at first order, and filtered ones. Seen across the
// straight sides of the ring, the fixes tell how well each law explains them;
// what the receiver says of itself counts too. The error of the area is the
// mixture of what follows from each law. Repeated laps show the slow part of
// an error; one lap shows the fast part, from which the slow one follows by
// the law, and is less sure.
//
// How the ring is divided into sides is weighed as well: a bend of the edge and
// the wandering of a receiver look alike on one lap.
//
// Over all simulated walks (testdata/track/simulated.md) the 95 % interval
// holds the true area in 95 %; the table names the groups that are off, and
// compares its width with that of an observer who knows more.
//
// Not in it: an offset the walker does not state (a lawn walked half a metre
// inside its edge is too small by half a metre times its perimeter), a
// walker's own deviation from the edge that each lap repeats, and reflections
// from walls that stay the same for all laps.
//
// Positions are degrees on WGS 84, longitude first; lengths are metres, areas
// square metres, times seconds.
package track
