package sun

import (
	"math"
	"slices"
)

// settle makes of the classes by hours those of patches that a person can walk:
// a majority filter, twice; ground too narrow for a patch put together, or
// given to what lies beside it; patches too small given to the one nearest in
// hours; and at last the classes carried on over the ground around the turf, so
// that lines between patches run right up to its edge.
func (c *classing) settle() {
	c.majority()
	c.majority()
	c.broaden()
	c.absorb()
	c.carryOn()
}

// majority gives each cell the class that most cells around it have, its own
// if that has as many. The window is 5 cells wide where they are small, else 3.
func (c *classing) majority() {
	reach := 1
	if c.Step < 0.5 {
		reach = 2
	}
	before := slices.Clone(c.class)
	for cell, own := range before {
		if own == none {
			continue
		}
		var count [mostClasses]int
		for north := -reach; north <= reach; north++ {
			for east := -reach; east <= reach; east++ {
				if other := c.offset(cell, east, north); other >= 0 && before[other] != none {
					count[before[other]]++
				}
			}
		}
		for k, n := range count {
			if n > count[c.class[cell]] {
				c.class[cell] = int8(k)
			}
		}
	}
}

// broaden takes the class of cells that lie in no disc of the least width
// within their class. Where such cells are wide enough together they are ground
// of their own; what lies beside the others grows over them.
func (c *classing) broaden() {
	broad := c.broad()
	narrow := make([]bool, len(c.class))
	for cell, k := range c.class {
		if k != none && !broad[cell] {
			narrow[cell], c.class[cell] = true, none
		}
	}
	c.classTogether(c.over(narrow).broad())
	c.grow(narrow)
	c.classTogether(narrow)
}

// broad marks the cells that lie in a disc of the least width, as cells make
// it out, of one class.
func (c *classing) broad() []bool {
	broad := make([]bool, len(c.class))
	disc := c.disc(figures["patch_width"])
	for anchor := range c.class {
		k := none
		cells := make([]int, 0, len(disc))
		for _, d := range disc {
			cell := c.offset(anchor, d[0], d[1])
			if cell < 0 || c.class[cell] == none || k != none && c.class[cell] != k {
				break
			}
			k = c.class[cell]
			cells = append(cells, cell)
		}
		if len(cells) == len(disc) {
			for _, cell := range cells {
				broad[cell] = true
			}
		}
	}
	return broad
}

// disc returns the columns and rows of the cells of a disc of a width, at
// least two cells wide, from its south-west corner on.
func (g Grid) disc(width float64) [][2]int {
	n := max(2, int(math.Ceil(width/g.Step-1e-9)))
	middle := float64(n-1) / 2
	var cells [][2]int
	for north := range n {
		for east := range n {
			if math.Hypot(float64(east)-middle, float64(north)-middle)*g.Step <= max(width, float64(n)*g.Step)/2 {
				cells = append(cells, [2]int{east, north})
			}
		}
	}
	return cells
}

// grow gives the marked cells without a class that of the cells beside them,
// round by round outwards, and where no turf is their hours as well.
func (c *classing) grow(marked []bool) {
	queued := make([]bool, len(c.class))
	var front []int
	enqueue := func(cell int) {
		c.around(cell, func(other, _ int) {
			if marked[other] && c.class[other] == none && !queued[other] {
				queued[other] = true
				front = append(front, other)
			}
		})
	}
	for cell, k := range c.class {
		if k != none {
			enqueue(cell)
		}
	}
	for len(front) > 0 {
		round := front
		front = nil
		chosen, hours := make([]int8, len(round)), make([]float64, len(round))
		for i, cell := range round {
			chosen[i], hours[i] = c.commonestAround(cell), c.hoursAround(cell)
		}
		for i, cell := range round {
			c.class[cell] = chosen[i]
			if math.IsNaN(c.Values[cell]) {
				c.Values[cell] = hours[i]
			}
		}
		for _, cell := range round {
			enqueue(cell)
		}
	}
}

// around calls visit for the eight cells around one; those that share an edge
// with it weigh 2, those at a corner 1.
func (g Grid) around(cell int, visit func(other, weight int)) {
	for north := -1; north <= 1; north++ {
		for east := -1; east <= 1; east++ {
			other := g.offset(cell, east, north)
			switch {
			case other < 0 || other == cell:
			case east == 0 || north == 0:
				visit(other, 2)
			default:
				visit(other, 1)
			}
		}
	}
}

// commonestAround is the class that most cells around one have; of equals the
// one nearer in hours.
func (c *classing) commonestAround(cell int) int8 {
	var weight [mostClasses]int
	c.around(cell, func(other, w int) {
		if k := c.class[other]; k != none {
			weight[k] += w
		}
	})
	best := int8(0)
	for k := range int8(len(c.limits) + 1) {
		nearer := c.limits.distance(c.Values[cell], k) < c.limits.distance(c.Values[cell], best)
		if weight[k] > weight[best] || weight[k] == weight[best] && weight[k] > 0 && nearer {
			best = k
		}
	}
	return best
}

// hoursAround is the mean of the hours of the cells around one.
func (c *classing) hoursAround(cell int) float64 {
	sum, n := 0.0, 0
	c.around(cell, func(other, w int) {
		if h := c.Values[other]; !math.IsNaN(h) {
			sum, n = sum+float64(w)*h, n+w
		}
	})
	return sum / float64(n)
}

// carryOn gives the cells around the turf the class of those nearest by.
func (c *classing) carryOn() {
	all := make([]bool, len(c.class))
	for cell := range all {
		all[cell] = true
	}
	c.grow(all)
}
