// Package soil reads logs of soil temperature and says when a rule of soil
// temperature or of degree days opened, on which reading, and which way the
// soil is going.
//
// Start with [ReadLog]. A [Station] of the log gives the days of a sensor
// ([Station.Soil], [Station.Air]) as a [Series]; a [Rule] finds its [Window] in
// one, [SumDegrees] adds up the heat of days of air.
//
// Temperatures are degrees Celsius, depths metres, days midnights UTC that
// stand for the local day. Gaps stay gaps: a day of several readings is known if
// no stretch of it longer than five hours lacks one (or than the log's usual
// step), a trailing mean if at least 80 % of its days are, its last among them.
// Readings of a stuck sensor, missing codes and what soil cannot be are left
// out and told; a column that is plainly in another unit is refused. What
// counts as such is a table of figures (practice.csv). North and south differ in
// nothing but the day from which a window is looked for.
package soil
