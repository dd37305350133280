package zones

import (
	"math"
	"strconv"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// A Roof is what tops a building, as the OSM wiki's Simple 3D Buildings has
// it.
type Roof struct {
	Shape  RoofShape
	Height float64 // m, from eave to ridge; 0 of a flat roof
	Across bool    // the ridge runs across the long side of the building
	Slope  float64 // degrees clockwise from north, down the face of a skillion; NaN = not known
}

// RoofShape is the shape of a roof.
type RoofShape string

// The shapes of roofs that are told apart.
const (
	Flat      RoofShape = "flat"
	Gabled    RoofShape = "gabled"
	Hipped    RoofShape = "hipped"
	Pyramidal RoofShape = "pyramidal"
	Skillion  RoofShape = "skillion"
	OddRoof   RoofShape = "other" // pitched, in a way that is not told apart
)

// roofShapes are the tagged shapes by the nearest of ours.
var roofShapes = map[string]RoofShape{
	"": Flat, "flat": Flat, "terrace": Flat,
	"gabled": Gabled, "pitched": Gabled, "gambrel": Gabled, "saltbox": Gabled,
	"hipped": Hipped, "half-hipped": Hipped, "mansard": Hipped, "side_hipped": Hipped,
	"pyramidal": Pyramidal, "dome": Pyramidal, "onion": Pyramidal, "cone": Pyramidal,
	"skillion": Skillion, "lean_to": Skillion,
}

const roofLevelM = 2.5 // m a storey in a roof, and of a pitched roof of which nothing is known; common practice

// roofOf reads the roof of a building from its tags.
func roofOf(p ingest.Properties) Roof {
	text, _ := p.Tag("roof:shape")
	shape, known := roofShapes[strings.ToLower(text)]
	if !known {
		shape = OddRoof
	}
	roof := Roof{Shape: shape, Slope: math.NaN()}
	tall, tagged := roofHeightOf(p)
	switch {
	case tagged:
		roof.Height = tall
	case shape != Flat:
		roof.Height = roofLevelM
	}
	if shape == Flat && roof.Height > 0 {
		roof.Shape = OddRoof // there is a roof, of a shape that is not tagged
	}
	orientation, _ := p.Tag("roof:orientation")
	roof.Across = orientation == "across"
	if text, ok := p.Tag("roof:direction"); ok {
		roof.Slope = compassBearing(text)
	}
	return roof
}

func roofHeightOf(p ingest.Properties) (float64, bool) {
	if text, ok := p.Tag("roof:height"); ok {
		if h, ok := parseTagLength(text); ok {
			return h, true
		}
	}
	levels, ok := tagNumber(p, "roof:levels", mostly)
	return levels * roofLevelM, ok
}

var compassPoints = []string{"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"}

// compassBearing reads degrees clockwise from north or a point of the compass;
// NaN if the text is neither.
func compassBearing(text string) float64 {
	text = strings.ToUpper(strings.TrimSpace(text))
	for i, point := range compassPoints {
		if text == point {
			return 22.5 * float64(i)
		}
	}
	v, err := strconv.ParseFloat(text, 64)
	switch {
	case err != nil || !(math.Abs(v) <= 360):
		return math.NaN()
	case v < 0:
		return v + 360
	}
	return v
}
