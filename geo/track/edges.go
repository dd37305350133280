package track

import (
	"fmt"

	"example.org/turfplat/geo"
)

// nest finds which rings lie in which.
func (r *report) nest() {
	rings := r.walk.Rings
	depth := make([]int, len(rings))
	for i := range rings {
		for j := range rings {
			if i == j || rings[j].Area <= rings[i].Area || !mostlyIn(r.regions[i], r.regions[j]) {
				continue
			}
			depth[i]++
			if w := rings[i].Within; w < 0 || rings[j].Area < rings[w].Area {
				rings[i].Within = j
			}
		}
	}
	for i := range rings {
		rings[i].Hole = depth[i]%2 == 1
	}
}

// mostlyIn reports whether nine in ten vertices of a region lie in another.
func mostlyIn(region, other geo.Region) bool {
	in, all := 0, 0
	for _, p := range region.Polygons()[0].Shell {
		all++
		if other.Contains(p) {
			in++
		}
	}
	return in*10 >= all*9
}

// moveEdges moves the outlines from where the receiver was carried to the
// edge of the ground.
func (r *report) moveEdges() {
	o := r.options
	if o.Offset == 0 || o.Side != Inside && o.Side != Outside {
		return
	}
	for i := range r.walk.Rings {
		g := &r.walk.Rings[i]
		d := float64(o.Offset)
		if (o.Side == Outside) != g.Hole {
			d = -d
		}
		region, err := r.regions[i].Buffer(d)
		if err != nil || len(region.Polygons()) != 1 {
			r.refuse("ring_offset", fmt.Sprintf("ring %d does not stay in one piece when its edge is moved by %s", g.Number, r.length(d)), "check the offset and its side")
			continue
		}
		before := g.Area
		g.measure(region, r.frame)
		r.step(Step{Ring: g.Number, Name: "offset", Text: fmt.Sprintf("edge moved by %+.2f m: %.1f m2 became %.1f m2", d, float64(before), float64(g.Area))})
	}
}

// ask puts the question of the offset to a walker who has not answered it.
func (r *report) ask() {
	if r.options.Side != NotStated || len(r.walk.Rings) == 0 {
		return
	}
	const example = 0.3 // m, a receiver in the hand on the side of the lawn; common practice, no source
	g := r.walk.Rings[0]
	r.note("offset_question", fmt.Sprintf("taken as walked on the edge; had you kept %s inside of it, ring %d would be %s larger than its %s",
		r.length(example), g.Number, r.area(example*float64(g.Perimeter)), r.area(float64(g.Area))), "say on which side of the edge you walked, and how far from it")
}
