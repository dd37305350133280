package sun

import (
	"slices"

	"example.org/turfplat/geo"
)

// A Contour is where the hours of direct sun a day pass a figure.
type Contour struct {
	Hours float64
	Above geo.Region // the turf that gets at least so many
	Lines []geo.Line // on the turf, with that ground to their left
}

// Contours draws a contour on the turf at each limit, for people to look at:
// unlike patches they follow the hours however small the ground. They pass
// between the middles of neighbouring cells where hours in between, taken as
// even, pass the limit (marching squares), and are smoothed and thinned by
// less than 0.5 m. Ground under a square metre goes with that around it.
func Contours(f *Field, turf geo.Region, l Limits) ([]Contour, error) {
	var contours []Contour
	for _, hours := range l {
		c, err := contourAt(f, turf, hours)
		if err != nil {
			return nil, err
		}
		contours = append(contours, c)
	}
	return contours, nil
}

// contourAt draws one contour: the outline between two classes.
func contourAt(f *Field, turf geo.Region, hours float64) (Contour, error) {
	const above, below int8 = 0, 1
	c := classed(f, turf, Limits{hours})
	contour := Contour{Hours: hours}
	if !slices.Contains(c.class, above) {
		return contour, nil
	}
	if !slices.Contains(c.class, below) {
		contour.Above = turf
		return contour, nil
	}
	c.carryOn()
	rings := slices.DeleteFunc(c.outlines()[above], func(r geo.Ring) bool {
		const least = 1.0 // m2
		return enclosed(r) < least && enclosed(r) > -least
	})
	ground, err := assembled(rings)
	if err != nil {
		return contour, err
	}
	for _, p := range ground.Polygons() {
		for _, r := range p.Rings() {
			contour.Lines = append(contour.Lines, turf.Inside(append(slices.Clone(geo.Line(r)), r[0]))...)
		}
	}
	contour.Above, err = geo.Intersection(turf, ground)
	return contour, err
}
