package sun

import (
	"cmp"
	"errors"
	"slices"

	"example.org/turfplat/geo"
)

// touching is how near, in metres, edges of two pieces lie that were cut apart.
const touching = 1e-5

// mend gives each piece that cannot be walked, the smallest first, to the one
// beside it that is nearest in hours, of equals to the one with which it
// shares the longest edge. Then each piece is classed by the hours it has come
// to, and those that have nothing beside them with the turf that can be walked.
func (d *dividing) mend() error {
	alone := make(map[*piece]bool)
	for {
		p := d.leastUnwalkable(alone)
		if p == nil {
			break
		}
		into, err := d.bestBeside(p)
		if err != nil {
			return err
		}
		if into == nil {
			alone[p] = true
			continue
		}
		if err := d.unite(into, p); err != nil {
			return err
		}
	}
	for _, p := range d.pieces {
		p.class = d.limits.class(p.hours)
	}
	d.classIslands()
	return nil
}

func (d *dividing) leastUnwalkable(alone map[*piece]bool) *piece {
	var least *piece
	for _, p := range d.pieces {
		if !p.walkable && !alone[p] && (least == nil || p.area < least.area) {
			least = p
		}
	}
	return least
}

// A joint is a piece that another one, put into it, grows together with.
type joint struct {
	*piece
	joined geo.Region
	far    float64 // hours between the one and the class of the other
	edge   geo.Length
}

// bestBeside returns the best piece to put another one into; nil if it hangs
// together with none.
func (d *dividing) bestBeside(p *piece) (*joint, error) {
	var joints []joint
	around := p.region.Bounds().Grown(touching)
	for _, o := range d.pieces {
		if o == p || !o.region.Bounds().Meets(around) {
			continue
		}
		edge := d.frame.Contact(p.region, o.region, touching)
		if edge == 0 {
			continue
		}
		joined, err := geo.Union(o.region, p.region)
		if err != nil {
			return nil, err
		}
		if len(joined.Polygons()) <= len(o.region.Polygons()) {
			joints = append(joints, joint{o, joined, d.limits.distance(p.hours, o.class), edge})
		}
	}
	if len(joints) == 0 {
		return nil, nil
	}
	best := slices.MinFunc(joints, func(a, b joint) int {
		return cmp.Or(cmp.Compare(a.far, b.far), cmp.Compare(b.edge, a.edge))
	})
	return &best, nil
}

// unite puts a piece into another one. The hours of both are those of the cells
// in them, as they are told, not a mean by area: of a narrow piece, which few
// cells have their middle in, that is another figure.
func (d *dividing) unite(into *joint, p *piece) error {
	d.pieces = slices.DeleteFunc(d.pieces, func(o *piece) bool { return o == p })
	o := into.piece
	o.area += p.area
	o.region = into.joined
	o.hours, _ = d.field.Mean(o.region, d.limits)
	if o.walkable {
		return nil
	}
	return d.tread(o)
}

// classIslands gives pieces that cannot be walked the class, of those that
// others can be walked in, that is nearest to their hours. If there is no such
// class all is classed by the mean of the whole.
func (d *dividing) classIslands() {
	var walked []int8
	var hours, area float64
	for _, p := range d.pieces {
		if p.walkable {
			walked = append(walked, p.class)
		}
		hours, area = hours+p.area*p.hours, area+p.area
	}
	if len(walked) == 0 {
		walked = []int8{d.limits.class(hours / area)}
	}
	slices.Sort(walked)
	for _, p := range d.pieces {
		if !p.walkable {
			p.class = slices.MinFunc(walked, func(a, b int8) int {
				return cmp.Compare(d.limits.distance(p.hours, a), d.limits.distance(p.hours, b))
			})
		}
	}
}

// patches gathers the pieces by class.
func (d *dividing) patches() ([]Patch, error) {
	var patches []Patch
	var errs []error
	for k := range len(d.limits) + 1 {
		var regions []geo.Region
		for _, p := range d.pieces {
			if p.class == int8(k) {
				regions = append(regions, p.region)
			}
		}
		if len(regions) == 0 {
			continue
		}
		region, err := geo.Union(regions...)
		errs = append(errs, err)
		p := Patch{Class: k, Region: region}
		p.Hours, p.Doubtful = d.field.Mean(region, d.limits)
		patches = append(patches, p)
	}
	return patches, errors.Join(errs...)
}
