package render

import (
	"flag"
	"os"
	"path/filepath"
	"testing"
)

var specimenDir = flag.String("specimen", "", "write the specimen sheet into this folder, to be looked at")

// The specimen is an invented yard of 46 x 34 m at 1 in = 20 ft.
const specimenScale Scale = 240

// yard returns an area given in metres from the lower left of the yard.
func yard(corners ...Point) polygon {
	placed := make(ring, len(corners))
	for i, p := range corners {
		placed[i] = yardPoint(p.X, p.Y)
	}
	return polygon{placed}
}

func yardPoint(x, y float64) Point {
	return Point{16 + specimenScale.MM(x), 32 + specimenScale.MM(y)}
}

func area(id, title string, p polygon, t pattern, ink Ink) Group {
	return Group{ID: id, Title: title, Elements: []Element{
		Path{Lines: p.lines(), Fill: ink.tint(0.14)},
		t.fill(p, ink.shade(0.7).tint(0.75)),
		Path{Lines: p.lines(), Stroke: ink.shade(0.5), Weight: mediumLine},
	}}
}

func specimen() *Sheet {
	s := NewSheet("site", "Specimen yard & <plan>", Letter.landscape())
	s.Subject = "An invented yard with a house, a drive, beds and a pond."
	turf := yard(Point{0, 0}, Point{46, 0}, Point{46, 34}, Point{0, 34})
	house := ring(yard(Point{16, 12}, Point{16, 24}, Point{22, 24}, Point{22, 22}, Point{31, 22}, Point{31, 12})[0])
	turf = append(turf, house)
	s.Add(
		area("turf", "Turf", turf, tufts, bluishGreen),
		area("house", "House", yard(Point{16, 12}, Point{31, 12}, Point{31, 22}, Point{22, 22}, Point{22, 24}, Point{16, 24}), hatch, black),
		area("drive", "Drive", yard(Point{24, 0}, Point{30, 0}, Point{30, 12}, Point{24, 12}), stipple, grey),
		area("walk", "Walk", yard(Point{18, 0}, Point{20, 0}, Point{20, 12}, Point{18, 12}), bricks, vermillion),
		area("bed", "Bed", yard(Point{2, 26}, Point{12, 28}, Point{14, 33}, Point{1, 33}), dashes, orange),
		area("pond", "Pond", disc(yardPoint(38, 26), specimenScale.MM(4.5)), waves, blue),
		area("gravel", "Gravel", yard(Point{34, 2}, Point{44, 2}, Point{44, 8}, Point{34, 8}), chips, grey),
		area("rough", "Rough", yard(Point{1, 1}, Point{8, 1}, Point{8, 10}, Point{1, 10}), crossHatch, reddishPurple),
		area("synthetic", "Synthetic", yard(Point{34, 10}, Point{44, 10}, Point{44, 16}, Point{34, 16}), backHatch, skyBlue),
		tree(yardPoint(8, 18), specimenScale.MM(7), broadLeaf),
		tree(yardPoint(28, 28), specimenScale.MM(4), needleLeaf),
		tree(yardPoint(12, 14), specimenScale.MM(2.5), broadLeaf),
		Path{Lines: []Line{{Points: []Point{yardPoint(2, 12), yardPoint(14, 12), yardPoint(14, 2)}}}, Stroke: black, Weight: mediumLine, Dash: []float64{3, 1.5}},
		gateSign(yardPoint(46, 20), 5), hazardSign(yardPoint(20, 28), 5), startSign(yardPoint(33, 24), 5), refillSign(yardPoint(27, 2), 5),
	)
	at, _ := pole(turf, 0.1)
	s.Add(
		Text{At: at, String: "A", Face: Bold, Size: 16, Ink: black, Anchor: Middle, Halo: 0.8, Clear: bluishGreen.tint(0.14)},
		Text{At: at.plus(0, -4.5), String: "Front lawn 9,870 ft² ± 120", Face: Medium, Size: 9, Ink: black, Anchor: Middle, Halo: 0.6, Clear: bluishGreen.tint(0.14)},
		Text{At: yardPoint(38, 26), String: "office field fi fl", Face: Italic, Size: 9, Ink: blue.readableOn(blue.tint(0.14)), Anchor: Middle, Halo: 0.5, Clear: blue.tint(0.14)},
		Text{At: yardPoint(15.5, 13), String: "Línea Øst Газон", Size: 9, Ink: black, Turn: 90},
		Text{At: yardPoint(23, 19), String: isolated("חצר 12"), Size: 9, Ink: black, Anchor: Middle, Halo: 0.5},
		Text{At: yardPoint(23, 16), String: isolated("الحديقة 3") + ", 120 ft²", Face: Bold, Size: 9, Ink: black, Anchor: Middle, Halo: 0.5},
		northArrow(Point{255, 185}, 16, 0),
		scaleBar(Point{16, 14}, specimenScale, 90),
		Text{At: Point{110, 18}, String: specimenScale.String(), Face: Medium, Size: 9, Ink: black},
	)
	column, _ := stack(Point{219, 178}, 50, 4,
		paragraph{text: "Specimen yard", face: Bold, size: 14, ink: black},
		paragraph{text: "An invented place for looking at lines, patterns and letters: 0O 1lI.", size: 9, ink: grey},
		table{
			columns: []column{{head: "Zone"}, {head: "What it is", wrap: true}, {head: "ft²", anchor: End}},
			rows:    [][]string{{"A", "Front lawn, full sun", "9,870"}, {"B", "Side strip between the walk and the drive", "410"}, {"C", "Bed", "1,120"}},
			totals:  [][]string{{"", "Turf", "10,280"}},
			size:    9,
		})
	s.Add(column...)
	s.Add(Path{Lines: rect{Point{8, 8}, Point{271.4, 207.9}}.polygon().lines(), Stroke: black, Weight: heavyLine})
	return s
}

func TestSpecimenIsWritten(t *testing.T) {
	for name, write := range writers {
		data, err := write(specimen())
		if err != nil || len(data) < 1000 {
			t.Fatalf("%s: %d bytes, %v", name, len(data), err)
		}
		if *specimenDir != "" {
			if err := os.WriteFile(filepath.Join(*specimenDir, "specimen."+name), data, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// writers gives each writer by the ending of its files.
var writers = map[string]func(*Sheet) ([]byte, error){
	"svg": SVG,
	"pdf": func(s *Sheet) ([]byte, error) { return PDF(s) },
	"png": func(s *Sheet) ([]byte, error) { return PNG(s, ScreenDPI) },
}
