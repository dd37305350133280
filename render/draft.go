package render

import (
	"slices"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// A draft is a sheet of a property while it is drawn: a map in its frame, with
// tables beside it.
type draft struct {
	subject  subject
	plat     *zones.Plat
	measured zones.Measurement
	options  MapOptions

	figures figures
	letters *lettering
	tally   tally
	extent  geo.Bounds // of the ground to be shown
	upright lie        // of that ground, north up
	turned  []lie
	site    geo.Region
	near    geo.Region                   // the site and what is close to it
	uncut   map[*zones.Object][]geo.Line // of cutlines, what parts no zones

	laid   arrangement // as the sheet was last laid out
	lie    lie         // on that sheet
	labels board
	part   string // of the site on it, to follow its name; none is the whole
	joined bool   // with sheets that show parts of the site

	joinWords  []plate     // of match lines
	placed     placedSigns // on the map
	lifted     bool        // they make room for labels of zones
	lacking    string      // which letters are drawn as a stand-in
	short      []plate     // taken by short lanes, until a zone finds no room for its letter
	unlabelled []string    // letters of zones for which there was no room
}

// A subject is what one sheet of a property shows and tells.
type subject interface {
	name() (id, title string)
	titleBlock(Paper, Scale) titleBlock
	inWords() string                  // for people who cannot see it
	ground(v view) ([]Element, error) // all that the window shows, bottom first
	blocks(level detail) []block      // tables and the key, in the order in which they are read
	objectRows() int                  // how many rows it takes to list every object
	levels() []detail                 // how much may be told, the most first
	method() string                   // how the figures came about
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
	d := &draft{plat: p, measured: m, options: o, figures: figures{zones.Figures{Units: o.Units}}, letters: &lettering{}}
	d.site = site
	d.show(shells(site))
	if d.near, err = site.Buffer(closeBy); err != nil {
		return nil, err
	}
	if err := d.findUncut(); err != nil {
		return nil, err
	}
	if d.tally, err = tallyOf(p, d.letters); err != nil {
		return nil, err
	}
	around := d.extent.Grown(max(d.extent.Width(), d.extent.Height()))
	d.lacking = lacking(p.Site, p.Zones, func(o *zones.Object) bool { return o.Ground.Empty() || o.Ground.Bounds().Meets(around) })
	return d, nil
}

// show says which places the sheet is to show.
func (d *draft) show(places geo.Ring) {
	hull := geo.Hull(places)
	d.upright, d.turned = lieOf(hull, 0), turnedLies(hull)
	d.extent = d.upright.extent
}

// shells are the corners of a region's outer rings.
func shells(r geo.Region) geo.Ring {
	var corners geo.Ring
	for _, polygon := range r.Polygons() {
		corners = append(corners, polygon.Shell...)
	}
	return corners
}

// again is a draft of another sheet of the same property.
func (d *draft) again() *draft {
	other := *d
	other.subject, other.labels, other.laid, other.part, other.joined = nil, board{}, arrangement{}, "", false
	return &other
}

// sheet draws all of the site on one sheet, however small.
func (d *draft) sheet() (*Sheet, error) {
	a, err := d.arrange()
	if err != nil {
		return nil, err
	}
	return d.whole(a)
}

// whole draws the site in an arrangement.
func (d *draft) whole(a arrangement) (*Sheet, error) {
	d.laid = a
	v, err := a.view()
	if err != nil {
		return nil, err
	}
	return d.draw(page{arrangement: a, view: v, blocks: d.blocks(a.detail)})
}

// A page is what a sheet is to show.
type page struct {
	arrangement
	view   view
	words  string // of the sheet among others
	blocks []block
	joins  func() []Element // match lines, which are given their place before the ground; nil if there are none
}

func (d *draft) draw(p page) (*Sheet, error) {
	d.lie, d.labels = p.lie, board{}
	d.joinWords, d.placed, d.lifted, d.unlabelled = nil, nil, false, nil
	var joins []Element
	if p.joins != nil {
		joins = p.joins()
	}
	drawn, err := d.subject.ground(p.view)
	if err != nil {
		return nil, err
	}
	title, _ := d.title(p.arrangement).set(Point{p.title.min.X, p.title.max.Y}, p.title.width())
	foot, _ := d.footing(Point{p.foot.min.X, p.foot.max.Y}, p.foot.width())

	id, name := d.subject.name()
	s := NewSheet(id, d.letters.of(d.measured.Name)+", "+strings.ToLower(name)+d.part, p.paper)
	s.Name, s.Site = name+d.part, d.letters.of(d.measured.Name)
	s.Subject = d.subject.inWords() + p.words
	s.Scale = p.scale
	s.ground = &ground{p.window, p.view, d.plat.Site.Frame}
	s.Add(Group{ID: "title-block", Title: "Title block", Elements: title}) // in the order in which a sheet is read
	s.Add(withMatchLines(drawn, joins)...)
	s.Add(
		Group{ID: "scale", Title: "Scale and north", Elements: d.scaleStrip(p.arrangement)},
		Group{ID: "frame", Title: "Frame of the map", Elements: []Element{
			Path{Lines: p.window.polygon().lines(), Stroke: black, Weight: heavyLine}}},
		Group{ID: "tables", Title: "Tables and key", Elements: d.panel(p)},
	)
	s.Add(foot...)
	s.Missing, s.Unlabelled = d.letters.missing, d.unlabelled
	if d.options.Mono {
		s.Elements = monochrome(s.Elements)
	}
	return s, nil
}

// title is the block of the subject with the part that the sheet shows.
func (d *draft) title(a arrangement) titleBlock {
	block := d.subject.titleBlock(a.paper, a.scale)
	block.title += d.part
	return block
}

// view shows the whole site.
func (a arrangement) view() (view, error) {
	e := a.lie.extent
	return newView(a.window, a.scale, a.lie, geo.XY{X: (e.Min.X + e.Max.X) / 2, Y: (e.Min.Y + e.Max.Y) / 2})
}

// panel sets the tables and the key, as even as can be, and gives the largest
// room they leave to notes.
func (d *draft) panel(a page) []Element {
	elements, left := evenFlow(a.columns, blockGap, a.blocks)
	return append(elements, roomToWrite(a.columns, left)...)
}

// roomToWrite gives the largest room that tables leave in columns to notes.
func roomToWrite(columns []rect, left []float64) []Element {
	roomiest := slices.Index(left, slices.Max(left))
	room := columns[roomiest]
	if left[roomiest] < room.height() {
		room.max.Y = room.min.Y + left[roomiest] - blockGap
	}
	if room.height() < leastNotes {
		return nil
	}
	notes, _ := notes{room.height()}.set(Point{room.min.X, room.max.Y}, room.width())
	return []Element{Group{ID: "notes", Title: "Room for notes", Elements: notes}}
}

// scaleStrip has the scale bar on the left, the scale in words, and the north
// arrow on the right.
func (d *draft) scaleStrip(a arrangement) []Element {
	const longestBar, arrow, arrowRoom, gap = 90.0, 11.5, 14.0, 4.0
	box := a.strip
	middle, foot := Point{box.max.X - arrowRoom/2, box.min.Y + 1.2 + arrow/2}, Point{0, -arrow / 2}.turned(a.lie.turn)
	right := Point{box.max.X - arrowRoom, box.center().Y}
	words := Text{At: right.plus(0, 2.8), String: a.scale.String(), Face: Medium, Size: mapSize, Ink: black, Anchor: End}
	paper := Text{At: right.plus(0, -1.1), String: "true on " + capitalized(a.paper.Name) + " paper", Size: mapSize, Ink: grey, Anchor: End}
	print := Text{At: right.plus(0, -5), String: "printed at 100 %", Size: mapSize, Ink: grey, Anchor: End}
	room := box.width() - arrowRoom - max(words.width(), paper.width(), print.width()) - gap
	return []Element{
		Path{Lines: box.polygon().lines(), Fill: white, Stroke: black, Weight: thinLine},
		scaleBar(box.min.plus(1, (box.height()-scaleBarHeight)/2-0.3), a.scale, min(longestBar, room)),
		words, paper, print,
		northArrow(middle.plus(foot.X, foot.Y), arrow, a.lie.turn),
	}
}
