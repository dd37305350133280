package render

import (
	"math"
	"slices"

	"example.org/turfplat/zones"
)

const (
	leaderRoom  = 0.3  // mm that labels leave to a leader
	mostLeaders = 200  // zones for which a place is looked for; no map with more is legible
	targetDot   = 0.45 // mm, radius of the dot in which a leader ends
	leastDot    = 0.15 // of one in a zone that is hardly seen
)

// A seat is a place for the label of a cramped zone, with the leader to it.
type seat struct {
	at, end Point    // of the label's middle and of the leader
	dot     float64  // mm, radius of the leader's end
	plates  [3]plate // of the label, the leader and its end
	cost    float64  // mm that the label is away, and more over ground that should be seen
}

// labelCramped labels zones too small for their labels at free places close by,
// with lines that lead to them. Where some find no place, all are seated anew
// together, with their letters first.
func (d *draft) labelCramped(cramped []zoneLabel, g seating) []Element {
	sought := cramped[:min(len(cramped), mostLeaders)]
	drawn, ok := d.seatInTurn(sought, g)
	if !ok {
		drawn = d.seatTogether(sought, g)
	}
	for _, l := range cramped[len(sought):] {
		d.unlabelled = append(d.unlabelled, l.letter.String)
	}
	return drawn
}

// seatInTurn seats one label after the other, each with as much of its text as
// finds room. It reports whether all have a place; if not, none is taken.
func (d *draft) seatInTurn(cramped []zoneLabel, g seating) (drawn []Element, ok bool) {
	const clear = 3.0 // mm round the ends of leaders to come
	before := len(d.labels.taken)
	for _, l := range cramped {
		d.labels.take(levelPlate(l.ends[0], clear, clear))
	}
	for _, l := range cramped {
		d.labels.release(levelPlate(l.ends[0], clear, clear))
		f, s, ok := g.richestSeat(l.led(), l.ends[0], l.dot())
		if !ok {
			d.labels.taken = d.labels.taken[:before]
			return nil, false
		}
		drawn = append(drawn, d.seated(f, s)...)
	}
	return drawn, true
}

// seatTogether seats the letters of all cramped zones, if need be where names of
// hazards would stand, as if there were no signs, which then make room, and over
// short lanes; and lets each say
// more if there is room left. What is in the way even so is left out.
func (d *draft) seatTogether(cramped []zoneLabel, g seating) (drawn []Element) {
	c, settled := g.settledCrowd(cramped)
	if !settled && d.holdsNames() {
		d.giveBackNames()
		c, settled = g.settledCrowd(cramped)
	}
	if !settled && len(d.placed) > 0 {
		d.liftSigns()
		c, settled = g.settledCrowd(cramped)
	}
	if !settled && len(d.short) > 0 {
		d.giveBackShortLanes()
		c, _ = g.settledCrowd(cramped)
	}
	seated := c.undisturbed()
	for _, i := range seated {
		for _, p := range c.sit(i).plates {
			d.labels.take(p)
		}
	}
	for i, l := range cramped {
		if slices.Contains(seated, i) {
			drawn = append(drawn, d.seatRicher(l, c.sit(i).seat, g)...)
		} else {
			d.unlabelled = append(d.unlabelled, l.letter.String)
		}
	}
	return drawn
}

// seatRicher lets a label that has a seat for its letter say more if there is
// room near by.
func (d *draft) seatRicher(l zoneLabel, s seat, g seating) []Element {
	const farther = 2.0 // times the way of its letter that a richer label may be away
	for _, p := range s.plates {
		d.labels.release(p)
	}
	forms := l.led()
	f, richer, found := g.richestSeat(forms[:len(forms)-1], s.end, s.dot)
	if !found || richer.cost > farther*s.cost {
		f, richer = forms[len(forms)-1], s
	}
	return d.seated(f, richer)
}

// led are the forms of a label beside its zone, the richest first. Where it is
// crowded the label says less, down to the letter.
func (l zoneLabel) led() []form {
	return []form{l.forms()[1].padded(), beside(l.letter, l.figures...).padded(), stacked(l.letter)}
}

