package geo

import "math"

// A listed edge is one of a row, with how far west and east it goes there.
type listed struct {
	west, east float64
	edge       int32
	lowest     int32 // row of its southern end
}

// edgesARow bounds how often an edge stands in the list, in the mean.
const edgesARow = 2

// layRows lists the edges by rows that are taller than the pad.
func (b *Border) layRows(pad float64) {
	b.pad = pad
	var climbed float64
	for _, e := range b.edges {
		climbed += math.Abs(e.b.Y - e.a.Y)
	}
	bounds := b.region.Bounds()
	b.south, b.tall = bounds.Min.Y, max(pad, max(bounds.Height(), climbed/edgesARow, grain)/float64(len(b.edges)))
	rows := 1 + int(bounds.Height()/b.tall)
	b.first = blank(b.first, rows+1)
	for _, e := range b.edges {
		low, high := b.rowsOf(e)
		for row := low; row <= high; row++ {
			b.first[row+1]++
		}
	}
	sum(b.first)
	b.list = sized(b.list, int(b.first[rows]))
	for i, e := range b.edges {
		c := e.climb()
		low, high := b.rowsOf(e)
		for row := low; row <= high; row++ {
			west, east := c.between(b.parallels(row, pad))
			b.list[b.first[row]] = listed{west, east, int32(i), low}
			b.first[row]++
		}
	}
	copy(b.first[1:], b.first) // each ended where the next began
	b.first[0] = 0
}

// rowsOf returns the lowest and the highest row of an edge.
func (b *Border) rowsOf(e edge) (low, high int32) {
	low, high = b.row(e.a.Y), b.row(e.b.Y)
	return min(low, high), max(low, high)
}

// row returns the row at y, or that nearest to it.
func (b *Border) row(y float64) int32 {
	switch row, last := (y-b.south)/b.tall, len(b.first)-2; {
	case row <= 0:
		return 0
	case row >= float64(last):
		return int32(last)
	default:
		return int32(row)
	}
}

// parallels returns where a row starts and ends, both moved outwards.
func (b *Border) parallels(row int32, by float64) (south, north float64) {
	south = b.south + float64(row)*b.tall
	return south - by, south + b.tall + by
}

// near adds to some numbers those of all edges that come within d of a given
// one, and of some that do not; some of them more than once.
func (b *Border) near(e edge, d float64, found []int32) []int32 {
	d += grain // all that rounding can do to rows
	box := e.bounds().Grown(d)
	if !box.Meets(b.region.Bounds()) {
		return found
	}
	if len(b.list) == 0 {
		return b.nearOfAll(box, found)
	}
	low, high := b.row(box.Min.Y), b.row(box.Max.Y)
	if listed := b.first[high+1] - b.first[low]; int(listed) >= len(b.edges) {
		return b.nearOfAll(box, found)
	}
	c := e.climb()
	for row := low; row <= high; row++ {
		west, east := c.between(b.parallels(row, d))
		west, east = west-d, east+d
		in := b.list[b.first[row]:b.first[row+1]]
		for k := range in {
			if l := &in[k]; !apart(l.west, east, west, l.east) {
				found = append(found, l.edge)
			}
		}
	}
	return found
}

// apart reports whether a > b or c > d, by the signs of two differences: one
// branch, which guesses well, where two would not.
func apart(a, b, c, d float64) bool {
	return (math.Float64bits(b-a)|math.Float64bits(d-c))>>63 != 0
}

func (b *Border) nearOfAll(box Bounds, found []int32) []int32 {
	for i := range b.boxes {
		if b.boxes[i].near(&box) {
			found = append(found, int32(i))
		}
	}
	return found
}

// near is Meets by the signs of four differences.
func (b *Bounds) near(o *Bounds) bool {
	signs := math.Float64bits(o.Max.X-b.Min.X) | math.Float64bits(b.Max.X-o.Min.X) |
		math.Float64bits(o.Max.Y-b.Min.Y) | math.Float64bits(b.Max.Y-o.Min.Y)
	return signs>>63 == 0
}

// A climb is an edge from its southern end to its northern one.
type climb struct {
	low, high XY
	slope     float64 // eastwards per metre northwards
}

func (e edge) climb() climb {
	c := climb{low: e.a, high: e.b}
	if c.low.Y > c.high.Y {
		c.low, c.high = c.high, c.low
	}
	if north := c.high.Y - c.low.Y; north > 0 {
		c.slope = (c.high.X - c.low.X) / north
	}
	return c
}

// between returns how far west and east the edge goes between two parallels,
// one of which at least it reaches.
func (c *climb) between(south, north float64) (west, east float64) {
	from, to := c.low.X, c.high.X
	if south > c.low.Y {
		from += (min(south, c.high.Y) - c.low.Y) * c.slope
	}
	if north < c.high.Y {
		to = c.low.X + (max(north, c.low.Y)-c.low.Y)*c.slope
	}
	return min(from, to), max(from, to)
}
