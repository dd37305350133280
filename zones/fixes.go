package zones

import (
	"encoding/json"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// fixesKey is the property in which a walked object keeps the fixes of its
// laps, as positions one after another.
const fixesKey = "fixes"

const (
	fixDecimals = 1e8   // of a degree: a millimetre
	mostFixes   = 2_000 // of an object; more would not show on a map
)

// keptFixes are the fixes of rings, at most one a second and evenly thinned to
// 2,000. The interval is that between fixes in seconds, 0 if it is not known.
func keptFixes(around []WalkedRing, interval float64) []orb.Point {
	every, all := 1, 0
	if interval > 0 {
		every = max(1, int(math.Ceil(1/interval-0.1))) // receivers are hardly ever in time
	}
	for _, r := range around {
		for _, lap := range r.Raw {
			all += len(lap)
		}
	}
	every = max(every, (all+mostFixes-1)/mostFixes)
	kept := []orb.Point{}
	n := 0
	for _, r := range around {
		for _, lap := range r.Raw {
			for _, p := range lap {
				if n%every == 0 {
					kept = append(kept, orb.Point{math.Round(p.Lon()*fixDecimals) / fixDecimals, math.Round(p.Lat()*fixDecimals) / fixDecimals})
				}
				n++
			}
		}
	}
	return kept
}

// HasFixes reports whether any object keeps the fixes of a walk.
func (s *Site) HasFixes() bool {
	return slices.ContainsFunc(s.Objects, func(o *Object) bool { return len(s.Fixes(o)) > 0 })
}

// Fixes returns the fixes of the walk that an object was made from, as its
// property fixes has them, in the site's frame. Whatever is no position on the
// globe is passed over.
func (s *Site) Fixes(o *Object) []geo.XY {
	raw, ok := o.Feature.Properties.Raw(fixesKey)
	if !ok {
		return nil
	}
	var positions [][]float64
	if json.Unmarshal(raw, &positions) != nil {
		return nil
	}
	var fixes []geo.XY
	for _, p := range positions {
		if len(p) >= 2 && math.Abs(p[0]) <= 180 && math.Abs(p[1]) <= 90 {
			fixes = append(fixes, s.Frame.XY(orb.Point{p[0], p[1]}))
		}
	}
	return fixes
}
