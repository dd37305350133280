// Package lanes lays the lanes along which a walker spreads a material evenly
// over turf, and works out what they cover.
//
// Start with [YardOf], which takes from a plat the ground to be treated and
// what stands in the way, then [Lay], which lays header laps inside each edge
// and fill lanes within them and puts them in walking order, and
// [Plan.Coverage], which sums what lands where.
//
// A [Pattern] is what a spreader leaves across its way. Lengths are metres,
// areas square metres, in the plane of the site's frame. Amounts are shares of
// the rate that was asked for.
package lanes