func (g seating) richestSeat(forms []form, end Point, dot float64) (form, seat, bool) {
	for _, f := range forms {
		if s, ok := g.nearestSeat(f, end, dot); ok {
			return f, s, true
		}
	}
	return form{}, seat{}, false
}

// seated takes a seat and draws what sits there, with its leader.
func (d *draft) seated(f form, s seat) []Element {
	for _, p := range s.plates {
		d.labels.take(p)
	}
	return append([]Element{leader(s.plates[0].nearest(s.end), s.end, s.dot)}, f.boxed(s.at)...)
}

// leader leads from a label or a sign to the place that it tells of, where it
// ends in a dot of a radius in millimetres.
func leader(from, to Point, dot float64) Group {
	line := []Line{{Points: []Point{from, to}}}
	return Group{ID: "leader", Elements: []Element{
		Path{Lines: line, Stroke: white, Weight: 3 * thinLine},
		Path{Lines: line, Stroke: black, Weight: thinLine},
		Path{Lines: disc(to, dot).lines(), Fill: black},
	}}
}

// A seating knows where labels beside what they tell of may be, and where they
// should rather not be.
type seating struct {
	board  *board
	window rect
	reach  float64             // mm
	extra  func(plate) float64 // mm that a label rather goes further than cover some ground
	last   *settledCrowd
}

// newSeating has room for labels in all the window, rather beside the site than
// on it, and rather on other ground of it than on turf.
func (d *draft) newSeating(v view) seating {
	const onTurf, onSite = 25.0, 10.0 // mm
	turf, site := newField(v.area(d.plat.Ground.Cover(zones.Turf))), newField(v.area(d.plat.Ground.Outline))
	extra := func(box plate) float64 {
		switch {
		case turf.meets(box):
			return onTurf
		case site.meets(box):
			return onSite
		}
		return 0
	}
	return seating{&d.labels, v.window.inset(windowInset), math.Hypot(v.window.width(), v.window.height()), extra, new(settledCrowd)}
}

// placeNear finds the free place for a label that costs least, within reach of
// a target: its distance and what the ground there costs, in millimetres.
func (d *draft) placeNear(f form, target Point, v view, reach float64, extra func(plate) float64) (Point, bool) {
	s, found := seating{board: &d.labels, window: v.window.inset(windowInset), reach: reach, extra: extra}.nearestSeat(f, target, targetDot)
	return s.at, found
}

// nearestSeat finds the free seat of the least cost.
func (g seating) nearestSeat(f form, end Point, dot float64) (best seat, found bool) {
	best.cost = math.Inf(1)
	for out := nearestRing; out < g.reach && out < best.cost; out += ringStep {
		g.ring(f, end, out, func(at Point, cost float64) {
			if cost < best.cost {
				best, found = seat{at: at, end: end, dot: dot, cost: cost}, true
			}
		})
	}
	if found {
		best.plates = f.platesLed(best.at, end, dot)
	}
	return best, found
}

const (
	nearestRing, ringStep = 4.0, 2.0 // mm
	ringSeats             = 36
)

// ring calls visit for the free seats at a distance from the end of a leader,
// with the middle of the label and the cost.
func (g seating) ring(f form, end Point, out float64, visit func(at Point, cost float64)) {
	for _, way := range ringWays {
		at := end.plus(out*way.X, out*way.Y).plus(f.width/2*way.X, f.height/2*way.Y)
		box := f.plate(at, 0)
		if box.within(g.window) && g.board.free(box) && g.board.free(leaderPlate(box, end)) {
			visit(at, out+g.extra(box))
		}
	}
}

// ringWays are the directions of the seats of a ring.
var ringWays = func() (ways [ringSeats]Point) {
	for i := range ways {
		ways[i] = Point{}.polar(1, 2*math.Pi*float64(i)/ringSeats)
	}
	return ways
}()

// platesLed are the plates of a label, of the leader from it and of the end of that.
func (f form) platesLed(at, end Point, dot float64) [3]plate {
	box := f.plate(at, 0)
	return [3]plate{box, leaderPlate(box, end), levelPlate(end, 2*dot, 2*dot)}
}

func leaderPlate(box plate, end Point) plate { return strokePlate(box.nearest(end), end, leaderRoom) }

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
