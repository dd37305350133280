package sun

// Ground stands for an obstacle's index where the sloping ground itself hides
// the sun.
const Ground = -1

// An Account says where the hours of sun of one spot go: Possible = Got + the
// hours of all Losses. Hours are means a day over the season; Got is what
// Hours gives for a cell centred on the spot.
type Account struct {
	Possible float64 // the sun stands above the least elevation
	Got      float64 // direct sun that reaches the spot
	Losses   []Loss  // the greatest first; none of zero hours
	Days     []Day   // the 15th of each month that counts, or the middle of a season without
}

// A Loss is what one obstacle takes. Where several stand between the sun and
// the spot at once, opaque ones share alike what is lost; crowns by themselves
// share it in the measure of their density, the logarithm of what they pass.
type Loss struct {
	Obstacle int    // index into Scene.Obstacles, or Ground
	ID, Name string // of the obstacle
	Hours    float64
}

// A Day is the course of one day at the spot, in hours of solar time: the sun
// stands highest at 12.
type Day struct {
	Date      Date
	Rise, Set float64 // the sun passes the least elevation; both 12 if it stays below
	Got       float64 // hours of direct sun
	Shades    []Shade // by beginning, then by obstacle
}

// A Shade is a time during which an obstacle stands before the sun, to the
// minute.
type Shade struct {
	From, To float64 // hours of solar time
	Obstacle int     // index into Scene.Obstacles, or Ground
	ID, Name string  // of the obstacle
	Pass     float64 // the share of sun that comes through
}
