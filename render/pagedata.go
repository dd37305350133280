package render

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"example.org/turfplat/zones"
)

// pageData is what the scripts of a page know. Lengths on the map are in
// millimetres of the drawing, from its upper left corner.
type pageData struct {
	Site     string      `json:"site"`
	Revision int         `json:"revision"`
	Width    float64     `json:"width"`
	Height   float64     `json:"height"`
	Metres   float64     `json:"metres"` // on the ground to a millimetre
	Feet     bool        `json:"feet"`
	Zones    []dataZone  `json:"zones"`
	Sections []dataPart  `json:"sections"`
	Corners  dataCorners `json:"corners"`
}

// A dataZone is what is told of a zone.
type dataZone struct {
	Letter string      `json:"letter"`
	Name   string      `json:"name"`
	Group  string      `json:"group"`
	Facts  [][2]string `json:"facts"` // head and text
}

// A dataPart is a section with what each zone gets in it.
type dataPart struct {
	ID      string                 `json:"id"`
	Title   string                 `json:"title"`
	Group   string                 `json:"group"`            // first part of the ids of its groups
	Mark    string                 `json:"mark"`             // changes when what is to be ticked does
	Sun     bool                   `json:"sun,omitempty"`    // shows the hours
	Amounts map[string][][2]string `json:"amounts,omitzero"` // head and figure, by letter
}

// dataCorners tell where places stand on the map: x and y of the corners of a
// field of longitudes and latitudes, which between them follow from both
// (bilinear). On a site of a kilometre that is good to 5 cm.
type dataCorners struct {
	West  float64       `json:"west"`
	South float64       `json:"south"`
	East  float64       `json:"east"`
	North float64       `json:"north"`
	At    [4][2]float64 `json:"at"` // south-west, south-east, north-west, north-east
}

func (w *webPage) data(s *Sheet, v view) pageData {
	t := w.told
	data := pageData{
		Site: t.measured.ID, Revision: t.measured.Revision, Width: s.Width, Height: s.Height,
		Metres: v.scale.metres(1), Feet: !t.figures.Metric(), Corners: cornersOf(s.ground, s.Height),
	}
	for i, z := range t.measured.Zones {
		data.Zones = append(data.Zones, dataZone{z.Letter, t.letters.of(z.Name), "map-" + zoneGroup(i), t.zoneFacts(z)})
	}
	for i, p := range w.sections {
		data.Sections = append(data.Sections, dataPart{p.ID, p.Title, "map-" + sectionGroup(i), p.mark(), p.sun != nil, p.amounts})
	}
	return data
}

// mark is a short digest of what a section tells.
func (s pageSection) mark() string {
	text, err := json.Marshal([]any{s.Ticks, s.Blocks})
	if err != nil { // it is all texts
		panic("render: " + err.Error())
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:6])
}

// zoneFacts are what is known of a zone.
func (d *draft) zoneFacts(z zones.ZoneMeasure) [][2]string {
	facts := [][2]string{{"Area", d.figures.areaInWords(z.AreaM2, z.CI95M2)}}
	add := func(head, text string) {
		if text != "" {
			facts = append(facts, [2]string{head, text})
		}
	}
	add("Grass", d.letters.of(z.Species))
	add("Sun", exposures[z.Exposure])
	if z.SunHours != nil {
		add("Direct sun", hoursText(*z.SunHours)+" h a day")
	}
	if z.Apply {
		add("For its grass", z.SunFit)
	}
	if z.SlopePercent > 0 {
		add("Slope", fmt.Sprintf("%.0f\u00a0%%", z.SlopePercent))
	}
	if z.Watered {
		add("Water", "irrigated")
	}
	if !z.Apply {
		add("Mind", noApplication)
	}
	return facts
}

// cornersOf places the corners of the field that the window of a map spans.
func cornersOf(g *ground, height float64) dataCorners {
	middle := g.frame.Center().Lon()
	var box orb.Bound
	for i, p := range g.window.polygon()[0] {
		place := g.place(p)
		place[0] = middle + math.Remainder(place[0]-middle, 360) // one side of the date line
		if i == 0 {
			box = place.Bound()
		}
		box = box.Extend(place)
	}
	c := dataCorners{West: box.Min.Lon(), South: box.Min.Lat(), East: box.Max.Lon(), North: box.Max.Lat()}
	for i, place := range []orb.Point{{c.West, c.South}, {c.East, c.South}, {c.West, c.North}, {c.East, c.North}} {
		p := g.at(place)
		c.At[i] = [2]float64{p.X, height - p.Y}
	}
	return c
}

// at is the point of the sheet at which a place stands, undoing Place.
func (g *ground) at(place orb.Point) Point { return g.view.at(g.frame.XY(place)) }
