package render

import (
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
)

// A laneLayer draws the lanes of a plan on a map, and tells of them beside it.
type laneLayer struct {
	*draft
	plan  lanes.Plan
	sum   lanes.Summary
	group string // put behind the names of its groups
}

func newLaneLayer(d *draft, plan lanes.Plan, sum lanes.Summary) laneLayer {
	return laneLayer{d, plan, sum, ""}
}

// spreading are the lanes that spread, in walking order.
func (l laneLayer) spreading() []lanes.Lane {
	return slices.DeleteFunc(slices.Clone(l.plan.Lanes), func(lane lanes.Lane) bool { return !lane.Spreading })
}

// A laneLine is a lane as it runs on the sheet.
type laneLine struct {
	lanes.Lane
	lines []Line // in the window; more than one only if it leaves it
}

// ground draws the lanes, bottom first. Numbers and the start keep off all
// plates that are taken on the board and take their own; lines are broken at
// all of them. So other labels come before, and none after.
func (l laneLayer) ground(v view) ([]Element, error) {
	start := l.start(v)
	all := make([]laneLine, len(l.plan.Lanes))
	for i, lane := range l.plan.Lanes {
		all[i] = laneLine{lane, v.inWindow([]geo.Line{lane.Line})}
	}
	others := newLaneSegments(all)
	numbers := l.numbers(others, v)
	var header, fill, travel []Element
	for i, lane := range all {
		arrows := l.arrows(i, others, numbers[i] != nil)
		lines := l.labels.broken(lane.lines)
		if !lane.Spreading {
			travel = append(travel, Group{ID: fmt.Sprintf("way-%d", lane.N), Elements: travelPen(lines)})
			continue
		}
		pen, to := fillPen, &fill
		if lane.Pass == lanes.Header {
			pen, to = headerPen, &header
		}
		drawn := slices.Concat(pen(lines), arrows, numbers[i])
		*to = append(*to, Group{ID: fmt.Sprintf("lane-%d", lane.N), Title: l.title(lane.Lane), Elements: drawn})
	}
	return []Element{Group{ID: "lanes" + l.group, Title: "Spread lanes" + l.ofPasses(", "), Elements: []Element{
		Group{ID: "lanes-travel" + l.group, Title: "Ways without spreading", Elements: travel},
		Group{ID: "lanes-fill" + l.group, Title: "Fill lanes", Elements: fill},
		Group{ID: "lanes-header" + l.group, Title: "Header laps", Elements: header},
	}}, Group{ID: "walk-starts" + l.group, Title: "Where the walk starts", Elements: start}}, nil
}

// shortLanes are the plates of lanes that a label could hide.
func (l laneLayer) shortLanes(v view) []plate {
	const short, room = 8.0, 1.0 // mm
	var plates []plate
	for _, lane := range l.spreading() {
		for _, line := range v.inWindow([]geo.Line{lane.Line}) {
			if from, to := line.Points[0], line.Points[len(line.Points)-1]; line.length() < short && from != to {
				plates = append(plates, strokePlate(from, to, room))
			}
		}
	}
	return plates
}

// takeShortLanes keeps labels off short lanes, but for the letters of zones that
// would find no room.
func (l laneLayer) takeShortLanes(v view) {
	l.short = l.shortLanes(v)
	for _, p := range l.short {
		l.labels.take(p)
	}
}

func (d *draft) giveBackShortLanes() {
	for _, p := range d.short {
		d.labels.release(p)
	}
	d.short = nil
}

// title tells a lane to people who cannot see it.
func (l laneLayer) title(lane lanes.Lane) string {
	return fmt.Sprintf("Lane %d, %s, %s, %s", lane.N, l.zoneWords(lane), wayWord(lane), l.figures.lengthText(l.lengthOf(lane)))
}

// lengthOf is the length of a lane on the ellipsoid, m.
func (l laneLayer) lengthOf(lane lanes.Lane) float64 {
	return float64(l.plat.Site.Frame.LineLength(lane.Line))
}

// letter is that of the zone of an id.
func (l laneLayer) letter(zone string) string {
	for _, z := range l.plat.Zones {
		if z.ID == zone {
			return z.Letter
		}
	}
	return ""
}

// zonesOf are the letters of the zones through which a lane runs, but for those
// that it hardly touches.
func (l laneLayer) zonesOf(lane lanes.Lane) []string {
	const telling = 1.0 // m
	var letters []string
	for _, s := range lane.Stretches {
		if s.Zone == lane.Zone || s.Share*l.lengthOf(lane) >= telling {
			letters = append(letters, l.letter(s.Zone))
		}
	}
	return letters
}

// zoneWords names those zones.
func (l laneLayer) zoneWords(lane lanes.Lane) string {
	letters := l.zonesOf(lane)
	if len(letters) == 1 {
		return "zone " + letters[0]
	}
	return "zones " + strings.Join(letters, ", ")
}

// start marks where the walk starts if the site has no sign there.
func (l laneLayer) start(v view) []Element {
	if len(l.plan.Lanes) == 0 {
		return nil
	}
	at := v.at(l.plan.Lanes[0].Line[0])
	for _, s := range l.signsOf(zones.Start, v) {
		if levelPlate(s.at, signHeight, signHeight).holds(at) {
			return nil
		}
	}
	place := func(at Point) plate { return levelPlate(at, signHeight*1.2, signHeight*1.2) }
	around := []Point{at}
	for _, out := range []float64{1.4, 2.2} {
		for i := range 8 {
			around = append(around, at.plus(Point{out * signHeight, 0}.turned(45*float64(i)).X, Point{out * signHeight, 0}.turned(45*float64(i)).Y))
		}
	}
	for _, p := range around {
		if box := place(p); l.labels.free(box) && box.within(v.window.inset(windowInset)) {
			l.labels.take(box)
			return []Element{startSign(p, signHeight)}
		}
	}
	return nil
}

// untreated are the zones that the plan leaves out though something may be
// applied there.
func (l laneLayer) untreated() []zones.Zone {
	var left []zones.Zone
	for _, z := range l.plat.Zones {
		if z.Apply && !slices.Contains(l.plan.Zones, z.ID) {
			left = append(left, z)
		}
	}
	return left
}

// otherGround draws, under the lanes, the turf that they do not serve: what is
// left to hands, zones that are not treated this time, and those where nothing
// is applied.
func (l laneLayer) otherGround(v view) ([]Element, error) {
	var elements []Element
	draw := func(id, title string, r geo.Region, pen func(polygon) []Element) error {
		shown, err := v.shown(r)
		if err == nil && !shown.Empty() {
			elements = append(elements, Group{ID: id, Title: title, Elements: pen(v.area(shown))})
		}
		return err
	}
	for _, z := range l.untreated() {
		if err := draw("not-now-"+z.Letter, "Zone "+z.Letter+", not treated this time", z.Region, notNow); err != nil {
			return nil, err
		}
	}
	for _, z := range l.plat.Zones {
		if z.Apply {
			continue
		}
		if err := draw("zone-"+z.Letter, "Zone "+z.Letter+", "+noApplication, z.Region, barredOff); err != nil {
			return nil, err
		}
	}
	for _, hand := range l.plan.Hand {
		if err := draw("by-hand", "To be done by hand", hand, byHand); err != nil {
			return nil, err
		}
	}
	return elements, nil
}
