package sun

import (
	"cmp"
	"maps"
	"slices"
)

// A blot is cells of one class that hang together by their edges.
type blot struct {
	class  int8
	cells  []int
	hours  float64     // sum over the cells
	beside map[int]int // edges in common with other blots
}

func (b *blot) mean() float64 { return b.hours / float64(len(b.cells)) }

// classTogether gives marked cells that have no class that of their mean hours,
// each stretch by itself.
func (c *classing) classTogether(marked []bool) {
	for _, b := range c.over(marked).blots() {
		c.paint(b, c.limits.class(b.mean()))
	}
}

// over is the marked cells that have no class, all of one.
func (c *classing) over(marked []bool) *classing {
	one := newClassing(c.Grid, c.limits)
	for cell, h := range c.Values {
		if one.Values[cell] = h; marked[cell] && c.class[cell] == none {
			one.class[cell] = 0
		}
	}
	return one
}

// absorb gives each blot under the least area, the smallest first, to the one
// beside it that is nearest in hours, of equals to the one with which it
// shares the longest edge. What has nothing beside it stays.
func (c *classing) absorb() {
	blots := c.blots()
	for {
		small := c.smallest(blots)
		if small < 0 {
			return
		}
		c.join(blots, small, c.nearestBeside(blots, small))
	}
}

// blots finds all blots, with what lies beside them.
func (c *classing) blots() []*blot {
	var blots []*blot
	of := make([]int, len(c.class))
	for cell := range of {
		of[cell] = -1
	}
	for start, k := range c.class {
		if k == none || of[start] >= 0 {
			continue
		}
		b := &blot{class: k, beside: make(map[int]int)}
		of[start], b.cells = len(blots), []int{start}
		for i := 0; i < len(b.cells); i++ {
			b.hours += c.Values[b.cells[i]]
			for s := side(0); s < 4; s++ {
				if other := c.beside(b.cells[i], s); c.classOf(other) == k && of[other] < 0 {
					of[other] = len(blots)
					b.cells = append(b.cells, other)
				}
			}
		}
		blots = append(blots, b)
	}
	c.countEdges(blots, of)
	return blots
}

// countEdges notes how many edges of cells each blot shares with each other.
func (c *classing) countEdges(blots []*blot, of []int) {
	for cell, own := range of {
		if own < 0 {
			continue
		}
		for s := side(0); s < 4; s++ {
			if other := c.beside(cell, s); other >= 0 && of[other] >= 0 && of[other] != own {
				blots[own].beside[of[other]]++
			}
		}
	}
}

// smallest returns the smallest blot under the least area that has something
// beside it; -1 if there is none.
func (c *classing) smallest(blots []*blot) int {
	least := figures["patch_area"] / (c.Step * c.Step)
	best := -1
	for i, b := range blots {
		if b == nil || len(b.beside) == 0 || float64(len(b.cells)) >= least {
			continue
		}
		if best < 0 || len(b.cells) < len(blots[best].cells) {
			best = i
		}
	}
	return best
}

func (c *classing) nearestBeside(blots []*blot, small int) int {
	b := blots[small]
	far := func(i int) float64 { return c.limits.distance(b.mean(), blots[i].class) }
	return slices.MinFunc(slices.Sorted(maps.Keys(b.beside)), func(i, j int) int {
		return cmp.Or(cmp.Compare(far(i), far(j)), cmp.Compare(b.beside[j], b.beside[i]))
	})
}

// join paints a blot like another one, and makes one of it and of all beside
// it that now have its class.
func (c *classing) join(blots []*blot, small, into int) {
	class := blots[into].class
	c.paint(blots[small], class)
	blots[small].class = class
	for _, other := range slices.Sorted(maps.Keys(blots[small].beside)) {
		if blots[other].class == class {
			merge(blots, small, other)
		}
	}
}

// merge puts blot b into blot a.
func merge(blots []*blot, a, b int) {
	to, from := blots[a], blots[b]
	if len(to.cells) < len(from.cells) {
		to.cells, from.cells = from.cells, to.cells
	}
	to.cells = append(to.cells, from.cells...)
	to.hours += from.hours
	for other, edges := range from.beside {
		delete(blots[other].beside, b)
		if other != a {
			to.beside[other] += edges
			blots[other].beside[a] += edges
		}
	}
	blots[b] = nil
}

func (c *classing) paint(b *blot, class int8) {
	for _, cell := range b.cells {
		c.class[cell] = class
	}
}
