package render

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"
)

// An arrangement divides a sheet of paper: the title, the map with a strip for
// its scale, a panel of columns for tables and the key, and the foot.
type arrangement struct {
	paper   Paper
	title   rect
	window  rect // of the map
	strip   rect // under the window
	columns []rect
	foot    rect

	scale  Scale
	lie    lie // of the site
	level  int // of detail; 0 is the richest
	detail detail
	split  bool // of tables
	waste  float64
}

// Measures of the sheet in millimetres.
const (
	sheetMargin = 9.0
	gutter      = 5.0
	blockGap    = 4.0
	stripHeight = 14.0
	mapMargin   = 5.0   // clear of the frame
	leastWidth  = 100.0 // of the window: the strip must hold bar, scale and arrow
	leastHeight = 60.0
)

// arrange finds the arrangement that shows the site largest, then turns it
// least, then lists most, then splits no table, then wastes least paper.
func (d *draft) arrange() (arrangement, error) {
	return d.arrangeAt(d.options.Scale, append([]lie{d.upright}, d.turned...))
}

// arrangeAt does so at a scale that is asked for, zero for none, and with the
// site laid in one of some ways, those first that turn it least.
func (d *draft) arrangeAt(asked Scale, lies []lie) (arrangement, error) {
	var all []arrangement
	for _, a := range d.frames() {
		all = append(all, d.withMap(a, asked, lies)...)
	}
	slices.SortStableFunc(all, (arrangement).compare)
	levels := d.subject.levels()
	var best *arrangement
	for i := range all {
		a := &all[i]
		if best != nil && best.compare(*a) != 0 {
			break
		}
		if d.settle(a, levels) && (best == nil || a.better(best)) {
			best = a
		}
	}
	if best == nil {
		return arrangement{}, d.noRoom(asked)
	}
	return *best, nil
}

// compare puts larger scales first, and then those that turn the site least, so
// that all sheets of it lie alike.
func (a arrangement) compare(b arrangement) int {
	return cmp.Or(cmp.Compare(a.scale, b.scale), cmp.Compare(math.Abs(a.lie.turn), math.Abs(b.lie.turn)))
}

func (a *arrangement) better(b *arrangement) bool {
	if a.level != b.level {
		return a.level < b.level
	}
	if a.split != b.split {
		return b.split
	}
	return a.waste < b.waste
}

func (d *draft) noRoom(asked Scale) error {
	if asked == 0 {
		return fmt.Errorf("site %s does not fit %s paper with its tables: use tabloid or a3", d.measured.ID, d.options.Paper.Name)
	}
	return fmt.Errorf("site %s, %.0f x %.0f m, does not fit %s paper at %s: leave the scale out, or use larger paper",
		d.measured.ID, d.extent.Width(), d.extent.Height(), d.options.Paper.Name, asked)
}

// levels are the details to choose from, the richest first: lists of objects
// are shortened before less is told of zones, and that before some are left out.
func (d *draft) levels() []detail {
	const most = 120 // rows that the largest paper may hold
	var levels []detail
	laid := len(d.plat.Zones)
	for n := min(most, d.subject.objectRows()); n >= 0; n-- {
		levels = append(levels, detail{objects: n, zones: laid})
	}
	levels = append(levels, detail{zones: laid, told: tellLess}, detail{zones: laid, told: tellNeeded})
	for n := min(most, laid-2); n > 0; n-- {
		levels = append(levels, detail{zones: n, told: tellNeeded})
	}
	return levels
}

// settle gives an arrangement the richest detail there is room for, if there
// is any.
func (d *draft) settle(a *arrangement, levels []detail) bool {
	left := func(level int, split bool) (heights []float64, ok bool) {
		_, heights, ok = flow(a.columns, blockGap, split, d.blocks(levels[level]))
		return heights, ok
	}
	a.level = sort.Search(len(levels), func(level int) bool {
		_, ok := left(level, true)
		return ok
	})
	if a.level == len(levels) {
		return false
	}
	a.detail = levels[a.level]
	heights, whole := left(a.level, false)
	if a.split = !whole; a.split {
		heights, _ = left(a.level, true)
	}
	a.waste = d.waste(*a, heights)
	return true
}

// waste weighs the paper that an arrangement leaves empty, in square
// millimetres: an empty panel is worse than a roomy map, and room round a site
// is of use if it shows the neighbours.
func (d *draft) waste(a arrangement, left []float64) float64 {
	const panel, neighbours = 2, 0.25
	waste := a.window.width()*a.window.height() - a.scale.MM(a.lie.extent.Width())*a.scale.MM(a.lie.extent.Height())
	if d.hasNeighbours() {
		waste *= neighbours
	}
	for _, height := range left {
		waste += panel * height * a.columns[0].width()
	}
	return waste
}

