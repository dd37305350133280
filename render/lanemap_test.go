package render

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/material"
)

func laneNames() []string { return slices.Sorted(maps.Keys(laneSites)) }

// laneCases are the sheets of lanes among all cases.
func laneCases(t *testing.T) []mapCase {
	t.Helper()
	cases := slices.DeleteFunc(slices.Clone(mapCases(t)), func(c mapCase) bool {
		_, isLanes := c.draft.subject.(laneMap)
		return !isLanes
	})
	if len(cases) < 2*len(laneSites) {
		t.Fatalf("only %d sheets of lanes", len(cases))
	}
	return cases
}

// pathsOf returns the paths of elements.
func pathsOf(elements []Element) (paths []Path) {
	visit(elements, func(e Element) {
		if p, ok := e.(Path); ok {
			paths = append(paths, p)
		}
	})
	return paths
}

// A label is never crossed by a lane, a way or an arrow: lines are broken there.
func TestNoLaneCrossesALabel(t *testing.T) {
	for _, c := range laneCases(t) {
		walked := group(c.sheet.Elements, "lanes")
		texts := slices.Concat(textsOf(walked), textsOf(group(c.sheet.Elements, "labels")), textsOf(group(c.sheet.Elements, "signs")))
		crossed := 0
		for _, path := range pathsOf(walked) {
			for _, line := range path.Lines {
				for i, a := range line.Points {
					if i == len(line.Points)-1 && !line.Closed {
						break
					}
					edge := strokePlate(a, ring(line.Points).next(i), path.Weight)
					for _, text := range texts {
						if lettersPlate(text).meets(edge) {
							crossed++
							t.Errorf("%s: a line through %v crosses %q", c.name, a, text.String)
						}
					}
				}
			}
		}
		if len(texts) == 0 {
			t.Errorf("%s: nothing is labelled", c.name)
		}
	}
}

// Each lane has a group of its own, in walking order, in that of its pass.
func TestEveryLaneIsAGroup(t *testing.T) {
	for _, c := range laneCases(t) {
		l := c.draft.subject.(laneMap).lanes
		for _, lane := range l.spreading() {
			in := group(c.sheet.Elements, "lanes-"+string(lane.Pass))
			if paths := pathsOf(group(in, fmt.Sprintf("lane-%d", lane.N))); len(paths) == 0 {
				t.Errorf("%s: lane %d is not drawn in its pass, %s", c.name, lane.N, lane.Pass)
			}
		}
	}
}

// Where there is room every lane has its number, on itself and before its
// middle, or says that it is walked again.
func TestLanesAreNumbered(t *testing.T) {
	for _, name := range []string{"lanes-orchard-house", "lanes-island", "lanes-u", "lanes-three", "lanes-strip"} {
		c := laneSites[name].draw(t, name, Tabloid)
		v := viewOf(t, c.draft)
		l := c.draft.subject.(laneMap).lanes
		told := map[int]int{}
		for _, lane := range l.spreading() {
			line := v.inWindow([]geo.Line{lane.Line})[0]
			drawn := group(c.sheet.Elements, fmt.Sprintf("lane-%d", lane.N))
			for _, text := range textsOf(drawn) {
				for i, part := range strings.Split(text.String, ", ") {
					n, err := strconv.Atoi(part)
					if err != nil || i == 0 && n != lane.N {
						t.Errorf("%s: %q stands on lane %d", name, text.String, lane.N)
					}
					told[n]++
				}
				at := lettersPlate(text).center()
				if off := distanceTo(line, at); off > 0.6 && !led(drawn) {
					t.Errorf("%s: %q stands %.1f mm off its lane of %.0f mm", name, text.String, off, line.length())
				}
			}
		}
		for n := 1; n <= l.sum.Lanes; n++ {
			if told[n] != 1 {
				t.Errorf("%s: lane %d is numbered %d times", name, n, told[n])
			}
		}
	}
}

