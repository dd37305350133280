package render

import (
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/sun"
)

// Patterns of exposures: the less sun, the more ink, so that they keep their
// order on a photocopy. Upright lines are used for nothing else.
var (
	// suns are discs with rays.
	suns = pattern{tiles: []scatter{{across: 9, up: 4.5, mark: sunMark()}}, weight: hairLine, round: true}

	partShade = pattern{rulings: []ruling{{angle: 90, spacing: 2.4, dash: 1.6, gap: 2, shift: 1.8}}, weight: thinLine}
	fullShade = pattern{rulings: []ruling{{angle: 90, spacing: 1.7}}, weight: thinLine}
	deepShade = pattern{rulings: []ruling{{angle: 90, spacing: 0.85}}, weight: mediumLine}

	// doubt is turf so near a limit that it is to be checked on site.
	doubt = pattern{rulings: []ruling{{angle: 45, spacing: 1.9, dash: 1.5, gap: 0.9, shift: 1.2}}, weight: thinLine}
)

func sunMark() []Line {
	const radius, from, to, rays = 0.5, 0.8, 1.2, 8
	mark := disc(Point{}, radius).lines()
	for i := range rays {
		turn := 45 * float64(i)
		mark = append(mark, Line{Points: []Point{Point{from, 0}.turned(turn), Point{to, 0}.turned(turn)}})
	}
	return mark
}

// An exposureLook is how turf of one exposure is drawn: the pattern on every
// sheet, the tint where the sheet is about the sun.
type exposureLook struct {
	word    string
	pattern pattern
	tint    Ink
}

var exposureLooks = map[sun.Exposure]exposureLook{
	sun.FullSun:   {"Full sun", suns, yellow.tint(0.3)},
	sun.PartSun:   {"Part sun", partShade, skyBlue.tint(0.25)},
	sun.FullShade: {"Shade", fullShade, skyBlue.tint(0.6)},
	sun.DeepShade: {"Deep shade", deepShade, blue.tint(0.65)},
}

// shadeInk draws the patterns of exposures, and doubtInk the band of doubt.
var (
	shadeInk = blue.shade(0.55)
	doubtInk = black.tint(0.8)
)

// zonePattern fills a zone: turf of a known exposure has its pattern, other
// turf tufts.
func zonePattern(z zones.Zone, area polygon) Element {
	if look, known := exposureLooks[sun.Exposure(z.Exposure)]; known && z.Apply {
		return look.pattern.fill(area, shadeInk)
	}
	turf := looks[zones.Turf]
	return turf.pattern.fill(area, turf.ink)
}

// shownExposures are those whose pattern the zones have, the sunniest first;
// plain tells whether some turf has none.
func shownExposures(all []zones.Zone) (shown []sun.Exposure, plain bool) {
	for _, e := range sun.Exposures {
		if slices.ContainsFunc(all, func(z zones.Zone) bool { return z.Apply && z.Exposure == string(e) }) {
			shown = append(shown, e)
		}
	}
	return shown, slices.ContainsFunc(all, func(z zones.Zone) bool { return !z.Apply || z.Exposure == "" })
}

// doubtful is the turf to be checked on site, if the sun was worked out.
func (d *draft) doubtful() geo.Region {
	if d.plat.Sun == nil {
		return geo.Region{}
	}
	return d.plat.Sun.Doubtful
}

// doubtBand hatches the turf that is to be checked on site.
func (d *draft) doubtBand(v view) ([]Element, error) {
	shown, err := v.shown(d.doubtful())
	if err != nil || shown.Empty() {
		return nil, err
	}
	return []Element{doubt.fill(v.area(shown), doubtInk)}, nil
}

// legendOfExposures explains the patterns of zones.
func (d *draft) legendOfExposures(add func(bool, string, func(rect) []Element)) {
	shown, _ := shownExposures(d.plat.Zones)
	for _, e := range shown {
		look := exposureLooks[e]
		add(true, look.word, look.pattern.swatch(turfTint, shadeInk, accent, thinLine))
	}
	add(!d.doubtful().Empty(), "Check on site", doubt.swatch(turfTint, doubtInk, accent, thinLine))
}
