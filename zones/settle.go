package zones

import (
	"bytes"
	"fmt"
	"slices"

	"example.org/turfplat/geo/ingest"
)

// settle decides between an object and its second survey.
func (x *extending) settle(old, new *Object) {
	c := Change{ID: old.Feature.ID, Kind: old.Kind, Name: old.Name, Before: x.site.extentOf(old), After: x.site.extentOf(new)}
	if old.Kind != new.Kind && isMapID(c.ID) {
		c.What, c.Why = Kept, fmt.Sprintf("it is %s in the map data", new.Kind)
		x.problem(ingest.Warning, "kind_differs", new.Place, fmt.Sprintf("is %s, which the site has as %s: left as it was", new.Kind, old.Kind), "change its kind in the site if the map is right")
		x.Changes = append(x.Changes, c)
		return
	}
	f := resurveyed(old, new)
	again := x.relaid(f, new.Place)
	if again == nil {
		return
	}
	c.After = x.site.extentOf(again)
	better := again.Error.Sigma < old.Error.Sigma
	switch {
	case old.Kind == new.Kind && !better && x.prints.steady(old, again, c.Before, c.After):
		c.What = x.retag(old, new)
	case outranked(old, new) != "":
		c.What, c.Why = Kept, outranked(old, new)
	default:
		c.What, c.Kind, c.Name = Replaced, again.Kind, again.Name
		c.ID = x.identified(f, new)
		x.succeed(old, f)
		x.tellDoubts(old, again)
	}
	x.Changes = append(x.Changes, c)
}

// identified gives a feature without an id that of its second survey, or a new
// one.
func (x *extending) identified(f *ingest.Feature, new *Object) string {
	if f.ID == "" {
		f.ID = x.freshID(new.Feature.ID, new.Kind)
		f.Properties.Set("id", f.ID)
	}
	return f.ID
}

// succeed gives features the place that an object has in the file.
func (x *extending) succeed(old *Object, heirs ...*ingest.Feature) { x.after[x.inFile[old]] = heirs }

// retag takes over the map tags of an object whose edge stays.
func (x *extending) retag(old, new *Object) Changed {
	f := retagged(old, new)
	if f == nil {
		return Unchanged
	}
	x.succeed(old, f)
	return Retagged
}

// tellDoubts warns of what a second survey hardly should do.
func (x *extending) tellDoubts(old, again *Object) {
	if before, after := old.Error.Sigma, again.Error.Sigma; after > before {
		x.problem(ingest.Warning, "less_sure", again.Place, fmt.Sprintf("its edge may be %.2g m off and takes the place of that of %q, which may be %.2g m off", float64(after), old.Label(), float64(before)),
			"leave it out to keep the earlier survey")
	}
	if old.Kind == again.Kind && x.prints.shared(x.prints.grownOf(old), x.prints.grownOf(again)) == 0 {
		x.problem(ingest.Warning, "id_elsewhere", again.Place, fmt.Sprintf("has the id of %q, which lay elsewhere, and takes its place", old.Label()), "if it is another one, give it an id of its own")
	}
}

// rearrange gives new objects the place of one that fell into them, or of
// several that one of them took in.
func (x *extending) rearrange(m match) {
	for _, old := range m.old {
		for _, new := range m.new {
			if why := outranked(old, new); why != "" {
				x.keep(m, why)
				return
			}
		}
	}
	var heirs []*ingest.Feature
	for _, new := range m.new {
		heirs = append(heirs, x.inherit(m, new))
	}
	for _, old := range m.old {
		x.succeed(old)
	}
	x.succeed(m.old[0], heirs...)
}

func (x *extending) keep(m match, why string) {
	for _, old := range m.old {
		c := Change{What: Kept, ID: old.Feature.ID, Kind: old.Kind, Name: old.Name, Before: x.site.extentOf(old), Why: why}
		if len(m.old) == 1 {
			c.After = x.site.together(m.new)
		}
		x.Changes = append(x.Changes, c)
	}
}

// inherit makes an object out of others, with what is said of all of them.
func (x *extending) inherit(m match, new *Object) *ingest.Feature {
	props := resurveyed(m.old[0], new).Properties
	for _, old := range m.old[1:] {
		dispute(&props, old.Feature.Properties, new.Feature.Properties)
	}
	if new.Name != "" {
		props.Set("name", new.Name)
	}
	var parents []string
	for _, old := range m.old {
		if old.Feature.ID != "" {
			parents = append(parents, old.Feature.ID)
		}
	}
	slices.Sort(parents)
	if len(parents) > 0 {
		props.Set("parents", parents)
	}
	props.Set("id", x.freshID(new.Feature.ID, new.Kind))
	f := ingest.NewFeature(props, new.Feature.Geometry)
	c := Change{What: Split, ID: f.ID, Kind: new.Kind, Parents: parents, Before: x.site.together(m.old), After: x.site.extentOf(new)}
	c.Name, _ = props.Text("name")
	if len(m.old) > 1 {
		c.What = Merged
	}
	x.Changes = append(x.Changes, c)
	return f
}

// dispute drops from props what another owner's word is against, in favour of
// the second survey's.
func dispute(props *ingest.Properties, other, again ingest.Properties) {
	for _, key := range props.Keys() {
		if key == "kind" || slices.Contains(surveyWords, key) || slices.Contains(widthWords, key) {
			continue
		}
		ours, _ := props.Raw(key)
		if theirs, ok := other.Raw(key); ok && bytes.Equal(ours, theirs) {
			continue
		}
		graft(props, again, []string{key})
	}
}

// add takes a new object in.
func (x *extending) add(o *Object) {
	f := *o.Feature
	f.Properties = f.Properties.Clone()
	if id := x.freshID(f.ID, o.Kind); id != f.ID {
		if f.ID != "" {
			x.problem(ingest.Warning, "id_taken", o.Place, fmt.Sprintf("has the id of another object, added as %q", id), "")
		}
		f.ID = id
		f.Properties.Set("id", id)
	}
	x.added = append(x.added, &f)
	x.Changes = append(x.Changes, Change{What: Added, ID: f.ID, Kind: o.Kind, Name: o.Name, After: x.site.extentOf(o)})
}

// tellLikely warns of a new cover that half covers one of its kind, or is half
// covered by it: perhaps it is the same, and stands in the file twice.
func (x *extending) tellLikely(o *Object, standing []*Object) {
	if o.Cover == "" {
		return
	}
	for _, old := range standing {
		if old.Kind != o.Kind || x.prints.apart(o, old) {
			continue
		}
		a, b := x.prints.of(o), x.prints.of(old)
		frame := x.site.Frame
		if x.prints.shared(a, b) > alike*min(frame.Area(a), frame.Area(b)) {
			x.problem(ingest.Warning, "added_over", o.Place, fmt.Sprintf("lies for the most part on %s %q, and is added beside it", old.Kind, old.Label()),
				"if it is the same, give it the same id")
		}
	}
}