// led reports whether a line leads to the number of a lane.
func led(lane []Element) bool {
	return slices.ContainsFunc(pathsOf(lane), func(p Path) bool { return p.Stroke == grey && p.Weight == hairLine })
}

// The first and the last lane of each block are numbered wherever lanes do not
// lie too close to be told apart, if they are long enough to be seen.
func TestBlocksAreNumberedAtTheirEnds(t *testing.T) {
	const seen, apart = 6.0, 2.0 // mm
	ends, missing := 0, 0
	for _, c := range laneCases(t) {
		v := viewOf(t, c.draft)
		if v.scale.MM(c.draft.subject.(laneMap).lanes.plan.FillSpacing()) < apart {
			continue
		}
		var all []laneLine
		for _, lane := range c.draft.subject.(laneMap).lanes.plan.Lanes {
			all = append(all, laneLine{lane, v.inWindow([]geo.Line{lane.Line})})
		}
		for _, block := range blocksOf(all) {
			for _, i := range []int{block[0], block[len(block)-1]} {
				if all[i].lines[0].length() < seen {
					continue
				}
				ends++
				if len(textsOf(group(c.sheet.Elements, fmt.Sprintf("lane-%d", all[i].N)))) == 0 {
					missing++
				}
			}
		}
	}
	if ends < 150 || missing > ends/50 {
		t.Errorf("%d of %d ends of blocks have no number", missing, ends)
	}
}

