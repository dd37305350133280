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
	near    geo.Region // the site and what is close to it

	laid   arrangement // as the sheet was last laid out
	lie    lie         // on that sheet
	labels board
}

// A subject is what one sheet of a property shows and tells.
type subject interface {
	name() (id, title string)
	titleBlock(Paper, Scale) titleBlock
	inWords() string                  // for people who cannot see it
	ground(v view) ([]Element, error) // all that the window shows, bottom first
	blocks(level detail) []Block      // tables and the key, in the order in which they are read
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
	d := &draft{plat: p, measured: m, options: o, figures: figures{zones.Figures{Units: o.Units}}, letters: &lettering{}, extent: site.Bounds()}
	hull := hullOf(site)
	d.upright, d.turned = lieOf(hull, 0), turnedLies(hull)
	if d.near, err = site.Buffer(closeBy); err != nil {
		return nil, err
	}
	if d.tally, err = tallyOf(p, d.letters); err != nil {
		return nil, err
	}
	return d, nil
}

func (d *draft) sheet() (*Sheet, error) {
	a, err := d.arrange()
	if err != nil {
		return nil, err
	}
	d.laid = a
	v, err := a.view()
	if err != nil {
		return nil, err
	}
	d.lie, d.labels = a.lie, board{}
	ground, err := d.subject.ground(v)
	if err != nil {
		return nil, err
	}
	panel := d.panel(a)
	title, _ := d.subject.titleBlock(a.paper, a.scale).Set(Point{a.title.Min.X, a.title.Max.Y}, a.title.Width())
	foot, _ := d.footing(Point{a.foot.Min.X, a.foot.Max.Y}, a.foot.Width())

	id, name := d.subject.name()
	s := NewSheet(id, d.letters.of(d.measured.Name)+", "+strings.ToLower(name), a.paper)
	s.Name, s.Site = name, d.letters.of(d.measured.Name)
	s.Subject = d.subject.inWords()
	s.Scale = a.scale
	s.Ground = &Ground{a.window, v, d.plat.Site.Frame}
	s.Add(Group{ID: "title-block", Title: "Title block", Elements: title}) // in the order in which a sheet is read
	s.Add(ground...)
	s.Add(
		Group{ID: "scale", Title: "Scale and north", Elements: d.scaleStrip(a)},
		Path{Lines: a.window.Polygon().Lines(), Stroke: Black, Weight: HeavyLine},
		Group{ID: "tables", Title: "Tables and key", Elements: panel},
	)
	s.Add(foot...)
	s.Missing = d.letters.missing
	if d.options.Mono {
		s.Elements = recoloured(s.Elements, Ink.grey)
	}
	return s, nil
}

// view shows the whole site.
func (a arrangement) view() (view, error) {
	e := a.lie.extent
	return newView(a.window, a.scale, a.lie, geo.XY{X: (e.Min.X + e.Max.X) / 2, Y: (e.Min.Y + e.Max.Y) / 2})
}

// panel sets the tables and the key, as even as can be, and gives the largest
// room they leave to notes.
func (d *draft) panel(a arrangement) []Element {
	elements, left := evenFlow(a.columns, blockGap, d.subject.blocks(a.detail))
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

// scaleStrip has the scale bar on the left, the scale in words, and the north
// arrow on the right.
func (d *draft) scaleStrip(a arrangement) []Element {
	const longestBar, arrow, arrowRoom, gap = 90.0, 11.5, 14.0, 4.0
	box := a.strip
	middle, foot := Point{box.Max.X - arrowRoom/2, box.Min.Y + 1.2 + arrow/2}, Point{0, -arrow / 2}.turned(a.lie.turn)
	right := Point{box.Max.X - arrowRoom, box.center().Y}
	words := Text{At: right.plus(0, 0.6), String: a.scale.String(), Face: Medium, Size: mapSize, Ink: Black, Anchor: End}
	note := Text{At: right.plus(0, -3), String: "true on " + capitalized(a.paper.Name) + " paper, printed at 100 %", Size: footSize, Ink: Grey, Anchor: End}
	room := box.Width() - arrowRoom - max(words.Width(), note.Width()) - gap
	return []Element{
		Path{Lines: box.Polygon().Lines(), Fill: White, Stroke: Black, Weight: ThinLine},
		ScaleBar(box.Min.plus(1, (box.Height()-ScaleBarHeight)/2-0.3), a.scale, min(longestBar, room)),
		words, note,
		NorthArrow(middle.plus(foot.X, foot.Y), arrow, a.lie.turn),
	}
}
