package zones

import (
	"cmp"
	"math"
	"slices"

	"example.org/turfplat/geo"
)

// Changed says what became of an object when a site was surveyed again.
type Changed string

// What may become of an object, in the order in which it is told.
const (
	Added     Changed = "added"
	Split     Changed = "split"    // out of one that fell into several
	Merged    Changed = "merged"   // out of several that grew together
	Replaced  Changed = "replaced" // its edge; id, name and what its owner says of it stay
	Retagged  Changed = "retagged" // its map tags; its edge stays
	Kept      Changed = "kept"     // as it was, against the new survey
	Unchanged Changed = "unchanged"
)

var changedOrder = []Changed{Added, Split, Merged, Replaced, Retagged, Kept, Unchanged}

// A Change tells what became of one object.
type Change struct {
	What    Changed  `json:"change"`
	ID      string   `json:"id"` // "" if the file gives it none
	Kind    Kind     `json:"kind"`
	Name    string   `json:"name"`
	Parents []string `json:"parents,omitempty"` // ids of what it was split or merged out of
	Before  Extent   `json:"before,omitzero"`   // of what stood there
	After   Extent   `json:"after,omitzero"`    // as surveyed now, taken over or not
	Why     string   `json:"why,omitempty"`     // it was kept
}

// An Extent is how large an object is: the area of its ground as traced, with
// the half-width of its 95 % interval, or the length of a line that has none.
// A point has neither.
type Extent struct {
	AreaM2  float64 `json:"area_m2,omitempty"`
	CI95M2  float64 `json:"ci95_m2,omitempty"`
	LengthM float64 `json:"length_m,omitempty"`
}

// Label names the object for people: its name, else its id.
func (c Change) Label() string {
	if c.Name != "" {
		return c.Name
	}
	return c.ID
}

// Alters reports whether the change alters the site.
func (c Change) Alters() bool { return c.What != Unchanged && c.What != Kept }

// rewriting is the share by which an area or a length may change when it is
// written as degrees and read again.
const rewriting = 1e-6

// Moved reports whether the second survey measures anything else than the
// first, were it within what counts as unchanged.
func (c Change) Moved() bool {
	return !(within(rewriting, c.Before.AreaM2, c.After.AreaM2) && within(rewriting, c.Before.LengthM, c.After.LengthM))
}

// extentOf measures an object as it was traced.
func (s *Site) extentOf(o *Object) Extent {
	if !o.Ground.Empty() {
		sigma := geo.AreaSigma(o.Ground, []geo.Trace{{Rings: o.traced, Error: o.Error}})
		return Extent{AreaM2: float64(s.Frame.Area(o.Ground)), CI95M2: interval95 * float64(sigma)}
	}
	length := geo.Length(0)
	for _, l := range o.Lines {
		length += s.Frame.LineLength(l)
	}
	return Extent{LengthM: float64(length)}
}

// together is the extent of several objects, their errors independent.
func (s *Site) together(objects []*Object) Extent {
	var all Extent
	variance := 0.0
	for _, o := range objects {
		e := s.extentOf(o)
		all.AreaM2 += e.AreaM2
		all.LengthM += e.LengthM
		variance += e.CI95M2 * e.CI95M2
	}
	all.CI95M2 = math.Sqrt(variance)
	return all
}

func sortChanges(changes []Change) {
	slices.SortStableFunc(changes, func(a, b Change) int {
		return cmp.Or(
			cmp.Compare(slices.Index(changedOrder, a.What), slices.Index(changedOrder, b.What)),
			cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.ID, b.ID))
	})
}
