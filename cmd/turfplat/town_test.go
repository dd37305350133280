package main

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"strings"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// A town is invented: blocks of twenty lots of 20 by 40 m between streets,
// each lot with some of what people have on one. The same seed builds the same
// town. Its metres count from the corner of the first block.
type town struct {
	*rand.Rand
	frame geo.Frame
	lots  []geo.XY // south-western corners

	nodes, ways bytes.Buffer // as they stand in the file
	node, way   int
}

const (
	lotWidth, lotDepth     = 20.0, 40.0
	blockWidth, blockDepth = 10*lotWidth + 20, 2*lotDepth + 20
	blocksInRow            = 25
)

// writeTown writes a town of so many lots as OSM XML, and returns its lots.
func writeTown(osm io.Writer, lots int) (*town, error) {
	t := &town{Rand: rand.New(rand.NewPCG(20261125, 1)), frame: geo.NewFrame(orb.Point{-93.1, 44.95})}
	for i := range lots {
		block, in := i/20, i%20
		corner := geo.XY{X: float64(block%blocksInRow) * blockWidth, Y: float64(block/blocksInRow) * blockDepth}
		if in == 0 {
			t.streets(corner)
		}
		north := in >= 10
		lot := geo.XY{X: corner.X + float64(in%10)*lotWidth, Y: corner.Y}
		if north {
			lot.Y += lotDepth
		}
		t.lots = append(t.lots, lot)
		t.furnish(func(x, y float64) geo.XY {
			if north { // its street lies to the north
				y = lotDepth - y
			}
			return geo.XY{X: lot.X + x, Y: lot.Y + y}
		})
	}
	_, err := fmt.Fprintf(osm, "<osm version=\"0.6\">\n%s%s</osm>\n", &t.nodes, &t.ways)
	return t, err
}

// streets lays the streets south and west of a block.
func (t *town) streets(at geo.XY) {
	to := func(x, y float64) geo.XY { return geo.XY{X: at.X + x, Y: at.Y + y} }
	t.line("highway=residential", to(-10, -10), to(100, -10), to(210, -10))
	t.line("highway=footway footway=sidewalk", to(-3, -3), to(50, -3), to(150, -3), to(203, -3))
	t.line("highway=residential", to(-10, -10), to(-10, 40), to(-10, 90))
	for range 6 {
		t.point("natural=tree", to(t.between(0, 200), -5))
	}
}

// furnish puts things on a lot; at gives places by metres from its south-western
// corner, the street being south.
func (t *town) furnish(at func(x, y float64) geo.XY) {
	x, y := t.between(3, 6), t.between(8, 12)
	t.box("building=house building:levels=2", at, x, y, x+t.between(8, 11), y+t.between(7, 10))
	t.line("highway=service service=driveway", at(17.5, -10), at(17.5, y+3))
	t.some(0.5, func() { t.box("building=shed", at, 15, 33, 18, 36) })
	t.some(0.8, func() { t.box("landuse=grass", at, 1, 22, 19, 39) })
	t.some(0.3, func() { t.box("leisure=swimming_pool", at, 5, 25, 10, 29) })
	t.some(0.4, func() { t.line("barrier=fence", at(0, 20), at(0, 40), at(20, 40)) })
	t.some(0.3, func() { t.line("barrier=hedge", at(1, 1), at(15, 1)) })
	t.some(0.4, func() { t.line("highway=footway width=1", at(x+4, 0), at(x+4, y)) })
	t.point("natural=tree", at(t.between(2, 18), t.between(22, 38)))
}

func (t *town) between(least, most float64) float64 { return least + t.Float64()*(most-least) }

func (t *town) some(share float64, do func()) {
	if t.Float64() < share {
		do()
	}
}

func (t *town) box(tags string, at func(x, y float64) geo.XY, west, south, east, north float64) {
	corner := at(west, south)
	t.line(tags, corner, at(east, south), at(east, north), at(west, north), corner)
}

func (t *town) point(tags string, at geo.XY) { t.place(tags, at) }

// line draws a way, closed if it ends where it starts.
func (t *town) line(tags string, at ...geo.XY) {
	t.way++
	fmt.Fprintf(&t.ways, "<way id=\"%d\">", t.way)
	first := t.node + 1
	for i, p := range at {
		ref := first
		if i == 0 || p != at[0] {
			ref = t.place("", p)
		}
		fmt.Fprintf(&t.ways, "<nd ref=\"%d\"/>", ref)
	}
	fmt.Fprintf(&t.ways, "%s</way>\n", tagged(tags))
}

func (t *town) place(tags string, at geo.XY) int {
	t.node++
	p := t.frame.Place(at)
	fmt.Fprintf(&t.nodes, "<node id=\"%d\" lat=\"%.9f\" lon=\"%.9f\">%s</node>\n", t.node, p.Lat(), p.Lon(), tagged(tags))
	return t.node
}

// tagged writes tags given as key=value, separated by spaces.
func tagged(tags string) string {
	var text string
	for _, tag := range strings.Fields(tags) {
		key, value, _ := strings.Cut(tag, "=")
		text += fmt.Sprintf("<tag k=%q v=%q/>", key, value)
	}
	return text
}

// parcel is a lot as a feature with an id.
func (t *town) parcel(i int) string {
	lot := t.lots[i]
	corners := geo.Ring{lot, {X: lot.X + lotWidth, Y: lot.Y}, {X: lot.X + lotWidth, Y: lot.Y + lotDepth}, {X: lot.X, Y: lot.Y + lotDepth}}
	var ring []string
	for _, p := range append(corners, lot) {
		place := t.frame.Place(p)
		ring = append(ring, fmt.Sprintf("[%.9f,%.9f]", place.Lon(), place.Lat()))
	}
	return fmt.Sprintf(`{"type":"Feature","properties":{"id":"lot-%d"},"geometry":{"type":"Polygon","coordinates":[[%s]]}}`, i, strings.Join(ring, ","))
}
