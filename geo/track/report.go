package track

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// A report is a walk in the making.
type report struct {
	walk      Walk
	regions   []geo.Region // of the rings
	uncertain []contour    // of rings refused as too uncertain
	problems  []ingest.Problem
	place     ingest.Place
	options   Options
	frame     geo.Frame
}

func placeOf(t *ingest.Tracks) ingest.Place {
	if len(t.Tracks) == 1 {
		return t.Tracks[0].Place
	}
	return ingest.Place{Source: t.Source, Feature: -1}
}

func (r *report) step(s Step) { r.walk.Steps = append(r.walk.Steps, s) }

func (r *report) add(s ingest.Severity, code, text, hint string) {
	r.problems = append(r.problems, ingest.Problem{Severity: s, Code: code, Place: r.place, Text: text, Hint: hint})
}

func (r *report) refuse(code, text, hint string) { r.add(ingest.Refusal, code, text, hint) }
func (r *report) warn(code, text, hint string)   { r.add(ingest.Warning, code, text, hint) }
func (r *report) note(code, text, hint string)   { r.add(ingest.Note, code, text, hint) }

// area tells an area, m2, with its unit.
func (r *report) area(a float64) string {
	if r.options.Feet {
		return fmt.Sprintf("%.0f ft2", geo.Area(a).SquareFeet())
	}
	return fmt.Sprintf("%.0f m2", a)
}

