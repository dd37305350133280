package render

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/material"
)

// modeWords say how the rate is shared out.
var modeWords = map[lanes.Mode]string{
	lanes.Tight:  "half the rate, lanes half a swath apart",
	lanes.Single: "the rate once, lanes a swath apart",
	lanes.Cross:  "half the rate, two sets of lanes crosswise",
}

// workTable says how the ground is walked and what that comes to.
func (l laneLayer) workTable() table {
	f, s := l.figures, l.sum
	t := table{size: tableSize, columns: []column{{head: "Spreading", width: workColumn}, {wrap: true}}}
	add := func(what, text string) {
		if text != "" {
			t.rows = append(t.rows, []string{what, text})
		}
	}
	if load := l.plan.Work.Load; load != nil {
		add("Step", l.letters.of(load.Step))
		add("Material", l.letters.of(load.Material))
		add("Needed", l.neededText(load))
	}
	ground := l.areaText(s.GroundM2)
	if l.byHandTold() {
		ground += ", and " + l.areaText(s.ByHandM2) + " by hand"
	}
	add("Ground", ground)
	add("Not this time", l.notNowText())
	add("Swath", f.shortLength(s.SwathM)+": "+modeWords[s.Mode])
	if s.Lanes == 0 {
		return t
	}
	add("Lanes", l.countText())
	add("Setting", fmt.Sprintf("%.0f %% of the rate, for a spreader calibrated at the swath", 100*s.SettingShare))
	add("Passes", l.passesText())
	add("Walk", fmt.Sprintf("%s spreading, %s without, %d turns%s", f.lengthText(s.SpreadLengthM), f.lengthText(s.TravelLengthM), s.Turns, l.aPass()))
	add("Time", fmt.Sprintf("%.0f min%s at %s", math.Ceil(s.Minutes), l.aPass(), l.speedText()))
	add("Refill", l.refillText())
	add("Covered", l.coveredText())
	add("Off the turf", l.offTurfText())
	add("Deflector", l.deflectorText())
	return t
}

// neededText tells how much of a product goes on the ground, and at what rate.
func (l laneLayer) neededText(load *lanes.Load) string {
	if !load.Known() {
		return "by its label"
	}
	f := material.Figures{Units: l.figures.Units}
	text := fmt.Sprintf("%s%s at %s", f.Amount(load.For(l.sum.GroundM2+l.sum.ByHandM2)), l.aPass(), f.Rate(load.Rate))
	if l.byHandTold() {
		text += fmt.Sprintf("; %s of it by hand", f.Amount(load.For(l.sum.ByHandM2)))
	}
	return text
}

// passesText says which of several passes the lanes are, and how it lies.
func (l laneLayer) passesText() string {
	text := l.ofPasses("")
	switch {
	case text == "":
		return ""
	case l.liesAcross():
		text += ", its rows across those of the one before"
	case l.passNo() > 1:
		text += ", as the one before"
	}
	return text + "; figures are of it alone"
}

// liesAcross reports whether rows of a further pass lie across those before.
func (l laneLayer) liesAcross() bool {
	return l.passNo() > 1 && l.plan.Work.Mode != lanes.Cross && slices.ContainsFunc(l.plan.Lanes, func(lane lanes.Lane) bool {
		return lane.Spreading && lane.Pass == lanes.Fill && lane.Again == ""
	})
}

// againTexts say where the pass does not lie across the one before, and why.
func (l laneLayer) againTexts() []string {
	var texts []string
	for _, r := range []struct {
		why  lanes.Again
		text string
	}{
		{lanes.Narrow, "Too narrow for lanes across, in part at least: %s. There it is walked as in the pass before: look for stripes."},
		{lanes.Contour, "Too steep for lanes across: %s. There it is walked along the slope, as in the pass before."},
	} {
		var letters []string
		for _, id := range l.plan.RepeatedIn(l.passNo(), r.why) {
			letters = append(letters, l.letter(id))
		}
		if len(letters) > 0 {
			slices.Sort(letters)
			texts = append(texts, fmt.Sprintf(r.text, strings.Join(letters, ", ")))
		}
	}
	return texts
}

// aPass tells figures of one of several passes from those of all.
func (l laneLayer) aPass() string {
	if l.plan.Work.Load.Several() {
		return " a pass"
	}
	return ""
}

// leftHead and leftNumber tell what is left in the hopper: of a known product,
// or the ground for which that is enough.
func (l laneLayer) leftHead() string {
	if load := l.plan.Work.Load; load.Known() {
		return "Left " + load.Unit(l.figures.Units).String()
	}
	return "Left for " + l.figures.areaUnit()
}

func (l laneLayer) leftNumber(lane lanes.Lane) string {
	if load := l.plan.Work.Load; load.Known() {
		return fmt.Sprintf("%.1f", load.On(l.figures.Units, lane.Left))
	}
	return l.figures.Area(lane.Left, lane.Left/100)
}

