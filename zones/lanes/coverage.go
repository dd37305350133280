package lanes

import (
	"math"
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
	ground := p.marked(y)
	cast := p.cast(ground)
	c.sum(cast, ground, p.Work.Practice, c.Ground/p.spreadIn(p.Lanes[0].PassNo)/float64(p.Passes()))
	return c
}

// marked tells what lies where on a grid that holds all that lanes reach.
func (p Plan) marked(y Yard) *raster[uint8] {
	b := geo.Region{}.Bounds()
	for _, r := range p.Walked {
		b = b.Union(r.Bounds())
	}
	left, right := p.Work.Pattern.Reach()
	b = b.Grown(max(left, right))
	ground := newRaster[uint8](b, max(p.Work.Pattern.Swath()/cellsPerSwath, math.Sqrt(b.Width()*b.Height()/mostCells)))
	p.mark(y, ground)
	return ground
}

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

// cast sums the output of all lanes, in parts of the output of one metre of the
// first pass to a square metre: each pass puts out the same.
func (p Plan) cast(ground *raster[uint8]) *raster[float32] {
	cast := &raster[float32]{grid: ground.grid, cells: make([]float32, len(ground.cells))}
	pass, share := 0, 1.0
	for _, l := range p.Lanes {
		if !l.Spreading {
			continue
		}
		lane := strokes(l)
		if l.Pass == Header {
			shielded(lane, ground, p.Work.Pattern)
		}
		if l.PassNo != pass {
			pass, share = l.PassNo, p.spreadIn(p.Lanes[0].PassNo)/p.spreadIn(l.PassNo)
		}
		addOutput(cast, ground, lane, p.Work.Pattern, share)
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

// sum reads the cast off the marked ground; rate turns it into parts of the
// rate.
func (c *Coverage) sum(cast *raster[float32], ground *raster[uint8], practice Practice, rate float64) {
	cell := cast.step * cast.step
	var even tally
	var all, under, over, off float64
	for i, v := range cast.cells {
		got := float64(v) * rate
		all += got
		switch m := ground.cells[i]; m {
		case served:
			even.add(got)
			if got < practice.Covered {
				under++
			}
			if got > practice.Doubled {
				over++
			}
		case otherTurf:
			c.Seam += got
		default:
			off += got
			c.Where[kindOf(m)] += got
		}
	}
	c.Even = even.evenness()
	c.Covered = 1 - under/max(1, even.n)
	c.Missed, c.Doubled = under*cell, over*cell
	c.Seam /= all
	for k, v := range c.Where {
		c.Where[k] = v / all
	}
	c.Outside = off / all
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

func areaOf(regions []geo.Region) float64 {
	var frame geo.Frame // the plane of any frame keeps areas
	var sum float64
	for _, r := range regions {
		sum += float64(frame.Area(r))
	}
	return sum
}
