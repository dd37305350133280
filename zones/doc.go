// Package zones says what the ground of a property is and how its turf
// divides.
//
// Start with [NewSite], which finds the part each traced object plays, then
// [Survey], which lays the covers out over the ground once and for all
// ([Ground]), divides the turf into zones ([Zone]) and measures both
// ([Plat.Measurement]). Walked tracks become objects of a site by
// [Walking.Follow], site files are made by [Compile], any number of them out of
// one map by a [BaseMap].
//
// [Compile] makes a site file of traced or mapped objects; [Site.Extend] works a
// second survey into one.
//
// What throws shade, on the property and beyond it, is [Site.Obstacles]; its
// heights are stated, tagged, or defaults that [Site.HeightAccount] owns up to.
//
// Covers partition the ground: they never overlap, and with what is unknown
// they make up the outline. Zones tile the turf. Areas are square metres on
// the WGS 84 ellipsoid, lengths metres.
package zones
