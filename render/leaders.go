package render

import (
	"math"

	"example.org/turfplat/zones"
)

const (
	leaderRoom  = 0.3 // mm that labels leave to a leader
	mostLeaders = 200 // zones for which a place is looked for; no map with more is legible
)

// target is where the leader of a cramped zone ends; other labels keep off.
func (l zoneLabel) target() plate {
	const side = 3.0 // mm
	return levelPlate(l.pieces[0].pole, side, side)
}

// placeWithLeader labels a zone too small for its label at a free place close
// by, with a line that leads to it. If no place is looked for or found, the
// letter stands on the zone.
func (d *draft) placeWithLeader(l zoneLabel, v view, look bool) []Element {
	target := l.pieces[0].pole
	d.labels.release(l.target())
	label, at := stacked(l.letter), target
	if look {
		label, at = d.roomBeside(l, v)
	}
	box := label.plate(at, 0)
	d.labels.take(box)
	from := box.nearest(target)
	d.labels.take(strokePlate(from, target, leaderRoom))
	leader := []Line{{Points: []Point{from, target}}}
	return append([]Element{
		Path{Lines: leader, Stroke: White, Weight: 3 * ThinLine},
		Path{Lines: leader, Stroke: Black, Weight: ThinLine},
		Path{Lines: Disc(target, 0.6).Lines(), Fill: Black},
	}, label.boxed(at)...)
}

// roomBeside finds a label and its place for a cramped zone. Where it is
// crowded the label says less, down to the letter.
func (d *draft) roomBeside(l zoneLabel, v view) (form, Point) {
	letter, target := stacked(l.letter), l.pieces[0].pole
	for _, label := range []form{l.forms()[1], beside(l.letter, l.figures...), letter} {
		if at, ok := d.placeBy(label, target, v); ok {
			return label, at
		}
	}
	return letter, target
}

// placeBy finds the free place for a label that is nearest to a target, in the
// window but clear of the target and of other zones' ground if it can be.
func (d *draft) placeBy(f form, target Point, v view) (Point, bool) {
	const (
		onTurf = 25.0 // mm that a label rather goes further than cover turf
		onSite = 10.0 // and than cover other ground of the site
	)
	turf := newField(v.area(d.plat.Ground.Cover(zones.Turf)))
	site := newField(v.area(d.plat.Ground.Outline))
	return d.placeNear(f, target, v, math.Hypot(v.window.Width(), v.window.Height()), func(box plate) float64 {
		switch {
		case turf.meets(box):
			return onTurf
		case site.meets(box):
			return onSite
		}
		return 0
	})
}

// placeNear finds the free place for a label that costs least, within reach of
// a target: its distance and what the ground there costs, in millimetres.
func (d *draft) placeNear(f form, target Point, v view, reach float64, extra func(plate) float64) (Point, bool) {
	const (
		nearest, step = 4.0, 2.0 // mm
		directions    = 36
	)
	window := v.window.inset(1)
	best, cost, found := Point{}, math.Inf(1), false
	for out := nearest; out < reach && out < cost; out += step {
		for i := range directions {
			at := target.polar(out, 2*math.Pi*float64(i)/directions)
			at.X += f.width / 2 * math.Cos(2*math.Pi*float64(i)/directions)
			at.Y += f.height / 2 * math.Sin(2*math.Pi*float64(i)/directions)
			box := f.plate(at, 0)
			if !box.within(window) || !d.labels.free(box) || !d.labels.free(strokePlate(box.nearest(target), target, leaderRoom)) {
				continue
			}
			if c := out + extra(box); c < cost {
				best, cost, found = at, c, true
			}
		}
	}
	return best, found
}

// nearest returns the point of the plate's edge nearest to another point.
func (p plate) nearest(q Point) Point {
	best, least := p[0], math.Inf(1)
	for i, a := range p {
		b := p[(i+1)%len(p)]
		dx, dy := b.X-a.X, b.Y-a.Y
		t := max(0, min(1, ((q.X-a.X)*dx+(q.Y-a.Y)*dy)/(dx*dx+dy*dy)))
		at := a.plus(t*dx, t*dy)
		if d := squaredDistance(q, at, at); d < least {
			best, least = at, d
		}
	}
	return best
}
