package zones

import (
	"encoding/json"
	"slices"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// An Extension is a site file with a second survey worked into it.
type Extension struct {
	File     *ingest.Collection // nil if the new data is refused
	Changes  []Change           // objects of the site that the new data does not mention are not told
	Revision int                // of the file: one more if anything changed
	Problems []ingest.Problem   // of the new data, and of how it fits the site
	New      Compilation        // what was found in the new data; it has no file
}

// Extend works newly traced, walked or mapped objects into the site's file.
// What the new data does not mention stays. An object that it has as well
// keeps its id, its name and what else its owner says of it; its geometry and
// its error are replaced, unless the second survey is no better and tells
// nothing new (its area within 2 % and its edge within both errors), or is map
// data where the first was not.
//
// One and the same are objects of one id, unless they differ in kind and lie
// apart; else of one kind, if they have more
// than half of the ground in common that they cover together, each taken as
// far out as its edge may lie. Lines are compared at a breadth of 3 m at
// least, points as discs of 1.9 m, so that both may be 1 m off. An object that
// fell into parts, or several that grew together, give way to new ones, with
// new ids and the old ones as parents.
//
// New objects beyond 40 m of the outline are left out. The site must not be
// refused; the collection that it was made from is not changed.
func (s *Site) Extend(data *ingest.Collection, how Reading) Extension {
	x := newExtending(s, how)
	x.gather(data)
	if ingest.Refuses(x.Problems) {
		return x.Extension
	}
	x.work()
	if err := x.prints.err; err != nil {
		x.problem(ingest.Refusal, "overlay_failed", s.place(), err.Error(), "report the file: this should not happen")
	}
	if !ingest.Refuses(x.Problems) {
		x.finish()
	}
	return x.Extension
}

// Altered reports whether the file is another than it was.
func (x Extension) Altered() bool { return slices.ContainsFunc(x.Changes, Change.Alters) }

// extending is a site on its way to a longer file.
type extending struct {
	site   *Site
	how    Reading
	prints *footprints
	ids    map[string]bool
	inFile map[*Object]*ingest.Feature           // what the objects of the site stand for
	after  map[*ingest.Feature][]*ingest.Feature // what takes the place of a feature
	added  []*ingest.Feature
	Extension
}

func newExtending(s *Site, how Reading) *extending {
	x := &extending{site: s, how: how, prints: newFootprints(s.Frame), ids: make(map[string]bool),
		inFile: make(map[*Object]*ingest.Feature), after: make(map[*ingest.Feature][]*ingest.Feature)}
	for _, f := range s.collection.Features {
		x.ids[f.ID] = true
		for _, id := range parentsOf(f) {
			x.ids[id] = true
		}
	}
	return x
}

// parentsOf are the ids of what a feature was split or merged out of.
func parentsOf(f *ingest.Feature) []string {
	var ids []string
	if raw, ok := f.Properties.Raw("parents"); ok && json.Unmarshal(raw, &ids) != nil {
		return nil
	}
	return ids
}

func (x *extending) problem(severity ingest.Severity, code string, place ingest.Place, text, hint string) {
	x.Problems = append(x.Problems, ingest.Problem{Severity: severity, Code: code, Place: place, Text: text, Hint: hint})
}

// work matches the objects of the site with those of the new data and settles
// what becomes of each.
func (x *extending) work() {
	standing := x.standing()
	m := newMatching(x.prints, standing, x.New.took)
	for _, found := range m.found {
		if len(found.old) == 1 && len(found.new) == 1 {
			x.settle(found.old[0], found.new[0])
		} else {
			x.rearrange(found)
		}
	}
	for _, n := range m.left(m.new) {
		x.add(n)
		x.tellLikely(n, standing)
	}
}

// finish writes the file, and what concerns the site as a whole.
func (x *extending) finish() {
	sortChanges(x.Changes)
	c := x.site.collection
	x.File = &ingest.Collection{Source: c.Source, Line: c.Line, Members: slices.Clone(c.Members)}
	for _, f := range c.Features {
		if after, ok := x.after[f]; ok {
			x.File.Features = append(x.File.Features, after...)
		} else {
			x.File.Features = append(x.File.Features, f)
		}
	}
	x.File.Features = append(x.File.Features, x.added...)
	if x.how.Region != "" {
		x.File.SetWithin("site", "region", x.how.Region)
	}
	if x.Revision = x.site.Revision; !x.Altered() {
		return
	}
	x.Revision++
	x.writeHeader()
	x.tellZones()
}

// writeHeader gives the site its new revision, and its id if that was only the
// name of its file.
func (x *extending) writeHeader() {
	if raw, ok := x.site.collection.Member("site"); !ok || !hasID(raw) {
		x.File.SetWithin("site", "id", x.site.ID)
	}
	x.File.SetWithin("site", "revision", x.Revision)
	named := x.site.Attribution
	for _, maker := range strings.Split(x.New.Site.Attribution, "; ") {
		if named == "" {
			named = maker
		} else if !strings.Contains(named, maker) {
			named += "; " + maker
		}
	}
	if named != x.site.Attribution {
		x.File.SetMember("attribution", named)
	}
}

func hasID(header json.RawMessage) bool {
	var h struct {
		ID any `json:"id"`
	}
	return json.Unmarshal(header, &h) == nil && h.ID != nil && h.ID != ""
}

// tellZones warns of zones that were laid on other ground.
func (x *extending) tellZones() {
	moved := slices.ContainsFunc(x.Changes, func(c Change) bool { return c.Alters() && c.What != Retagged && shapes[c.Kind] != point })
	if moved && slices.ContainsFunc(x.File.Features, isDerived) {
		x.problem(ingest.Warning, "zones_outdated", x.site.place(), "zones were written before the ground changed", "run zone again")
	}
}

// freshID is an id that nothing in the file has or had: the one wanted, else
// one made of the kind.
func (x *extending) freshID(wanted string, k Kind) string {
	if wanted == "" {
		wanted = string(k)
	}
	return fresh(wanted, x.ids)
}
