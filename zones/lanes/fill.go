package lanes

import (
	"cmp"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// A stint is a spell of spreading without a way that leads elsewhere: rows
// side by side, walked to and fro, or one lap or axis.
type stint struct {
	rows  []geo.Line
	lap   bool    // closed
	pitch float64 // m from row to row
	again Again   // why it does not lie across the pass before, where it should
}

func (s stint) length() float64 {
	var sum float64
	for _, r := range s.rows {
		sum += length(r)
	}
	return sum
}

// A filling is the stints that serve a piece of ground and what they cost, as
// a way: their length, and that which the turns between rows take as long as.
type filling struct {
	stints []stint
	cost   float64
}

func (f filling) with(o filling) filling {
	return filling{append(slices.Clone(f.stints), o.stints...), f.cost + o.cost}
}

// A filler fills the ground within laps.
type filler struct {
	spacing float64
	turnWay float64    // m that a turn costs as much as
	along   *float64   // heading of all rows; nil = whichever is best
	crossed bool       // a second set of rows lies at right angles to the first
	across  float64    // m that rows are long on the mean at least which lie at right angles to the best; 0 = along it
	room    geo.Region // what rows may run into at their ends
	bare    bool       // no laps run round the ground
}

const (
	// spare is the part of a spacing by which the last lane of ground that is
	// bounded by other lanes may serve more than its own: between triangles a
	// spacing and a quarter apart three quarters of the rate are left.
	spare = 0.25
	// stretched is how much farther apart than a spacing rows may lie for the
	// sake of one row less, where laps bound them: between triangles so far
	// apart the rate varies by a hundredth.
	stretched = 1.03
	// stub is the part of a spacing under which a row is not worth a turn.
	stub = 0.5
	// leaving is how many times the length of the lanes that would serve it
	// ground that rows leave out costs.
	leaving = 6
	// mostLaps is how many laps are tried inside the header, and how many
	// spacings wide the ground may be on the mean for which they are tried.
	mostLaps = 3
)

// fill serves some ground: each piece by rows at the best heading, by one more
// lap and what that leaves, or, if it is narrow, by an axis.
func (f filler) fill(ground geo.Region, laps int) (filling, error) {
	var all filling
	for _, piece := range ground.Pieces() {
		best, err := f.fillPiece(piece, laps)
		if err != nil {
			return filling{}, err
		}
		all = all.with(best)
	}
	return all, nil
}

func (f filler) fillPiece(piece geo.Region, laps int) (filling, error) {
	heart, err := piece.Offset(-f.spacing * spare / 2)
	if err != nil || heart.Empty() {
		return filling{}, err
	}
	best := f.straight(ringsOf(piece))
	if f.along != nil || laps >= mostLaps || meanWidth(piece) > mostLaps*f.spacing {
		return best, nil
	}
	b, err := beltOf(piece, f.spacing, spare*f.spacing)
	if err != nil {
		return filling{}, err
	}
	round := f.rounds(b)
	if round.cost >= best.cost {
		return best, nil
	}
	inner, err := f.fill(b.rest, laps+1)
	if round = round.with(inner); err == nil && len(round.stints) > 0 && round.cost < best.cost {
		best = round
	}
	return best, err
}

// rounds is a belt as stints; if rows would lie crosswise, its laps are walked
// twice instead, and as before if they would lie across.
func (f filler) rounds(b belt) filling {
	rounds := 1
	if f.crossed {
		rounds = 2
	}
	var all filling
	for _, s := range b.stints(f.spacing, rounds) {
		if f.across > 0 {
			s.again = Narrow
		}
		all = all.with(filling{[]stint{s}, f.cost(s)})
	}
	return all
}

// cost is the length of a stint, and that which its bends, and the turns from
// row to row, take as long as: a turn is half a circle.
func (f filler) cost(s stint) float64 {
	turns := float64(len(s.rows))
	for _, r := range s.rows {
		turns += bends(r) / math.Pi
	}
	return s.length() + turns*f.turnWay
}

// straight fills a piece with rows at the heading that costs least, or across it.
func (f filler) straight(rings []geo.Ring) filling {
	if f.along != nil {
		return f.acrossFrom(rings, *f.along, f.sets(rings, *f.along))
	}
	var best filling
	var heading float64
	for i, angle := range f.headings(rings) {
		if rows := f.sets(rings, angle); i == 0 || rows.cheaper(best) {
			best, heading = rows, angle
		}
	}
	return f.acrossFrom(rings, heading, best)
}

// sets fills a piece with one set of rows, or with two at right angles.
func (f filler) sets(rings []geo.Ring, angle float64) filling {
	rows := f.rows(rings, angle)
	if f.crossed {
		rows = rows.with(f.rows(rings, angle+math.Pi/2))
	}
	return rows
}

// cheaper compares costs to a tenth of a millimetre, then counts of rows, so
// that rounding decides nothing.
func (f filling) cheaper(o filling) bool {
	const step = 1e-4
	return cmp.Or(cmp.Compare(math.Round(f.cost/step), math.Round(o.cost/step)), cmp.Compare(len(f.stints), len(o.stints))) < 0
}

// rows fills a piece with rows at one heading, evened out over each cell.
func (f filler) rows(rings []geo.Ring, angle float64) filling {
	h := headingOf(angle)
	cells := cellsOf(rings, h)
	var all filling
	for _, c := range cells {
		all = all.with(f.cellRows(c, h, len(cells) > 1))
	}
	return all
}

// cellRows lays the rows of one cell, which may be bounded by other rows and
// laps.
func (f filler) cellRows(c cell, h heading, bounded bool) filling {
	n, pitch := f.abreast(c.width(), bounded)
	s := stint{pitch: pitch}
	left := c.area()
	for i := range n {
		v := c[0].v0 + (float64(i)+0.5)*pitch
		if l, r := c.row(v); r-l >= stub*f.spacing {
			left -= (r - l) * pitch
			out, on := c.slant(v, pitch/2)
			s.rows = append(s.rows, geo.Line{f.into(h.xy(r, v), h.xy(l, v), out), f.into(h.xy(l, v), h.xy(r, v), on)})
		}
	}
	all := filling{cost: f.cost(s) + leaving*max(0, left)/f.spacing}
	if len(s.rows) > 0 {
		all.stints = []stint{s}
	}
	return all
}

// abreast returns how many rows serve the width of a cell, and how far apart
// they lie.
func (f filler) abreast(width float64, bounded bool) (n int, pitch float64) {
	switch {
	case f.bare:
		return Abreast(width, f.spacing)
	case bounded:
		n = int(math.Ceil(width/f.spacing - spare))
	default:
		n, _ = Abreast(width, stretched*f.spacing)
	}
	return n, width / float64(max(1, n))
}

// into runs a row from a past its end b, as far as there is room.
func (f filler) into(a, b geo.XY, by float64) geo.XY {
	const hair = 0.01 // m
	way := unit(b.Minus(a))
	if by <= hair || !f.room.Contains(b.Plus(way.Times(hair))) {
		return b
	}
	return b.Plus(way.Times(min(by, sight(f.room, b, way))))
}
