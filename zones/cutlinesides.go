package zones

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// sides are the grasses that a cutline states for what lies on a side of it,
// by the bearing of the side.
type sides map[string]string

// sideWords are the properties of a cutline that name a grass, by the bearing
// of the side that they speak of.
var sideWords = map[string]string{"north": "species_north", "south": "species_south", "east": "species_east", "west": "species_west"}

// statedSides reads what a cutline says of the grass on its sides.
func (o *Object) statedSides() sides {
	stated := make(sides)
	for bearing, word := range sideWords {
		if species, ok := o.Feature.Properties.Text(word); ok && strings.TrimSpace(species) != "" {
			stated[bearing] = strings.TrimSpace(species)
		}
	}
	return stated
}

// opposite reports whether the sides are two of a line at most.
func (g sides) opposite() bool {
	upright := g["north"] != "" || g["south"] != ""
	across := g["east"] != "" || g["west"] != ""
	return !(upright && across)
}

// checkSides warns of a cutline that names grasses and does not say where they
// grow.
func (s *Site) checkSides(o *Object) {
	stated := o.statedSides()
	switch {
	case !stated.opposite():
		s.problem(ingest.Warning, "cutline_species", o.Place, "cutline names the grass of sides that do not lie opposite each other, left aside", "write species_north and species_south, or species_east and species_west")
	case len(stated) == 0 && o.statedSpecies() != "":
		s.problem(ingest.Warning, "cutline_species", o.Place, fmt.Sprintf("cutline does not say on which side of it %q grows, left aside", o.statedSpecies()), "write species_north, species_south, species_east or species_west")
	}
}

// leastBearing is how far two parts must lie apart along a bearing, as a share
// of their distance, to be told apart by it.
const leastBearing = 0.3

// sidesOf are the grasses that a cutline states for its sides, if it says so of
// the sides on which the two parts of a zone lie.
func (d *division) sidesOf(o *Object, left, right geo.XY) sides {
	stated := o.statedSides()
	if !stated.opposite() {
		return nil
	}
	apart := math.Hypot(left.X-right.X, left.Y-right.Y)
	for _, bearing := range slices.Sorted(maps.Keys(stated)) {
		if math.Abs(along(bearing, left, right)) < leastBearing*apart {
			a, b := bearings(left, right)
			a, b = min(a, b), max(a, b)
			d.site.problem(ingest.Warning, "cutline_species", o.Place, fmt.Sprintf("cutline names the grass to its %s, but its sides lie %s and %s, left aside", bearing, a, b),
				fmt.Sprintf("write %s or %s", sideWords[a], sideWords[b]))
			return nil
		}
	}
	return stated
}

// grassAt is the grass stated for the side on which the first of two parts
// lies, seen from the other; "" if none is.
func (g sides) grassAt(part, other geo.XY) string {
	for bearing, species := range g { // at most two, of opposite bearings
		if along(bearing, part, other) > 0 {
			return species
		}
	}
	return ""
}

// along is how far a place lies from another one along a bearing, in metres.
func along(bearing string, place, from geo.XY) float64 {
	switch bearing {
	case "north":
		return place.Y - from.Y
	case "south":
		return from.Y - place.Y
	case "east":
		return place.X - from.X
	}
	return from.X - place.X
}