// length tells a length, m, with its unit.
func (r *report) length(l float64) string {
	unit := "m"
	if r.options.Feet {
		l, unit = geo.Length(l).Feet(), "ft"
	}
	if math.Abs(l) < 1 {
		return fmt.Sprintf("%.2f %s", l, unit)
	}
	return fmt.Sprintf("%.1f %s", l, unit)
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// fixes returns those of all walks, one after another; they are the tracks'
// own if all are of one segment.
func (r *report) fixes(t *ingest.Tracks) []ingest.Fix {
	var walked [][]ingest.Fix
	for _, track := range t.Tracks {
		if track.Closed {
			r.note("ring_drawn", "this ring was drawn, not walked", "read it as a trace")
			continue
		}
		walked = append(walked, track.Segments...)
	}
	onGlobe := func(f ingest.Fix) bool { return math.Abs(f.At.Lat()) <= 90 && math.Abs(f.At.Lon()) <= 360 }
	if len(walked) == 1 && len(walked[0]) > 0 && !slices.ContainsFunc(walked[0], func(f ingest.Fix) bool { return !onGlobe(f) }) {
		return walked[0]
	}
	fixes := make([]ingest.Fix, 0, t.Fixes())
	for _, segment := range walked {
		for _, f := range segment {
			if onGlobe(f) {
				fixes = append(fixes, f)
			}
		}
	}
	if len(fixes) == 0 {
		r.refuse("fixes_none", "there are no fixes of a walk in it", "")
	}
	return fixes
}

// centre is the median of the fixes, which a few stray ones do not move.
// Longitudes count from the first, for walks across the antimeridian.
func centre(fixes []ingest.Fix) orb.Point {
	lon, lat := make([]float64, len(fixes)), make([]float64, len(fixes))
	first := fixes[0].At.Lon()
	for i, f := range fixes {
		lon[i], lat[i] = math.Remainder(f.At.Lon()-first, 360), f.At.Lat()
	}
	return orb.Point{math.Remainder(median(lon)+first, 360), median(lat)}
}

const closeTheRing = "walk round the lawn along its edge, and on to where you started"

// tooFew says why so few stations are left after a step.
func (r *report) tooFew(before path, s Step) {
	if s.Name == "standing" {
		r.refuse("walk_still", fmt.Sprintf("the receiver stood still: its fixes scatter by %s (1 sigma on one axis)", r.length(float64(standing(before).Sigma))), closeTheRing)
		return
	}
	if s.Kept == s.Before {
		r.refuse("fixes_few", fmt.Sprintf("has %d of the %d fixes that it takes to go round anything", s.Kept, fewestFixes), closeTheRing)
		return
	}
	r.refuse("fixes_few", fmt.Sprintf("%d of %d fixes are left after the step %q (%s)", s.Kept, s.Before, s.Name, s.Text),
		"record one fix a second under a clear sky, and let the receiver settle first")
}

// tooMany refuses what is no walk round one property.
func (r *report) tooMany(fixes int) {
	r.refuse("fixes_many", fmt.Sprintf("has %d fixes, more than the %d of a long day's walk: it is the log of many days, or of something else", fixes, mostFixes),
		"give the part of it that goes round the property")
}

// noRing says why no ring was found.
func (r *report) noRing(t traverse, gate float64, knots int) {
	first, last := t.at[0], t.at[len(t.at)-1]
	switch extent := t.path.extent(); {
	case extent < stillWithin.Value:
		r.refuse("walk_still", fmt.Sprintf("the receiver stayed within %s, as one that stands still", r.length(extent)), closeTheRing)
	case knots > 0:
		r.refuse("ring_small", "what the walk goes round is too small to be told from the receiver's wandering", "wheel or tape it")
	case first.Distance(last) <= gate:
		r.refuse("walk_open", fmt.Sprintf("the walk ends %s from its start, but goes round nothing wide enough to be told from the receiver's wandering", r.length(first.Distance(last))),
			"walk along one side of the ground and back along the other; wheel or tape a narrow strip")
	default:
		r.refuse("walk_open", fmt.Sprintf("the walk does not close: it ends %s from its start, and comes back on itself nowhere within %s",
			r.length(first.Distance(last)), r.length(gate)), closeTheRing)
	}
}

// followed reports whether most of what was walked along a ring is in its
// laps; if not it refuses the ring, as those laps may go round something else.
func (r *report) followed(t traverse, laps []lap, left []geo.XY, b belief, number int) bool {
	in, out := used(laps), beside(left, resampled(laps[0].at, ringPlaces), t.path.gate(b))
	if float64(out) <= leftShare.Value*float64(in+out) {
		return true
	}
	r.refuse("ring_left", fmt.Sprintf("ring %d rests on %d of the %d fixes walked along it: the others close no lap of it", number, in, in+out),
		"walk it again, each lap all the way round and along the same edge")
	return false
}

// observed bridges the unobserved edges of laps by what other laps saw, and
// leaves out the laps that still hide more than others. It returns what the
// rest may hide, m2, and no laps if that is too much.
func (r *report) observed(t traverse, laps []lap, number int) ([]lap, float64) {
	laps = t.mended(laps)
	stakes := make([]float64, len(laps))
	least := math.Inf(1)
	for i, l := range laps {
		stakes[i] = t.atStake(l)
		least = min(least, stakes[i])
	}
	if least > lostShare.Value*laps[0].area() {
		r.refuse("ring_unobserved", fmt.Sprintf("the receiver was lost along ring %d: up to %s may lie beyond the straight line joined across", number, r.area(least)),
			"walk that part again, or a second lap")
		return nil, 0
	}
	var kept []lap
	for i, l := range laps {
		if stakes[i] <= least {
			kept = append(kept, l)
		}
	}
	if n := len(laps) - len(kept); n > 0 {
		r.step(Step{Ring: number, Name: "lost", Text: fmt.Sprintf("%s left out, on which the receiver was lost where no other lap helps", plural(n, "lap"))})
	}
	if least > 0 {
		r.warn("edge_unobserved", fmt.Sprintf("the receiver was lost along ring %d, joined straight across: up to %s may lie beyond", number, r.area(least)),
			"check that edge on a map, or walk it again")
	}
	return kept, least
}

// tooUncertain refuses a ring.
func (r *report) tooUncertain(laps []lap, area float64, e estimate, number int) {
	r.refuse("ring_uncertain", fmt.Sprintf("ring %d is %s wide on the mean and the fixes err by %s: after %s it is %s +/- %s (1 sigma), no measurement",
		number, r.length(laps[0].width()), r.length(float64(e.noise.Sigma)), plural(len(laps), "lap"), r.area(area), r.area(e.sigma)), "wheel it, or walk more laps")
}

// explain tells how a ring came about, and what is doubtful about it.
func (r *report) explain(t traverse, g Ring, laps []lap, e estimate, b belief, number int) {
	areas := make([]string, len(laps))
	for i, l := range laps {
		areas[i] = fmt.Sprintf("%.1f", signedArea(l.at))
	}
	tell := func(name, format string, values ...any) {
		r.step(Step{Ring: number, Name: name, Text: fmt.Sprintf(format, values...)})
	}
	tell("smooth", "over %g s before and after each fix; jitter %.2f m", t.smooth.half, t.jitter)
	tell("area", "%s: %s m2", plural(len(laps), "lap"), strings.Join(areas, ", "))
	tell("error", "believed %.2f m (%s); seen across %s %.2f m on one axis, %.0f %% of its variance new at each fix, the rest fading in %.0f s",
		b.sigma, b.text, plural(e.sides, "straight side"), float64(g.Noise.Sigma), 100*g.Noise.White, g.Noise.Reach)
	tell("outline", "%d vertices, set out to enclose %.1f m2", len(g.Outline)-1, float64(g.Area))
	if g.WheelIt {
		what := "ring"
		if g.Strip {
			what = "strip"
		}
		r.warn("ring_wheel", fmt.Sprintf("%s %d is uncertain by %.0f %% when walked: %s +/- %s (1 sigma)",
			what, number, 100*float64(g.Sigma)/float64(g.Area), r.area(float64(g.Area)), r.area(float64(g.Sigma))), "wheel it, or walk more laps")
	}
	if g.Assumed {
		r.warn("ring_assumed", fmt.Sprintf("ring %d has too few fixes to tell their error: %s is assumed (%s)", number, r.length(b.sigma), b.text),
			"record one fix a second, or state the error")
	}
}
