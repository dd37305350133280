package lanes

import (
	"maps"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// Coverage is what lands where, by calculation: the output of all lanes summed
// on a fine grid, the spreader being set so that all lanes together put out the
// rate times the ground. Shares of ground are right to about 0.1 %.
type Coverage struct {
	Ground  float64 // m2 that lanes serve
	Hand    float64 // m2 left to be done by hand
	Covered float64 // share of the ground that gets half of the rate or more
	Missed  float64 // m2 of it that gets less
	Doubled float64 // m2 of it that gets half more than the rate, or still more
	Even    Evenness
	Outside float64                // share of the output that lands off the turf
	Where   map[zones.Kind]float64 // that share by ground; "" = beyond all that is known
	Seam    float64                // share that lands on turf which lanes do not serve
}

const (
	cellsPerSwath = 10
	mostCells     = 1 << 23
)

// Marks of a coverage raster.
const (
	beyond = iota // all that is known
	served
	otherTurf
	firstKind // of otherKinds
)

// otherKinds are the kinds of ground that lanes do not serve.
var otherKinds = append(slices.Clone(zones.CoverKinds), zones.Keepout)

// markOf is the mark of ground of a kind.
func markOf(k zones.Kind) uint8 {
	if i := slices.Index(otherKinds, k); i >= 0 {
		return uint8(firstKind + i)
	}
	return beyond
}

// kindOf is the kind of ground that a mark stands for; "" beyond all that is
// known.
func kindOf(mark uint8) zones.Kind {
	if mark < firstKind {
		return ""
	}
	return otherKinds[mark-firstKind]
}

// Coverage sums what the plan's lanes leave on the yard.
func (p Plan) Coverage(y Yard) Coverage {
	c := Coverage{Ground: areaOf(p.Walked), Hand: areaOf(p.Hand), Where: make(map[zones.Kind]float64)}
	if p.SpreadLength() == 0 {
		c.Missed = c.Ground
		return c
	}
	sum := landed{off: make(map[zones.Kind]float64)}
	rate := c.Ground / p.spreadIn(p.Lanes[0].PassNo) / float64(p.Passes())
	for f := range p.fields(y) {
		sum.take(p.cast(f), f.ground, p.Work.Practice, rate)
	}
	c.settle(sum)
	return c
}

// mark paints what lies where.
func (p Plan) mark(y Yard, ground *raster[uint8]) {
	for _, cover := range y.Covers {
		ground.paint(cover.Region, markOf(cover.Kind))
	}
	for i, plot := range y.Plots {
		ground.paint(plot.Turf, otherTurf)
		ground.paint(p.Walked[i], served)
	}
	for _, post := range y.Posts {
		for i, at := range ground.within(geo.Bounds{Min: post.At, Max: post.At}.Grown(post.Radius)) {
			if ground.cells[i] == served && post.holds(at) {
				ground.cells[i] = otherTurf
			}
		}
	}
}

// cast sums the output of the lanes on a field, in parts of the output of one
// metre of the first pass to a square metre: each pass puts out the same.
func (p Plan) cast(f field) *raster[float32] {
	cast := &raster[float32]{grid: f.ground.grid, cells: make([]float32, len(f.ground.cells))}
	pass, share := 0, 1.0
	for _, i := range f.lanes {
		l := p.Lanes[i]
		lane := strokes(l)
		if l.Pass == Header {
			shielded(lane, f.ground, p.Work.Pattern)
		}
		if l.PassNo != pass {
			pass, share = l.PassNo, p.spreadIn(p.Lanes[0].PassNo)/p.spreadIn(l.PassNo)
		}
		addOutput(cast, f.ground, lane, p.Work.Pattern, share)
	}
	return cast
}

// addOutput sums a share of the output of a lane, to its length exactly: round bends
// strokes leave a little more to one side and less to the other.
func addOutput(cast *raster[float32], ground *raster[uint8], lane []stroke, p Pattern, share float64) {
	type catch struct {
		cell int
		got  float64
	}
	var catches []catch
	var sum, length float64
	for _, s := range lane {
		length += s.length
		for i, at := range cast.within(s.bounds(p)) {
			if got := s.leaves(at, p, isTurf(ground.cells[i])); got > 0 {
				catches = append(catches, catch{i, got})
				sum += got
			}
		}
	}
	if sum == 0 {
		return
	}
	k := share * length / (sum * cast.step * cast.step)
	for _, c := range catches {
		cast.cells[c.cell] += float32(k * c.got)
	}
}

// take reads the cast off a marked field; rate turns it into parts of the rate.
// What lands is counted as the m2 that it would serve at the rate.
func (t *landed) take(cast *raster[float32], ground *raster[uint8], practice Practice, rate float64) {
	cell := cast.step * cast.step
	for i, v := range cast.cells {
		got := float64(v) * rate
		t.all += got * cell
		switch m := ground.cells[i]; m {
		case served:
			t.even.weigh(got, cell)
			if got < practice.Covered {
				t.under += cell
			}
			if got > practice.Doubled {
				t.over += cell
			}
		case otherTurf:
			t.seam += got * cell
		default:
			t.off[kindOf(m)] += got * cell
		}
	}
}

// landed is what lands on all fields, m2.
type landed struct {
	even        tally
	under, over float64 // ground that gets too little, or too much
	all, seam   float64
	off         map[zones.Kind]float64
}

// settle says what a coverage comes to.
func (c *Coverage) settle(t landed) {
	c.Even = t.even.evenness()
	c.Missed, c.Doubled = t.under, t.over
	if t.even.n > 0 {
		c.Covered = 1 - t.under/t.even.n
	}
	if t.all == 0 {
		return
	}
	c.Seam = t.seam / t.all
	for _, kind := range slices.Sorted(maps.Keys(t.off)) {
		c.Where[kind] = t.off[kind] / t.all
		c.Outside += c.Where[kind]
	}
}

// SpreadLength is the length of all lanes that spread, m.
func (p Plan) SpreadLength() float64 { return p.lengthOf(true) }

// spreadIn is the length of the lanes of one pass that spread, m.
func (p Plan) spreadIn(pass int) float64 {
	var sum float64
	for _, l := range p.Lanes {
		if l.Spreading && l.PassNo == pass {
			sum += length(l.Line)
		}
	}
	return sum
}

// FillSpacing is the mean way between fill lanes that lie side by side, m, over
// their length; 0 if there are none.
func (p Plan) FillSpacing() float64 {
	var sum, whole float64
	for _, l := range p.Lanes {
		if l.Spreading && l.Pass == Fill {
			sum += l.Spacing * length(l.Line)
			whole += length(l.Line)
		}
	}
	if whole == 0 {
		return 0
	}
	return sum / whole
}

// TravelLength is the length of the ways between them, m.
func (p Plan) TravelLength() float64 { return p.lengthOf(false) }

func (p Plan) lengthOf(spreading bool) float64 {
	var sum float64
	for _, l := range p.Lanes {
		if l.Spreading == spreading {
			sum += length(l.Line)
		}
	}
	return sum
}

// areaOf is the area of regions in m2, in the plane in which lanes lie.
func areaOf(regions []geo.Region) float64 {
	var sum float64
	for _, r := range regions {
		sum += r.PlanarArea()
	}
	return sum
}