// frames are the ways to divide the paper in which the window is large enough
// for a map.
func (d *draft) frames() []arrangement {
	var all []arrangement
	for _, paper := range []Paper{d.options.Paper.landscape(), d.options.Paper.upright()} {
		footed, area := d.footed(paper)
		for count := 1; count <= 2; count++ {
			for width := 64.0; width <= 80; width += 4 {
				all = append(all, d.sidePanel(footed, area, count, width))
			}
		}
		for height := 40.0; height <= paper.Height/2; height += 4 {
			all = append(all, d.bottomPanel(footed, area, height))
		}
	}
	return slices.DeleteFunc(all, func(a arrangement) bool {
		return a.window.width() < leastWidth || a.window.height() < leastHeight
	})
}

// sidePanel has the tables to the right of the map, under the title.
func (d *draft) sidePanel(a arrangement, area rect, count int, width float64) arrangement {
	panel := area
	panel.min.X = area.max.X - float64(count)*width - float64(count-1)*gutter
	a.title = panel
	_, h := d.title(arrangement{paper: a.paper, scale: 1}).set(Point{}, panel.width())
	a.title.min.Y = panel.max.Y - h
	panel.max.Y = a.title.min.Y - blockGap
	a.columns = divided(panel, count)
	area.max.X = panel.min.X - gutter
	return a.withWindow(area)
}

// bottomPanel has the title across the top and the tables under the map.
func (d *draft) bottomPanel(a arrangement, area rect, height float64) arrangement {
	const leastColumn = 58.0
	a.title = area
	_, h := d.title(arrangement{paper: a.paper, scale: 1}).set(Point{}, area.width())
	a.title.min.Y = area.max.Y - h
	panel := area
	panel.max.Y = panel.min.Y + height
	a.columns = divided(panel, int((area.width()+gutter)/(leastColumn+gutter)))
	area.min.Y, area.max.Y = panel.max.Y+gutter, a.title.min.Y-blockGap
	return a.withWindow(area)
}

// footed puts the foot on a sheet and returns the area above it.
func (d *draft) footed(paper Paper) (arrangement, rect) {
	area := rect{max: Point{paper.Width, paper.Height}}.inset(sheetMargin)
	_, h := d.footing(Point{}, area.width())
	a := arrangement{paper: paper, foot: area}
	a.foot.max.Y = area.min.Y + h
	area.min.Y = a.foot.max.Y + blockGap
	return a, area
}

// withWindow gives the map an area with its strip.
func (a arrangement) withWindow(area rect) arrangement {
	a.window, a.strip = area, area
	a.strip.max.Y = area.min.Y + stripHeight
	a.window.min.Y = a.strip.max.Y
	return a
}

// withMap lays the site in the window: as it is turned least, and as it is
// larger when turned more. There are no arrangements if it does not fit.
func (d *draft) withMap(a arrangement, asked Scale, lies []lie) []arrangement {
	var all []arrangement
	largest := Scale(math.MaxInt)
	for _, l := range lies {
		if s, ok := d.fit(l, a.window.inset(mapMargin), asked); ok && s < largest {
			a.scale, a.lie, largest = s, l, s
			all = append(all, a)
		}
	}
	return all
}

// fit is the largest scale at which the site fits a window, or the one that is
// asked for if it fits at that.
func (d *draft) fit(l lie, window rect, asked Scale) (Scale, bool) {
	width, height := l.extent.Width(), l.extent.Height()
	if asked != 0 {
		return asked, fits(asked.MM(width), window.width()) && fits(asked.MM(height), window.height())
	}
	series, key := d.series()
	if d.joined {
		series = key
	}
	s, err := series.fit(width, height, window.width(), window.height())
	return s, err == nil
}

// series are the scales of the units for maps that people measure on, and for
// key maps.
func (d *draft) series() (measured, key scaleSeries) {
	if d.figures.Metric() {
		return metricScales, metricKeyScales
	}
	return engineerScales, engineerKeyScales
}

// divided cuts an area into columns.
func divided(area rect, count int) []rect {
	count = max(1, count)
	width := (area.width() - float64(count-1)*gutter) / float64(count)
	columns := make([]rect, count)
	for i := range columns {
		columns[i] = area
		columns[i].min.X = area.min.X + float64(i)*(width+gutter)
		columns[i].max.X = columns[i].min.X + width
	}
	return columns
}