// byHandTold reports whether so much is left to hands that it is worth a word.
func (l laneLayer) byHandTold() bool {
	const telling = 0.5 // m2
	return l.sum.ByHandM2 >= telling
}

func (l laneLayer) countText() string {
	text := strconv.Itoa(l.sum.Lanes)
	if apart := l.plan.FillSpacing(); apart > 0 {
		text += ", fill lanes " + l.figures.shortLength(apart) + " apart"
	}
	return text
}

func (l laneLayer) coveredText() string {
	const telling = 0.5 // m2
	text := fmt.Sprintf("%.1f %%", math.Floor(1000*l.sum.CoveredShare)/10)
	if l.sum.MissedM2 >= telling {
		text += "; " + l.areaText(l.sum.MissedM2) + " get less than half the rate"
	}
	return text
}

const workColumn = 21.0 // mm

func (l laneLayer) areaText(m2 float64) string {
	const share = 0.01 // of the area, that one writes it to
	return l.figures.Area(m2, share*m2) + " " + l.figures.areaUnit()
}

func (l laneLayer) notNowText() string {
	var letters []string
	for _, z := range l.untreated() {
		letters = append(letters, z.Letter)
	}
	return strings.Join(letters, ", ")
}

func (l laneLayer) speedText() string {
	const perHour = 3600
	speed := l.plan.Work.Practice.Speed * perHour
	if l.figures.Metric() {
		return fmt.Sprintf("%.1f km/h", speed/1000)
	}
	return fmt.Sprintf("%.1f mph", speed/(geo.FootM*5280))
}

// offTurfText says how much lands where it must not.
func (l laneLayer) offTurfText() string {
	text := fmt.Sprintf("%.1f %% of the product", 100*l.sum.OutsideShare)
	var where []string
	for _, kind := range append([]zones.Kind{"beyond"}, zones.CoverKinds...) {
		if part := l.sum.OutsideByCover[kind]; part >= 0.0005 {
			where = append(where, fmt.Sprintf("%s %.1f", groundWord(kind), 100*part))
		}
	}
	if len(where) > 0 {
		text += ": " + strings.Join(where, ", ")
	}
	return text
}

// groundWord names ground that must get nothing.
func groundWord(kind zones.Kind) string {
	switch kind {
	case "", "beyond":
		return "other ground"
	case zones.Keepout:
		return noApplication
	}
	return strings.ToLower(looks[kind].word)
}

// deflectorText says on which lanes the deflector is down, and on which it does
// not help: it keeps off one side only.
func (l laneLayer) deflectorText() string {
	var down, both, other []int
	for _, lane := range l.spreading() {
		switch lane.Deflector {
		case lanes.Neither:
			continue
		case lanes.Both:
			both = append(both, lane.N)
		case l.plan.Work.Shield:
		default:
			other = append(other, lane.N)
			continue
		}
		down = append(down, lane.N)
	}
	var parts []string
	if len(down) > 0 {
		parts = append(parts, "down on "+laneList(down))
	}
	if len(both) > 0 {
		parts = append(parts, "hard edges on both sides of "+laneList(both))
	}
	if len(other) > 0 {
		parts = append(parts, "on the other side of "+laneList(other))
	}
	if len(parts) == 0 {
		return ""
	}
	return string(l.plan.Work.Shield) + ", " + strings.Join(parts, "; ")
}

// laneList writes numbers of lanes, in order, as "lanes 1 to 4, 7", and counts
// them where that would be long.
func laneList(numbers []int) string {
	const most = 6 // runs
	runs, more := zones.Runs(numbers, most)
	if more {
		return fmt.Sprintf("%d lanes", len(numbers))
	}
	word := "lanes "
	if len(numbers) == 1 {
		word = "lane "
	}
	return word + strings.Join(runs, ", ")
}

// wayText tells how a lane runs, and of a lap by which hard edges.
func wayText(lane lanes.Lane, shield lanes.Side) string {
	text := wayWord(lane)
	if lane.Deflector == lanes.Neither {
		return text
	}
	var by []string
	for _, kind := range lane.Beside {
		by = append(by, groundWord(kind))
	}
	switch edges := strings.Join(by, ", "); {
	case edges == "":
		return text
	case lane.Deflector == lanes.Both:
		return text + ", both sides hard: " + edges
	case lane.Deflector == shield:
		return text + ", deflector: " + edges
	default:
		return text + ", hard on the " + string(lane.Deflector) + ": " + edges
	}
}