func viewOf(t *testing.T, d *draft) view {
	t.Helper()
	a, err := d.arrange()
	if err != nil {
		t.Fatal(err)
	}
	v, err := a.view()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func distanceTo(line Line, q Point) float64 {
	nearest := math.Inf(1)
	for i := 1; i < len(line.Points); i++ {
		nearest = min(nearest, squaredDistance(q, line.Points[i-1], line.Points[i]))
	}
	return math.Sqrt(nearest)
}

// What is drawn of a lane lies on it, true to scale, and is all of it but where
// labels stand.
func TestLanesAreTrueToScale(t *testing.T) {
	for _, c := range laneCases(t) {
		v := viewOf(t, c.draft)
		l := c.draft.subject.(laneMap).lanes
		for _, lane := range l.spreading() {
			scaled := v.inWindow([]geo.Line{lane.Line})
			var drawn, whole float64
			for _, line := range scaled {
				whole += line.length()
			}
			for _, path := range pathsOf(group(c.sheet.Elements, fmt.Sprintf("lane-%d", lane.N))) {
				if path.Stroke.none() || path.Weight < thinLine {
					continue // an arrow, or a line to a number
				}
				for _, line := range path.Lines {
					drawn += line.length()
					for _, p := range line.Points {
						if off := distanceTo(scaled[0], p); len(scaled) == 1 && off > 0.01 {
							t.Errorf("%s: lane %d is drawn %.3f mm beside itself", c.name, lane.N, off)
						}
					}
				}
			}
			if drawn > whole+0.01 {
				t.Errorf("%s: %.2f mm of lane %d are drawn, it has %.2f", c.name, drawn, lane.N, whole)
			}
		}
	}
}

// A lane of a lawn with room has an arrow, and it points the way it is walked.
func TestArrowsPointTheWay(t *testing.T) {
	c := laneSites["lanes-island"].draw(t, "island", Paper{})
	v := viewOf(t, c.draft)
	for _, lane := range c.draft.subject.(laneMap).lanes.spreading() {
		line := v.inWindow([]geo.Line{lane.Line})[0]
		heads := 0
		for _, path := range pathsOf(group(c.sheet.Elements, fmt.Sprintf("lane-%d", lane.N))) {
			if path.Fill.none() || len(path.Lines[0].Points) != 4 {
				continue
			}
			heads++
			tail, tip := path.Lines[0].Points[3], path.Lines[0].Points[1]
			if wayAlong(line, tail) >= wayAlong(line, tip) {
				t.Errorf("an arrow of lane %d points back", lane.N)
			}
		}
		if heads == 0 && line.length() > 12 {
			t.Errorf("lane %d, %.0f mm long, has no arrow", lane.N, line.length())
		}
	}
}

// wayAlong is how far along a line its nearest point to another lies.
func wayAlong(line Line, q Point) float64 {
	best, way := math.Inf(1), 0.0
	for w := 0.0; w < line.length(); w += 0.05 {
		p := line.at(w)
		if d := squaredDistance(q, p, p); d < best {
			best, way = d, w
		}
	}
	return way
}

// Laps, fill lanes and ways stay apart without colour: by dashes and weight.
func TestLanePensDiffer(t *testing.T) {
	line := []Line{{Points: []Point{{0, 0}, {10, 0}}}}
	seen := map[string]string{}
	for name, pen := range map[string]func([]Line) []Element{"header": headerPen, "fill": fillPen, "travel": travelPen, "outline": outlinePen, "zone": paleZoneEdge} {
		drawn := pen(line)
		path := drawn[len(drawn)-1].(Path)
		key := fmt.Sprint(path.Dash)
		if other, same := seen[key]; same {
			t.Errorf("%s and %s are dashed alike", name, other)
		}
		seen[key] = name
		if path.Weight < 0.5*mmPerPoint {
			t.Errorf("%s is %.2f mm wide, under half a point", name, path.Weight)
		}
	}
}

// What stands in the plan stands on the sheet: ground, setting, refills, the
// deflector and each lane.
func TestLaneSheetTellsThePlan(t *testing.T) {
	c := laneSites["lanes-three"].draw(t, "three", A3)
	l := c.draft.subject.(laneMap).lanes
	text := strings.Join(strings.Fields(tool(t, written(t, writePDF, c.sheet), "pdftotext", "-raw", "FILE", "-")), " ")
	f := c.draft.figures
	wanted := []string{
		"Spread lanes", "Three lawns", "6.6 ft: the rate once", fmt.Sprintf("%.0f %% of the rate", 100*l.sum.SettingShare),
		f.lengthText(l.sum.SpreadLengthM) + " spreading", "min at 3.0 mph", "before lane", "one filling serves", "right, down on lane",
		"Header lap", "Fill lane", "Way without spreading", "Gate, way in", "The label is the law",
	}
	for _, lane := range l.spreading() {
		wanted = append(wanted, fmt.Sprintf("%d %s %s", lane.N, l.letter(lane.Zone), wayWord(lane)))
	}
	for _, words := range wanted {
		if !strings.Contains(text, words) {
			t.Errorf("%q is not found in\n%s", words, text)
		}
	}
	for _, words := range []string{"Not this time", "no way"} {
		if strings.Contains(text, words) {
			t.Errorf("%q is found", words)
		}
	}
}

// With a product the sheet tells how much is needed, and what of it is left
// after each lane.
func TestLaneSheetTellsTheProduct(t *testing.T) {
	p, m := surveyed(t, threeLawns().geoJSON(t), "three")
	w := spreadWork(t, 2.5, lanes.Single)
	w.Units = zones.US
	w.Load = &lanes.Load{Step: "spring-feed", Material: "feed 25-0-10", Rate: material.Rate{By: material.Weight, PerM2: 0.01}}
	d, err := laneDrawing(t, w)(p, m, MapOptions{Paper: A3})
	if err != nil {
		t.Fatal(err)
	}
	l := d.subject.(laneMap).lanes
	table := l.laneTable(200)
	const pound = 0.45359237 // kg
	for i, lane := range l.spreading() {
		if want := fmt.Sprintf("%.1f", 0.01*lane.Left/pound); table.rows[i][4] != want {
			t.Errorf("after lane %d %q is left, want %q", lane.N, table.rows[i][4], want)
		}
	}
	told := fmt.Sprint(table.columns[4].head, l.workTable().rows)
	needed := 0.01 * (l.sum.GroundM2 + l.sum.ByHandM2) / pound
	for _, words := range []string{"Left lb", "spring-feed", "feed 25-0-10", fmt.Sprintf("%.1f lb at ", needed)} {
		if !strings.Contains(told, words) {
			t.Errorf("%q is not found in %s", words, told)
		}
	}
}

func TestLaneTableIsShortened(t *testing.T) {
	c := laneSites["lanes-orchard-house"].draw(t, "orchard", Paper{})
	l := c.draft.subject.(laneMap).lanes
	count := l.sum.Lanes
	for _, rows := range []int{0, 4, 7, 20, count, 200} {
		table := l.laneTable(rows)
		if n := len(table.rows); n > max(4, rows) || rows >= count && n != count {
			t.Errorf("%d lanes in %d rows, where %d had room", count, n, rows)
		}
		last := table.rows[len(table.rows)-1]
		if !strings.HasSuffix(last[0], strconv.Itoa(count)) {
			t.Errorf("the last row is %q", last)
		}
	}
}

func TestLaneList(t *testing.T) {
	for _, tt := range []struct {
		numbers []int
		want    string
	}{
		{[]int{4}, "lane 4"}, {[]int{1, 2}, "lanes 1 to 2"}, {[]int{1, 2, 3, 7, 9, 10}, "lanes 1 to 3, 7, 9 to 10"},
		{[]int{1, 3, 5, 7, 9, 11, 13}, "7 lanes"},
	} {
		if got := laneList(tt.numbers); got != tt.want {
			t.Errorf("%v: %q, want %q", tt.numbers, got, tt.want)
		}
	}
}

func TestNothingToWalk(t *testing.T) {
	s := paddock()
	s.area("zone", "all", "All", oblong(-5, -5, 80, 50), "apply", false)
	p, m := surveyed(t, s.geoJSON(t), "paddock")
	if _, err := laneDrawing(t, spreadWork(t, 3, lanes.Single))(p, m, MapOptions{}); err == nil || !strings.Contains(err.Error(), "no ground to walk") {
		t.Errorf("error %v", err)
	}
}

// Zones that are not treated this time are shown so, and told.
func TestZonesNotTreatedAreTold(t *testing.T) {
	p, m := surveyed(t, uShape().geoJSON(t), "u")
	w := spreadWork(t, 2.5, lanes.Single)
	yard, err := lanes.YardOf(p, w.Practice)
	if err != nil {
		t.Fatal(err)
	}
	only := slices.IndexFunc(yard.Plots[0].Zones, func(z zones.Zone) bool { return z.Name == "West" })
	west := yard.Plots[0].Zones[only]
	yard.Plots = []lanes.Plot{{Zones: []zones.Zone{west}, Turf: west.Region}}
	plan, err := lanes.Lay(yard, w)
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := LaneSheets(p, m, plan, plan.Summary(plan.Coverage(yard)), MapOptions{})
	if err != nil {
		t.Fatal(err)
	}
	var cells []string
	for _, text := range textsOf(group(sheets[0].Elements, "tables")) {
		cells = append(cells, text.String)
	}
	if told := strings.Join(cells, " "); !strings.Contains(told, "Not this time") || !strings.Contains(told, "Not treated this time") {
		t.Errorf("told %s", told)
	}
	if len(pathsOf(group(sheets[0].Elements, "other-turf"))) == 0 {
		t.Error("the other zone is not drawn apart")
	}
}

func TestLaneSheetsAreValid(t *testing.T) {
	for _, name := range laneNames() {
		c := laneSites[name].draw(t, name, Paper{})
		checkFiles(t, name, c.sheet)
	}
}

func BenchmarkLaneSheet(b *testing.B) {
	p, m := surveyed(b, mill().geoJSON(b), "mill")
	draw := laneDrawing(b, spreadWork(b, 2.5, lanes.Tight))
	for b.Loop() {
		d, err := draw(p, m, MapOptions{})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := d.sheet(); err != nil {
			b.Fatal(err)
		}
	}
}
