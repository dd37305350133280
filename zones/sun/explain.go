package sun

// An Account says where the hours of sun of one spot go: Possible = Got +
// Behind + the hours of all Losses. Hours are means a day over the season.
type Account struct {
	Possible float64 // the sun stands above the least elevation
	Got      float64 // direct sun that reaches the spot
	Behind   float64 // the sun stands behind the sloping ground itself
	Losses   []Loss  // by obstacle, the greatest first; none of zero hours
	Days     []Day   // the 15th of each month of the season, or its only day
}

// A Loss is what one obstacle takes. Where several stand between the sun and
// the spot at once, opaque ones share alike what is lost; crowns share it in
// the measure of their density.
type Loss struct {
	Obstacle int // index into Scene.Obstacles
	ID, Name string
	Hours    float64
}

// A Day is the course of one day at the spot, in hours of solar time: the sun
// stands highest at 12.
type Day struct {
	Date      Date
	Rise, Set float64 // the sun passes the least elevation; Rise = Set if it never does
	Got       float64 // hours of direct sun
	Shades    []Shade // by beginning, then by obstacle
}

// A Shade is a time during which an obstacle stands before the sun.
type Shade struct {
	From, To float64 // hours of solar time
	Obstacle int     // index into Scene.Obstacles
	ID, Name string
	Pass     float64 // the share of sun that comes through
}
