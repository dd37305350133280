package zones

import (
	"slices"

	"example.org/turfplat/geo/ingest"
)

// standing are the objects of the site, but for zones that a division wrote.
func (x *extending) standing() []*Object {
	var standing []*Object
	for _, o := range slices.Concat(x.site.Objects, x.site.Beyond) {
		if isDerived(o.Feature) {
			continue
		}
		f := o.Feature
		if o.fromTags {
			o = x.relaid(restated(f, x.site.compiled(o)), o.Place)
		}
		if o != nil {
			x.inFile[o] = f
			standing = append(standing, o)
		}
	}
	return standing
}

// restated returns a feature whose kind its map tags tell as one that states
// it, and otherwise as it was.
func restated(f, compiled *ingest.Feature) *ingest.Feature {
	stated := *f
	stated.Geometry, stated.Properties = compiled.Geometry, f.Properties.Clone()
	for _, key := range compiled.Properties.Keys() {
		if raw, _ := compiled.Properties.Raw(key); key != "id" && key != "name" && key != "tags" {
			stated.Properties.Set(key, raw)
		}
	}
	return &stated
}

// gather lays the objects of new data into the site's frame, set off against
// its outline and against their own.
func (x *extending) gather(c *ingest.Collection) {
	outlines := x.site.Of(Outline)
	n := &Site{collection: c, Frame: x.site.Frame, Objects: outlines, Problems: slices.Clone(c.Problems)}
	n.lay(n.cast(x.how.Key), x.how.Repair)
	near := n.vicinityOf()
	n.Objects = n.Objects[len(outlines):]
	n.readAttribution()
	x.Problems = append(x.Problems, n.Problems...)
	x.New.Site = n
	for _, o := range slices.Concat(n.Objects, n.Beyond) {
		switch {
		case isDerived(o.Feature):
		case !near(o):
			x.New.far++
		default:
			if o = x.relaid(n.anew(o), o.Place); o != nil {
				x.New.took = append(x.New.took, o)
			}
		}
	}
}

// anew is the feature of an object in another file, where its place in this
// one is no id.
func (s *Site) anew(o *Object) *ingest.Feature {
	f := s.compiled(o)
	if o.Feature.ID == "" && f.ID != "" {
		f.Properties.Delete("id")
		f.ID = ""
	}
	return f
}

// relaid lays a feature that states its kind into the site's frame as an
// object, nil if it cannot be.
func (x *extending) relaid(f *ingest.Feature, place ingest.Place) *Object {
	apart := &Site{Frame: x.site.Frame, collection: x.site.collection}
	r, plays := apart.roleOf(f, x.how.Key, place)
	if !plays {
		x.Problems = append(x.Problems, apart.Problems...)
		return nil
	}
	o, err := apart.object(casting{f, place, r})
	x.prints.fail(err)
	return o
}
