// Package geo says where things are and how large they are.
//
// Start with [NewFrame]: it lays a plane on the WGS 84 ellipsoid around one
// property, in which areas are exact and a lawn's edges are straight. Rings
// traced in degrees become a [Region] there; regions are joined, cut and
// measured in metres.
//
// Geographic positions are [orb.Point], longitude first, in degrees (RFC
// 7946). Positions in a frame are [XY], in metres, x to the east and y to the
// north, snapped to 2^-23 m, an eighth of a micrometre. Within 10 km of its
// centre a frame gives areas to 1e-9 and lengths to 1e-8 of their size, and no
// better than snapping leaves them: 2^-24 m times the length of the edge. The
// trace they came from is almost never as good, which is what [AreaSigma] is
// for.
//
// What is made here never changes, and several goroutines may use it, but for a
// [Neighbours] until it is settled, and an [Overlay]. What was released must not
// be used any more.
package geo
