// Package ingest reads what people trace, walk and export into features with
// places for every problem found on the way.
//
// Start with [Read]: it hands out one [Collection] for each site of its input,
// one at a time, whether that is [GeoJSON] or a map extract ([OSM]). Walked
// tracks, which [IsTrack] tells, are read by [ReadTracks]. Files of more features
// than memory should hold go through [EachFeature]. Positions are
// degrees on WGS 84, longitude first (RFC 7946); heights are carried along and
// written back, never used.
//
// A reader repairs only what has one reading (an unclosed ring, a ring wound
// the wrong way, a position given twice in a row) and says so in a [Problem].
// Whether rings cross is not judged here: that takes metres.
//
// What may be found in GeoJSON, by [Problem.Code]; the other readers say what
// they find beside it:
//
//   - the input: read_failed, input_empty, input_short, format_foreign,
//     format_unknown, json_syntax, utf8_invalid, and limit_bytes, limit_depth,
//     limit_features, limit_positions, limit_problems
//   - collections and features: features_missing, features_type, feature_type,
//     properties_type, member_repeated, id_type, id_repeated, crs_unknown, and
//     the note crs_old
//   - geometries: geometry_missing, geometry_empty, geometry_object,
//     geometry_type, geometry_nested, coordinates_missing, coordinates_shape
//   - positions: position_short, position_text, number_range,
//     degrees_projected, axes_swapped, latitude_range, longitude_range
//   - lines and rings: line_short, polygon_empty, ring_short, ring_flat
//   - the site as a whole: axes_doubtful, decimals_few
//   - repairs: ring_unclosed, ring_winding, position_repeated,
//     longitude_wrapped
//
// Readers take any bytes: they do not panic, and their memory is bounded by
// [Limits].
package ingest
