package program

import (
	"slices"
	"strings"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/turf"
)

// Where is on which zones a step is done. All that is stated must hold.
type Where struct {
	Season    turf.Season
	Species   []string
	Exposure  []string
	Zones     []string // ids, names or letters
	Irrigated *bool
}

// Ground is a zone and the grass on it.
type Ground struct {
	zones.ZoneMeasure
	Grass turf.Species
	Known bool // Grass is

	partOf []string // names of what it was divided from
}

// Label names a zone for people.
func (g Ground) Label() string {
	if g.Name != "" {
		return g.Name
	}
	return g.ID
}

// grounds finds the grass of each zone.
func grounds(measured []zones.ZoneMeasure, grasses *turf.Table) []Ground {
	var list []Ground
	for _, z := range measured {
		g := Ground{ZoneMeasure: z}
		if z.Species != "" {
			g.Grass, g.Known = grasses.Find(z.Species)
		}
		list = append(list, g)
	}
	tellParts(list)
	return list
}

// season is that of the grass, else the one that the program assumes.
func (g Ground) season(otherwise turf.Season) turf.Season {
	if g.Known {
		return g.Grass.Season
	}
	return otherwise
}

// shaded reports whether grass grows slowly there for want of sun.
func (g Ground) shaded() bool { return g.Exposure == "shade" || g.Exposure == "deep" }

// holds reports whether a step is done on the zone, were it allowed there.
func (w Where) holds(g Ground, otherwise turf.Season, grasses *turf.Table) bool {
	switch {
	case w.Season != "" && g.season(otherwise) != w.Season,
		len(w.Species) > 0 && !g.isOneOf(w.Species, grasses),
		len(w.Exposure) > 0 && !slices.Contains(w.Exposure, g.Exposure),
		len(w.Zones) > 0 && !g.named(w.Zones),
		w.Irrigated != nil && *w.Irrigated != g.Watered:
		return false
	}
	return true
}

// isOneOf reports whether the zone's grass goes by one of the names.
func (g Ground) isOneOf(names []string, grasses *turf.Table) bool {
	return g.Known && slices.ContainsFunc(names, func(name string) bool {
		s, known := grasses.Find(name)
		return known && s.Name == g.Grass.Name
	})
}

// String says where, for people.
func (w Where) String() string {
	var parts []string
	if w.Season != "" {
		parts = append(parts, string(w.Season)+"-season grass")
	}
	if len(w.Species) > 0 {
		parts = append(parts, strings.Join(w.Species, " or "))
	}
	if len(w.Exposure) > 0 {
		parts = append(parts, "exposure "+strings.Join(w.Exposure, " or "))
	}
	if len(w.Zones) > 0 {
		parts = append(parts, "zone "+strings.Join(w.Zones, " or "))
	}
	if w.Irrigated != nil {
		parts = append(parts, map[bool]string{true: "irrigated", false: "not irrigated"}[*w.Irrigated])
	}
	return strings.Join(parts, ", ")
}
