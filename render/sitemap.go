package render

import (
	"fmt"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// MapOptions says how a site map is drawn; the zero value is what most sites
// want.
type MapOptions struct {
	Paper Paper       // none: letter, or A4 for metric units
	Scale Scale       // zero: the largest of the series of the units at which the site fits
	Units zones.Units // none: those of the site
	Mono  bool        // black, white and grey only
	Fixes bool        // the fixes from which walked edges were found
}

// SiteMap draws the map of a property with its tables on one sheet: north up,
// true to scale, every cover with a pattern of its own, every zone with its
// letter and area. Figures are rounded to what their error bears.
//
// [Sheet.Missing] tells which letters of names were replaced. A site that does
// not fit the paper at the wanted scale is an error.
func SiteMap(p *zones.Plat, m zones.Measurement, o MapOptions) (*Sheet, error) {
	d, err := newDraft(p, m, o)
	if err != nil {
		return nil, err
	}
	return d.sheet()
}

// A draft is a site map while it is drawn.
type draft struct {
	plat     *zones.Plat
	measured zones.Measurement
	options  MapOptions

	figures figures
	letters *lettering
	tally   tally
	extent  geo.Bounds // of the ground to be shown
	near    geo.Region // the site and what is close to it
	key     legend
	labels  board
}

func newDraft(p *zones.Plat, m zones.Measurement, o MapOptions) (*draft, error) {
	if o.Units == "" {
		o.Units = p.Site.Units
	}
	if o.Paper == (Paper{}) {
		o.Paper = Letter
		if o.Units == zones.Metric {
			o.Paper = A4
		}
	}
	site, err := p.Ground.Property()
	if err != nil {
		return nil, err
	}
	d := &draft{plat: p, measured: m, options: o, figures: figures{zones.Figures{Units: o.Units}}, letters: &lettering{}, extent: site.Bounds()}
	if d.near, err = site.Buffer(closeBy); err != nil {
		return nil, err
	}
	if d.tally, err = tallyOf(p, d.letters); err != nil {
		return nil, err
	}
	d.key = d.legend()
	return d, nil
}

func (d *draft) sheet() (*Sheet, error) {
	a, err := d.arrange()
	if err != nil {
		return nil, err
	}
	v, err := newView(a.window, a.scale, d.extent)
	if err != nil {
		return nil, err
	}
	ground, err := d.ground(v)
	if err != nil {
		return nil, err
	}
	panel := d.panel(a)
	title, _ := d.titleBlock(a.paper, a.scale).Set(Point{a.title.Min.X, a.title.Max.Y}, a.title.Width())
	foot, _ := d.footing(Point{a.foot.Min.X, a.foot.Max.Y}, a.foot.Width())

	s := NewSheet("site-map", d.letters.of(d.measured.Name)+", site map", a.paper)
	s.Subject = d.inWords()
	s.Scale = a.scale
	s.Add(ground...)
	s.Add(
		Group{ID: "scale", Title: "Scale and north", Elements: d.scaleStrip(a)},
		Path{Lines: a.window.Polygon().Lines(), Stroke: Black, Weight: HeavyLine},
		Group{ID: "title-block", Title: "Title block", Elements: title},
		Group{ID: "tables", Title: "Tables and key", Elements: panel},
	)
	s.Add(foot...)
	s.Missing = d.letters.missing
	if d.options.Mono {
		s.Elements = recoloured(s.Elements, Ink.grey)
	}
	return s, nil
}

// panel sets the tables and the key, as even as can be, and gives the largest
// room they leave to notes.
func (d *draft) panel(a arrangement) []Element {
	elements, left := evenFlow(a.columns, blockGap, d.blocks(a.detail))
	roomiest := slices.Index(left, slices.Max(left))
	room := a.columns[roomiest]
	if left[roomiest] < room.Height() {
		room.Max.Y = room.Min.Y + left[roomiest] - blockGap
	}
	if room.Height() < leastNotes {
		return elements
	}
	notes, _ := notes{room.Height()}.Set(Point{room.Min.X, room.Max.Y}, room.Width())
	return append(elements, Group{ID: "notes", Title: "Room for notes", Elements: notes})
}

// blocks are the tables and the key, in the order in which they are read.
func (d *draft) blocks(level detail) []Block {
	return []Block{d.turfTable(level.objects), d.zoneTable(level), d.edgeTable(), d.key}
}

// inWords describes the map to people who cannot see it.
func (d *draft) inWords() string {
	words := fmt.Sprintf("Map of %s, north up: net turf %s", d.letters.of(d.measured.Name),
		d.figures.areaInWords(d.tally.net.AreaM2, d.tally.net.CI95M2))
	if n := len(d.plat.Zones); n > 1 {
		words += fmt.Sprintf(" in %d zones", n)
	}
	return words + "."
}

// scaleStrip has the scale bar on the left, the scale in words, and the north
// arrow on the right.
func (d *draft) scaleStrip(a arrangement) []Element {
	const longestBar, arrow, arrowRoom, gap = 90.0, 11.5, 14.0, 4.0
	box := a.strip
	right := Point{box.Max.X - arrowRoom, box.center().Y}
	words := Text{At: right.plus(0, 0.6), String: a.scale.String(), Face: Medium, Size: mapSize, Ink: Black, Anchor: End}
	note := Text{At: right.plus(0, -3), String: "true on " + capitalized(a.paper.Name) + " paper, printed at 100 %", Size: footSize, Ink: Grey, Anchor: End}
	room := box.Width() - arrowRoom - max(words.Width(), note.Width()) - gap
	return []Element{
		Path{Lines: box.Polygon().Lines(), Fill: White, Stroke: Black, Weight: ThinLine},
		ScaleBar(box.Min.plus(1, (box.Height()-ScaleBarHeight)/2-0.3), a.scale, min(longestBar, room)),
		words, note,
		NorthArrow(Point{box.Max.X - arrowRoom/2, box.Min.Y + 1.2}, arrow, 0),
	}
}
