package zones

import (
	"fmt"
	"math"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

// drawing draws the parts of an invented property.
type drawing struct {
	*rapid.T
	coarse bool // on whole half metres, where edges and vertices coincide
	sketch sketch
}

func drawProperty(t *rapid.T) sketch { return drawPropertyOn(t, rapid.Bool().Draw(t, "coarse")) }

// drawPropertyOn draws a parcel with a house, a drive that ends on its wall, and
// any of the things that lie about properties.
func drawPropertyOn(t *rapid.T, coarse bool) sketch {
	d := &drawing{T: t, coarse: coarse}
	d.frame()
	wall := d.house()
	d.drive(wall)
	d.several("bed", 4, func(id string) { d.add(covering(Bed, id, d.blob(15, 1, 6))) })
	d.several("pool", 1, func(id string) { d.add(covering(Pool, id, d.blob(15, 2, 5))) })
	d.several("meadow", 1, func(id string) { d.add(covering(Rough, id, d.blob(20, 2, 8))) })
	d.several("path", 2, func(id string) {
		d.add(lineString(kind(Hardscape, id, fmt.Sprintf(`"width_m":%g`, d.size(0.5, 3))), d.way(2)...))
	})
	d.several("walk", 1, func(id string) { d.add(lineString(`"highway":"footway","id":"`+id+`"`, d.way(3)...)) })
	d.several("shrub", 3, func(id string) { at := d.at(20); d.add(pointAt(`"natural":"shrub","id":"`+id+`"`, at.X, at.Y)) })
	d.several("oak", 2, func(id string) { at := d.at(20); d.add(pointAt(kind(Tree, id), at.X, at.Y)) })
	d.several("fence", 2, func(id string) { d.add(lineString(kind(Fence, id), d.way(2)...)) })
	d.several("hedge", 1, func(id string) { d.add(lineString(kind(Hedge, id, `"width_m":1`), d.way(2)...)) })
	d.several("part", 2, func(id string) { d.add(covering(ZoneKind, id, d.blob(15, 3, 15))) })
	d.several("wet", 1, func(id string) { d.add(covering(Keepout, id, d.blob(15, 2, 6))) })
	d.several("cut", 2, func(id string) { d.cutline(id) })
	return d.sketch
}

func (d *drawing) add(it item) { d.sketch = append(d.sketch, it) }

func (d *drawing) several(name string, most int, draw func(id string)) {
	for i := range rapid.IntRange(0, most).Draw(d.T, name+"s") {
		draw(fmt.Sprintf("%s-%d", name, i))
	}
}

// frame draws an outline, or turf, or both.
func (d *drawing) frame() {
	with := rapid.IntRange(0, 3).Draw(d.T, "outline, turf or both")
	if with != 1 {
		d.add(covering(Outline, "lot", d.star(geo.XY{}, rapid.IntRange(5, 12).Draw(d.T, "corners"), 12, 30)))
	}
	if with == 1 || with == 2 {
		d.add(polygon(kind(Turf, "lawn", d.species("species")), d.star(geo.XY{}, rapid.IntRange(5, 12).Draw(d.T, "corners of the lawn"), 10, 30)))
		d.several("lawn", 2, func(id string) { d.add(polygon(kind(Turf, id, d.species("species")), d.blob(25, 3, 12))) })
	}
}

// house draws a house and returns a wall.
func (d *drawing) house() [2]geo.XY {
	at, long, deep := d.at(6), d.size(6, 14), d.size(5, 10)
	turn := 0.0
	if !d.coarse {
		turn = rapid.Float64Range(0, math.Pi).Draw(d.T, "turn")
	}
	ring := rectangle(-long/2, -deep/2, long/2, deep/2)
	sin, cos := math.Sincos(turn)
	for i, p := range ring {
		ring[i] = geo.XY{X: at.X + cos*p.X - sin*p.Y, Y: at.Y + sin*p.X + cos*p.Y}
	}
	d.add(covering(Building, "house", ring))
	return [2]geo.XY{ring[0], ring[1]}
}

// drive draws a drive from a wall to the street, as a polygon two corners of
// which lie on the wall, or as a line that ends there.
func (d *drawing) drive(wall [2]geo.XY) {
	on := func(share float64) geo.XY {
		return geo.XY{X: wall[0].X + share*(wall[1].X-wall[0].X), Y: wall[0].Y + share*(wall[1].Y-wall[0].Y)}
	}
	street := func(p geo.XY) geo.XY { // straight away from the wall, on the side where it is traced clockwise
		east, north := wall[1].X-wall[0].X, wall[1].Y-wall[0].Y
		k := 30 / math.Hypot(east, north)
		return geo.XY{X: p.X + k*north, Y: p.Y - k*east}
	}
	if rapid.Bool().Draw(d.T, "drive as a line") {
		d.add(lineString(kind(Hardscape, "drive", `"width_ft":10`, `"source":"default_width"`), on(0.5), street(on(0.5))))
		return
	}
	d.add(covering(Hardscape, "drive", geo.Ring{on(0.25), street(on(0.25)), street(on(0.75)), on(0.75)}))
}

// cutline draws a line right through the property, with a bend.
func (d *drawing) cutline(id string) {
	turn := rapid.Float64Range(0, 2*math.Pi).Draw(d.T, "bearing of the cutline")
	sin, cos := math.Sincos(turn)
	bend := d.at(8)
	d.add(lineString(kind(Cutline, id, d.species("species_north")), geo.XY{X: 35 * cos, Y: 35 * sin}, bend, geo.XY{X: -35 * cos, Y: -35 * sin}))
}

// species draws a grass that an object states, often none.
func (d *drawing) species(word string) string {
	return fmt.Sprintf("%q:%q", word, rapid.SampledFrom([]string{"", "", "tall fescue", "bermuda"}).Draw(d.T, word))
}

// way draws a line of n positions, each a few metres on from the one before.
func (d *drawing) way(n int) []geo.XY {
	way := []geo.XY{d.at(20)}
	for range n - 1 {
		last, step := way[len(way)-1], d.at(15)
		way = append(way, geo.XY{X: last.X + step.X, Y: last.Y + math.Copysign(1+math.Abs(step.Y), step.Y)})
	}
	return way
}

// at draws a position within reach of the middle.
func (d *drawing) at(reach float64) geo.XY {
	return geo.XY{X: d.size(-reach, reach), Y: d.size(-reach, reach)}
}

func (d *drawing) size(least, most float64) float64 {
	if d.coarse {
		return float64(rapid.IntRange(int(math.Ceil(2*least)), int(2*most)).Draw(d.T, "half metres")) / 2
	}
	return rapid.Float64Range(least, most).Draw(d.T, "metres")
}

// blob draws a ring of least to most metres' radius within reach of the middle.
func (d *drawing) blob(reach, least, most float64) geo.Ring {
	return d.star(d.at(reach), rapid.IntRange(3, 9).Draw(d.T, "corners"), least, most)
}

// star draws a ring that does not cross itself: corners in all directions from
// a middle.
func (d *drawing) star(middle geo.XY, corners int, least, most float64) geo.Ring {
	if d.coarse {
		w, h := d.size(least, most), d.size(least, most)
		return rectangle(middle.X-w, middle.Y-h, middle.X+w, middle.Y+h)
	}
	r := regular(corners, 0, 0, 1)
	for i, p := range r {
		k := d.size(least, most)
		r[i] = geo.XY{X: middle.X + k*p.X, Y: middle.Y + k*p.Y}
	}
	return r
}

// scrawl draws an object of any kind from any positions, so that rings cross
// themselves and edges run along each other.
func (d *drawing) scrawl(i int) {
	id := fmt.Sprint(i)
	var l []geo.XY
	for range rapid.IntRange(3, 9).Draw(d.T, "positions") {
		l = append(l, d.at(8))
	}
	if rapid.IntRange(0, 3).Draw(d.T, "line") == 0 {
		k := rapid.SampledFrom([]Kind{Hardscape, Water, Hedge, Fence, Cutline}).Draw(d.T, "kind of the line")
		d.add(lineString(kind(k, id, fmt.Sprintf(`"width_m":%g`, d.size(0.5, 20))), l...))
		return
	}
	k := rapid.SampledFrom([]Kind{Outline, Outline, Turf, Turf, Bed, Building, Rough, ZoneKind, Keepout}).Draw(d.T, "kind of the ring")
	d.add(polygon(kind(k, id), l))
}
