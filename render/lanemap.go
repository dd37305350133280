package render

import (
	"fmt"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
)

// LaneSheets draws the lanes along which a spreader is walked over a property,
// on as many sheets as [SiteMaps] takes: header laps, fill lanes and the ways
// between them in lines that stay apart without colour, with numbers in walking
// order and arrows, what is left to be done by hand, a table of the lanes and
// what they come to. The summary is that of the plan, of the same plat.
//
// No line of a lane runs through a label: lines are broken there.
func LaneSheets(p *zones.Plat, m zones.Measurement, plan lanes.Plan, sum lanes.Summary, o MapOptions) ([]*Sheet, error) {
	d, err := laneDraft(p, m, plan, sum, o)
	if err != nil {
		return nil, err
	}
	return d.sheets()
}

// laneMap is the subject of the sheet of lanes.
type laneMap struct {
	*draft
	lanes laneLayer
	key   legend
	brief legend // without what the site map explains
}

func laneDraft(p *zones.Plat, m zones.Measurement, plan lanes.Plan, sum lanes.Summary, o MapOptions) (*draft, error) {
	if sum.Lanes == 0 && sum.ByHandM2 == 0 {
		return nil, fmt.Errorf("site %s has no ground to walk: nothing is applied on any of its zones", m.ID)
	}
	d, err := newDraft(p, m, o)
	if err != nil {
		return nil, err
	}
	d.show(placesIn(plan))
	l := laneMap{draft: d, lanes: newLaneLayer(d, plan, sum)}
	l.key, l.brief = l.legend(true), l.legend(false)
	d.subject = l
	return d, nil
}

// placesIn are the corners of the ground that a plan works and of its ways.
func placesIn(plan lanes.Plan) geo.Ring {
	var places geo.Ring
	for _, r := range slices.Concat(plan.Walked, plan.Hand) {
		places = append(places, shells(r)...)
	}
	for _, l := range plan.Lanes {
		places = append(places, l.Line...)
	}
	return places
}

func (l laneMap) name() (id, title string) { return "lanes", "Spread lanes" }

func (l laneMap) blocks(level detail) []block {
	key := l.brief
	if level.objects > l.rows() {
		key = l.key
	}
	blocks := []block{l.lanes.workTable()}
	if fills := l.lanes.fillTable(min(mostFillings, level.objects)); fills != nil {
		blocks = append(blocks, fills)
	}
	return append(blocks, l.lanes.laneTable(level.objects), key, l.lanes.cautions())
}

// mostFillings of the hopper are listed beside a map; more are told in words, or
// on another sheet.
const mostFillings = 6

// objectRows counts the key as one more, so that it is the first to be cut.
func (l laneMap) objectRows() int { return l.rows() + 1 }

// rows is how many rows list the lanes at most.
func (l laneMap) rows() int {
	const most = 100
	return min(most, len(l.lanes.spreading()))
}

// inWords describes the lanes to people who cannot see them.
func (l laneMap) inWords() string {
	s := l.lanes.sum
	return fmt.Sprintf("Map of the spread lanes of %s%s, %s: %d lanes for a swath of %s on %s %s, %s; %s %s to be done by hand.",
		l.letters.of(l.measured.Name), l.lanes.ofPasses(", "), l.lie.northInWords(), s.Lanes, l.figures.shortLength(s.SwathM),
		l.figures.Area(s.GroundM2, 0), l.figures.areaUnit(), modeWords[s.Mode], l.figures.Area(s.ByHandM2, 0), l.figures.areaUnit())
}

func (l laneMap) method() string {
	return "Method: laps half a swath inside each edge, then straight lanes within them at the heading that takes the least walking, each set evened out over its width. " +
		"What lands where is summed on a grid of a tenth of a swath from the spreader's pattern; the deflector is taken to hold back all that header laps would throw off the turf. " +
		"No wander of the walker is reckoned in, nor wind. Lengths are those on the map, slopes not added. " +
		fmt.Sprintf("Input SHA-256 %.12s, revision %d.", l.measured.InputSHA256, l.measured.Revision)
}

// legend lists what the sheet of lanes shows; what the site map explains as
// well, if it is to be whole.
func (l laneMap) legend(whole bool) legend {
	var key legend
	add := func(there bool, text string, sample func(rect) []Element) {
		if there {
			key.entries = append(key.entries, legendEntry{sample, text})
		}
	}
	l.lanes.keys(add)
	l.legendOfSigns(add)
	if !whole {
		return key
	}
	l.legendOfPaleCovers(add)
	add(!l.plat.Ground.Unknown.Empty(), unknownLook.word, unknownLook.swatch())
	add(len(l.plat.Zones) > 1, "Zone edge", lineSample(paleZoneEdge))
	add(!l.plat.Ground.Outline.Empty(), "Site outline", lineSample(outlinePen))
	l.legendOfBarriers(add, zones.Fence, zones.Wall, zones.Hedge)
	add(l.hasNeighbours(), "Neighbours", neighbourSample)
	return key
}

func (l laneMap) legendOfSigns(add func(bool, string, func(rect) []Element)) {
	for _, s := range signs {
		add(s.kind == zones.Start || l.has(s.kind, anyObject), s.word, func(box rect) []Element { return []Element{s.draw(box.center(), signHeight)} })
	}
}
