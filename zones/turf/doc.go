// Package turf knows the grasses that lawns are made of: their season, the sun
// they need, and the published figures for mowing, seeding and nitrogen.
//
// [Default] is the built-in table, [Read] merges a user's table over it.
// Sources disagree: each figure of a species is kept with its source, the
// first one being the one that is used, and [Figures.Span] is what all of them
// together leave open. Inside, figures are in metres, kilograms and hours; the
// tables give them in the units of their sources, which stand in the names of
// the columns.
//
// The figures are a planning aid: the label, local rules and the extension
// service of the place come first.
package turf
