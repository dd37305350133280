package ingest

import (
	"fmt"
	"iter"
	"math"
	"slices"

	"github.com/paulmach/orb"
)

// doubted is a drawn site, of which is told what none of its features shows
// alone.
func (s *site) doubted() *site {
	var areas []*Feature
	for _, f := range s.Features {
		switch f.Geometry.(type) {
		case orb.Polygon, orb.MultiPolygon:
			areas = append(areas, f)
		}
	}
	if len(areas) > 0 {
		s.doubtAxes(firstCorner(areas[0]), len(areas))
		s.doubtDecimals(areas)
	}
	return s
}

// Turf grows between these latitudes and hardly beyond.
const southernmost, northernmost = -60, 75

func growsAt(latitude float64) bool { return southernmost <= latitude && latitude <= northernmost }

// doubtAxes asks whether longitude and latitude are swapped where no turf grows,
// or where all rings run the wrong way round, as swapping makes them do, and it
// would grow there too. Many a program writes them so, which is told once.
func (s *site) doubtAxes(at orb.Point, areas int) {
	all := areas > 1 && s.turned == areas
	if growsAt(at.Lat()) && !all {
		return
	}
	lies := fmt.Sprintf("latitude %s, longitude %s", appendBrief(nil, at.Lat()), appendBrief(nil, at.Lon()))
	turned := fmt.Sprintf("all %d areas run the wrong way round, turned them", areas)
	if all {
		s.Problems = slices.DeleteFunc(s.Problems, func(p Problem) bool { return p.Code == "ring_winding" })
	}
	switch {
	case !growsAt(at.Lat()):
		s.doubt(at, "lies where no turf grows, at "+lies+": are longitude and latitude swapped?")
	case growsAt(at.Lon()):
		s.doubt(at, turned+": does the site lie at "+lies+", or are longitude and latitude swapped?")
	default:
		s.report(Problem{Severity: Warning, Code: "ring_winding", Place: s.file(), Text: turned, Count: areas})
	}
}

func (s *site) doubt(at orb.Point, text string) {
	place := s.file()
	place.Near = &at
	s.report(Problem{Severity: Warning, Code: "axes_doubtful", Place: place, Text: text, Hint: "if they are, write longitude first, then latitude, as GeoJSON does"})
}

// doubtDecimals warns where corners were cut to so few decimals that this moves
// them by more than tracing does. A few corners may have been typed so.
func (s *site) doubtDecimals(areas []*Feature) {
	const few, fine, metresADegree = 24, 6, 111_000
	corners, decimals := 0, 0
	for _, f := range areas {
		for p := range corner(f.Geometry) {
			for corners++; !hasDecimals(p, decimals); decimals++ {
				if decimals+1 == fine {
					return
				}
			}
		}
	}
	if corners <= few {
		return
	}
	off := metresADegree / 2 * math.Pow10(-decimals)
	s.report(Problem{
		Severity: Warning, Code: "decimals_few", Place: s.file(), Hint: "export it again with 7 decimals",
		Text: fmt.Sprintf("no corner has more than %d decimals of a degree, so each may lie %s m (%s ft) off: areas are less sure than their error says", decimals, twoFigures(off), twoFigures(off/0.3048)),
	})
}

func twoFigures(v float64) string {
	if v >= 10 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.2g", v)
}

// hasDecimals reports whether so many decimals say where a place is.
func hasDecimals(p orb.Point, decimals int) bool {
	const rounding = 1e-9 // degrees, far below what is told apart here
	scale := math.Pow10(decimals)
	for _, v := range p {
		if math.Abs(v*scale-math.Round(v*scale)) > rounding*scale {
			return false
		}
	}
	return true
}

func firstCorner(f *Feature) (first orb.Point) {
	for first = range corner(f.Geometry) {
		break
	}
	return first
}

// corner yields the corners of an area.
func corner(g orb.Geometry) iter.Seq[orb.Point] {
	var polygons orb.MultiPolygon
	switch g := g.(type) {
	case orb.Polygon:
		polygons = orb.MultiPolygon{g}
	case orb.MultiPolygon:
		polygons = g
	}
	return func(yield func(orb.Point) bool) {
		for _, polygon := range polygons {
			for _, ring := range polygon {
				for _, p := range ring {
					if !yield(p) {
						return
					}
				}
			}
		}
	}
}
