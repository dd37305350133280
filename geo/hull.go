package geo

import "slices"

// Hull returns the least convex ring round places, counter-clockwise (Andrew
// 1979, Inf. Process. Lett. 9:216-219); of places on one line the two at its
// ends.
func Hull(places []XY) Ring { return AppendHull(nil, slices.Clone(places)) }

// AppendHull appends the hull of places, which it sorts, to a ring: room that
// is used again for many hulls.
func AppendHull(ring Ring, places []XY) Ring {
	if len(places) == 0 {
		return ring
	}
	slices.SortFunc(places, compareXY)
	places = slices.Compact(places)
	start := len(ring)
	for _, p := range places {
		ring = appendTurn(ring, start, p)
	}
	east := len(ring) - 1
	for _, p := range slices.Backward(places) {
		ring = appendTurn(ring, east, p)
	}
	return ring[:max(start+1, len(ring)-1)]
}

// appendTurn appends a position to a chain that turns left from start on.
func appendTurn(chain Ring, start int, p XY) Ring {
	for n := len(chain); n >= start+2 && chain[n-1].Minus(chain[n-2]).Cross(p.Minus(chain[n-2])) <= 0; n-- {
		chain = chain[:n-1]
	}
	return append(chain, p)
}
