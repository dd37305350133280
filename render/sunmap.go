package render

import (
	"fmt"
	"math"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/sun"
)

// SunSheets draws the direct sun that the turf of a property gets: its hours a
// day in steps that keep apart without colour, contours at the limits, what
// throws the shade and how high it stands, and on what the hours rest. The plat
// must have been laid out with its sun.
//
// Contours lie within 0.5 m of the hours as they were worked out. Zones are as
// the plat has them: where a person stated an exposure, or patches were made
// fit to be walked, zone and contour differ.
//
// There are as many sheets as SiteMaps takes. Tables that find no room beside the
// map stand on a sheet that follows it; zones whose grass gets too little sun are
// told on the first.
func SunSheets(p *zones.Plat, m zones.Measurement, o MapOptions) ([]*Sheet, error) {
	d, err := sunDraft(p, m, o)
	if err != nil {
		return nil, err
	}
	s := d.subject.(sunMap)
	sheets, err := d.sheets()
	if err != nil {
		return nil, err
	}
	rest, err := s.restOfSheets()
	return append(sheets, rest...), err
}

// restOfSheets has the tables that found no room beside the map.
func (s sunMap) restOfSheets() ([]*Sheet, error) {
	id, title := s.name()
	return s.textSheets(textPages{
		id: id + "-continued", title: title + ", continued", paper: s.laid.paper, blocks: s.later(s.laid.detail),
		block: s.titleBlock(s.laid.paper, 0), method: s.method(), inWords: s.inWords(),
	})
}

// sunMap is the subject of the sheet of the sun.
type sunMap struct {
	*draft
	sun       *zones.Sunlight
	contours  []sun.Contour
	steps     []sunStep
	obstacles []obstacle
	key       legend
}

// A sunStep is the turf of one exposure as the hours have it.
type sunStep struct {
	exposure sun.Exposure
	region   geo.Region
	area     geo.Area
}

func sunDraft(p *zones.Plat, m zones.Measurement, o MapOptions) (*draft, error) {
	if p.Sun == nil {
		return nil, fmt.Errorf("site %s has no hours of sun to draw: lay it out with its sun, on turf", m.ID)
	}
	d, err := newDraft(p, m, o)
	if err != nil {
		return nil, err
	}
	s := sunMap{draft: d, sun: p.Sun, obstacles: obstaclesOf(p.Site)}
	turf := p.Ground.Cover(zones.Turf)
	if s.contours, err = sun.Contours(p.Sun.Hours, turf, p.Sun.Limits); err != nil {
		return nil, err
	}
	if s.steps, err = stepsBetween(s.contours, turf, p.Site.Frame); err != nil {
		return nil, err
	}
	s.key = s.legend()
	d.subject = s
	return d, nil
}

// stepsBetween divides turf by contours, the highest first. Steps that hold
// nothing are left out.
func stepsBetween(contours []sun.Contour, turf geo.Region, frame geo.Frame) ([]sunStep, error) {
	var steps []sunStep
	left := turf
	for i, e := range sun.Exposures {
		here, rest := left, geo.Region{}
		if i < len(contours) {
			var err error
			if here, err = geo.Intersection(left, contours[i].Above); err != nil {
				return nil, err
			}
			if rest, err = geo.Difference(left, contours[i].Above); err != nil {
				return nil, err
			}
		}
		if !here.Empty() {
			steps = append(steps, sunStep{e, here, frame.Area(here)})
		}
		left = rest
	}
	return steps, nil
}

func (s sunMap) name() (id, title string) { return "sun", "Sun and shade" }

func (s sunMap) objectRows() int { return 0 }

func (s sunMap) blocks(level detail) []block {
	blocks := []block{s.key, s.hoursTable(level)}
	if level.later == 0 {
		return append(blocks, s.groundsTable())
	}
	called := "on what the hours rest"
	if level.later > 1 {
		called = "the hours of all zones, and " + called
	}
	return append(blocks, nextSheet(called))
}

// later are the blocks that go on to the next sheet.
func (s sunMap) later(level detail) []block {
	switch level.later {
	case 0:
		return nil
	case 1:
		return []block{s.groundsTable()}
	}
	return []block{s.hoursTable(detail{zones: len(s.plat.Zones)}), s.groundsTable()}
}

// levels keep all beside the map, then less of each zone, then only the zones
// that get least sun.
func (s sunMap) levels() []detail {
	const most = 30 // rows beside a map
	laid := len(s.plat.Zones)
	var levels []detail
	for later := range 2 {
		for told := tellAll; told <= tellNeeded; told++ {
			levels = append(levels, detail{zones: laid, told: told, later: later})
		}
	}
	for n := min(most, laid-2); n > 0; n-- {
		levels = append(levels, detail{zones: n, told: tellNeeded, later: 2})
	}
	return levels
}

// inWords tells the shares of the turf, for people who cannot see them.
func (s sunMap) inWords() string {
	var whole geo.Area
	for _, step := range s.steps {
		whole += step.area
	}
	var shares []string
	for _, step := range s.steps {
		shares = append(shares, fmt.Sprintf("%s %s", strings.ToLower(exposureLooks[step.exposure].word), share(float64(step.area), float64(whole))))
	}
	return fmt.Sprintf("Map of the direct sun on the turf of %s, %s, %s: %s; %s hours a day on the whole.",
		s.letters.of(s.measured.Name), s.lie.northInWords(), s.sun.Season, strings.Join(shares, ", "), hoursText(s.meanHours()))
}

// meanHours is that of the whole turf; NaN if it is too small to have any.
func (s sunMap) meanHours() float64 {
	hours, _ := s.sun.Hours.Mean(s.plat.Ground.Cover(zones.Turf), s.sun.Limits)
	return hours
}

// hoursText writes hours of sun, which are no surer than a tenth.
func hoursText(hours float64) string {
	if math.IsNaN(hours) {
		return "?"
	}
	return fmt.Sprintf("%.1f", hours)
}

func (s sunMap) method() string {
	return "Method: the sun's course over the season, shadows of prisms, roofs and crowns cast on the ground under a clear sky; cloud, glare and light of the sky are left out. " +
		"The reckoning errs by a tenth of an hour at most; heights and crowns that are assumed, and crowns that are no ellipsoids, err by far more. " +
		fmt.Sprintf("Contours are smoothed by less than 0.5 m. Input SHA-256 %.12s, revision %d.", s.measured.InputSHA256, s.measured.Revision)
}
