package render

import (
	"math"
	"slices"

	"example.org/turfplat/zones"
)

// A placedSign is a sign where it stands on the map: on its point, or beside it
// where another sign stands or a zone is smaller than the sign.
type placedSign struct {
	sign
	kind  int   // in signs
	stand Point // of its middle
	led   bool  // by a line to its point
	named Point // middle of its name, if held
	held  bool  // room for its name, before zones are labelled
}

const (
	signRoom    = 1.5 * signHeight // mm, the widest sign with its rim
	mostMoved   = 200              // signs for which a place is looked for
	farthestOff = 40.0             // mm that a sign stands from its point
)

func (s placedSign) plate() plate { return levelPlate(s.stand, signRoom, signHeight*1.25) }

// plates are the ground that a sign takes.
func (s placedSign) plates() []plate {
	if s.led {
		return []plate{s.plate(), s.stub()}
	}
	return []plate{s.plate()}
}

// stub is the ground of the line from a sign that was moved to its point.
func (s placedSign) stub() plate { return strokePlate(s.plate().nearest(s.at), s.at, leaderRoom) }

// standSigns stands the signs on the map before anything is labelled: on their
// points, and those that would lie on another one as near to it as there is
// room. Zones too small for a letter stay in sight.
func (d *draft) standSigns(v view) error {
	small, err := d.smallZones(v)
	if err != nil {
		return err
	}
	var b board
	for _, p := range d.joinWords {
		b.take(p)
	}
	for _, p := range small {
		b.take(levelPlate(p, 2*targetDot, 2*targetDot))
	}
	for kind, s := range signs {
		for _, one := range d.signsOf(s.kind, v) {
			d.placed = append(d.placed, placedSign{sign: one, kind: kind})
		}
	}
	b.stand(d.placed, v)
	d.placed.take(&d.labels)
	d.holdNames(b, v.forLabels())
	return nil
}

// holdNames keeps room for the names of hazards beside their signs, off zones
// too small for a letter: labels of zones have other places to go to.
func (d *draft) holdNames(small board, v view) {
	for i, p := range d.placed {
		label, named := d.signLabel(p)
		if signs[p.kind].kind != zones.Hazard || !named {
			continue
		}
		at, found := besidePoint(p.stand, signHeight*0.75, label, v, func(box plate) bool { return d.labels.free(box) && small.free(box) })
		if found {
			d.placed[i].named, d.placed[i].held = at, true
			d.labels.take(label.plate(at, 0))
		}
	}
}

func (d *draft) holdsNames() bool {
	return slices.ContainsFunc(d.placed, func(p placedSign) bool { return p.held })
}

// giveBackName gives back the room that is held for a sign's name.
func (d *draft) giveBackName(i int) {
	if p := &d.placed[i]; p.held {
		label, _ := d.signLabel(*p)
		d.labels.release(label.plate(p.named, 0))
		p.held = false
	}
}

// giveBackNames gives back all room that is held for names of signs.
func (d *draft) giveBackNames() {
	for i := range d.placed {
		d.giveBackName(i)
	}
}

// spotsOfSigns are the plates of signs on their points.
func (d *draft) spotsOfSigns(v view) board {
	var b board
	for _, s := range signs {
		for _, one := range d.signsOf(s.kind, v) {
			b.take(placedSign{sign: one, stand: one.at}.plate())
		}
	}
	return b
}

// liftSigns lets labels of zones stand where signs do; the signs make room.
func (d *draft) liftSigns() {
	d.giveBackNames()
	d.placed.release(&d.labels)
	d.lifted = true
}

type placedSigns []placedSign

func (all placedSigns) take(b *board) {
	for _, p := range all {
		for _, taken := range p.plates() {
			b.take(taken)
		}
	}
}

func (all placedSigns) release(b *board) {
	for _, p := range all {
		for _, taken := range p.plates() {
			b.release(taken)
		}
	}
}

// stand finds places for signs, one after the other.
func (b *board) stand(all placedSigns, v view) {
	for i, p := range all {
		p.stand, p.led = p.at, false
		if i < mostMoved {
			p = b.standFor(p, v.window.inset(windowInset))
		}
		all[i] = p
		all[i : i+1].take(b)
	}
}

// smallZones are the middles of zones in which a sign would hide what is there.
func (d *draft) smallZones(v view) ([]Point, error) {
	var small []Point
	for _, z := range d.plat.Zones {
		p, ok, err := largestPiece(v, z.Region)
		if err != nil {
			return nil, err
		}
		if ok && p.clear < signRoom {
			small = append(small, p.pole)
		}
	}
	return small, nil
}

// standFor finds where a sign may stand: on its point if that is free, else
// near it, rather where a line to its point is free too.
func (b *board) standFor(p placedSign, window rect) placedSign {
	const (
		step, directions = 1.0, 24
		unled            = 12.0 // mm that a sign rather goes further than stand without a line
	)
	if b.free(p.plate()) {
		return p
	}
	best, least := p, math.Inf(1)
	for out := step; out < min(least, farthestOff); out += step {
		for i := range directions {
			p.stand = p.at.polar(out, 2*math.Pi*float64(i)/directions)
			if !p.plate().within(window) || !b.free(p.plate()) {
				continue
			}
			cost := out
			if p.led = !p.plate().holds(p.at) && b.free(p.stub()); !p.led {
				cost += unled
			}
			if cost < least {
				best, least = p, cost
			}
		}
	}
	return best
}