// laneTable lists the lanes in walking order, several to a row if there is no
// room for each.
func (l laneLayer) laneTable(rows int) table {
	const least = 4 // rows
	f := l.figures
	t := table{size: tableSize, columns: []column{
		{head: "Lane"}, {head: "Zone", wrap: true}, {head: "Way", wrap: true}, {head: f.lengthUnit(), anchor: End}, {head: l.leftHead(), anchor: End},
	}}
	all := l.spreading()
	for group := range slices.Chunk(all, perRow(len(all), max(least, rows))) {
		t.rows = append(t.rows, l.laneRow(group))
	}
	t.totals = [][]string{{"All", "", "", f.Length(l.sum.SpreadLengthM), ""}}
	return t
}

// perRow is how many lanes go into a row so that so many rows hold all.
func perRow(count, rows int) int {
	for factor := 1; ; factor *= 10 {
		for _, n := range []int{1, 2, 5} {
			if n*factor*rows >= count {
				return n * factor
			}
		}
	}
}

func (l laneLayer) laneRow(group []lanes.Lane) []string {
	first, last := group[0], group[len(group)-1]
	name, way := strconv.Itoa(first.N), wayText(first, l.plan.Work.Shield)
	if len(group) > 1 {
		name, way = fmt.Sprintf("%d to %d", first.N, last.N), passWord(group)
	}
	var letters []string
	var length float64
	for _, lane := range group {
		length += l.lengthOf(lane)
		for _, letter := range l.zonesOf(lane) {
			if !slices.Contains(letters, letter) {
				letters = append(letters, letter)
			}
		}
	}
	zone := strings.Join(letters, ", ")
	if len(letters) > mostLetters {
		zone = fmt.Sprintf("%d zones", len(letters))
	}
	return []string{name, zone, way, l.figures.Length(length), l.leftNumber(last)}
}

// mostLetters of zones are listed for a row of the table.
const mostLetters = 4

// passWord names the pass of lanes that share it.
func passWord(group []lanes.Lane) string {
	pass := group[0].Pass
	if slices.ContainsFunc(group, func(lane lanes.Lane) bool { return lane.Pass != pass }) {
		return ""
	}
	return string(pass)
}

// wayWord tells a lap, and of other lanes to which of eight winds they run.
func wayWord(lane lanes.Lane) string {
	first, last := lane.Line[0], lane.Line[len(lane.Line)-1]
	if first == last {
		return "lap"
	}
	winds := []string{"E", "NE", "N", "NW", "W", "SW", "S", "SE"}
	way := last.Minus(first)
	eighth := int(math.Round(math.Atan2(way.Y, way.X) / (math.Pi / 4)))
	return "to " + winds[(eighth+8)%8]
}

// cautions say how lanes are walked, and what stands above any map.
func (l laneLayer) cautions() table {
	t := table{size: tableSize, columns: []column{{head: "On the way", wrap: true}}}
	add := func(text string) { t.rows = append(t.rows, []string{text}) }
	if cut := l.plan.Cut; len(cut) > 0 {
		add(fmt.Sprintf("No way leads round beds and buildings to %s: carry the spreader across.", laneList(cut)))
	}
	for _, text := range l.againTexts() {
		add(text)
	}
	add("The label is the law: rate, buffers, weather, clothing. No spreading by water, in wind, or on steep, soaked or frozen ground but as local rules allow.")
	add("Start walking before you open, close before you stop; closed in turns and on dotted ways. One even pace.")
	if l.deflectorText() != "" {
		add("Deflector down where the table says; sweep what lies on pavement back onto the turf.")
	}
	add("Less left than the table says: stop at the lane where it ends, do not stretch the rate. More left: check the setting.")
	return t
}

// keys explain the lanes.
func (l laneLayer) keys(add func(bool, string, func(rect) []Element)) {
	has := func(want func(lanes.Lane) bool) bool { return slices.ContainsFunc(l.plan.Lanes, want) }
	add(has(func(lane lanes.Lane) bool { return lane.Spreading && lane.Pass == lanes.Header }), "Header lap, deflector side out", headerSample)
	add(has(func(lane lanes.Lane) bool { return lane.Spreading && lane.Pass == lanes.Fill }), "Fill lane", fillSample)
	add(has(func(lane lanes.Lane) bool { return !lane.Spreading }), "Way without spreading", lineSample(travelPen))
	add(len(l.spreading()) > 0, "Number of lane, or each 5th", numberSample)
	add(l.byHandTold(), "By hand", func(box rect) []Element { return byHand(box.polygon()) })
	add(len(l.untreated()) > 0, "Not treated this time", func(box rect) []Element { return notNow(box.polygon()) })
	add(l.bars(), capitalized(noApplication), barredSwatch())
}

func headerSample(box rect) []Element { return arrowSample(box, headerPen, lanes.Header) }
func fillSample(box rect) []Element   { return arrowSample(box, fillPen, lanes.Fill) }

func arrowSample(box rect, pen func([]Line) []Element, p lanes.Pass) []Element {
	return append(lineSample(pen)(box), arrowhead(box.center(), 0, 1, p))
}

func numberSample(box rect) []Element {
	return numeral(7).set(box.center(), 0, Text{})
}
