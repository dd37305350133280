// Package render lays drawings out on paper and writes them as SVG, PDF and
// PNG.
//
// [SiteMap] draws the map of a property with its tables. For other drawings
// start with a [Sheet]: a piece of paper with [Path], [Text] and [Group]
// elements on it, bottom first. It is laid out once, in millimetres, true to
// scale; [SVG], [PDF] and [PNG] then write the same picture. A [Scale] turns
// metres on the ground into millimetres on paper, without loss.
//
// Places on a sheet are [Point]: x to the right and y upwards from the lower
// left corner, as on a survey, so that north is up without a flip. Numbers are
// written to the micrometre. Sizes of letters are points (1/72 inch), weights
// of lines millimetres. Inks are opaque, so that every viewer and every
// photocopier shows the same.
//
// The bytes written depend on the sheet alone: not on the day, the machine or
// what else was written before.
package render
