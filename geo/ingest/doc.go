// Package ingest reads what people trace, walk and export into features with
// places for every problem found on the way.
//
// Start with [GeoJSON]: it hands out one [Collection] for each site of its
// input, one at a time. Positions are degrees on WGS 84, longitude first (RFC
// 7946); heights are carried along and written back, never used.
//
// A reader repairs only what has one reading (an unclosed ring, a ring wound
// the wrong way, a position given twice in a row) and says so in a [Problem].
// Whether rings cross is not judged here: that takes metres.
//
// Readers take any bytes: they do not panic, and their memory is bounded by
// [Limits].
package ingest
