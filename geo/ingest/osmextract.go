package ingest

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/paulmach/orb"
)

// An osmKind is one of the three kinds of objects of OpenStreetMap.
type osmKind uint8

const (
	osmNode osmKind = iota
	osmWay
	osmRelation
)

var osmKindNames = [...]string{osmNode: "node", osmWay: "way", osmRelation: "relation"}

func (k osmKind) String() string { return osmKindNames[k] }

// osmKindOf finds a kind by its name.
func osmKindOf(name string) (osmKind, bool) {
	i := slices.Index(osmKindNames[:], name)
	return osmKind(max(i, 0)), i >= 0
}

// osmID names an object, as in osm:way/123.
func osmID(k osmKind, id int64) string { return fmt.Sprintf("osm:%v/%d", k, id) }

// An osmObject is one object of an extract.
type osmObject struct {
	kind    osmKind
	id      int64
	tags    []Member    // values are JSON strings
	nodes   []int64     // of a way
	unnamed bool        // the nodes came without ids
	members []osmMember // of a relation
}

type osmMember struct {
	kind osmKind
	id   int64
	role string
}

// A mapNode is where a node is.
type mapNode struct {
	id int64
	at orb.Point
}

// An extract gathers the objects of a map extract, which may come in any order
// and more than once.
type extract struct {
	limits    Limits
	spent     struct{ ways, members, tags int }
	nodes     []mapNode
	points    []osmObject // nodes with tags
	ways      []osmObject
	relations []osmObject
	texts     osmTexts
	findings  findings // about objects that are noise one by one
	unnamed   int      // nodes given without an id
}

func newExtract(limits Limits) *extract { return &extract{limits: limits, texts: newOSMTexts()} }

// place adds the position of a node.
func (e *extract) place(id int64, at orb.Point) *fault {
	if rule := checkDegrees(at); rule != nil {
		if rule.severity == Refusal {
			e.leaveOut("osm_position", osmID(osmNode, id)+" is off the globe", &at)
			return nil
		}
		at[0] = rounded(wrap(at[0]))
	}
	if len(e.nodes) == e.limits.Nodes {
		return beyond("limit_nodes", e.limits.Nodes, "nodes")
	}
	e.nodes = append(e.nodes, mapNode{id, at})
	return nil
}

// unnamedNode gives a node that came without an id one that no editor gives.
func (e *extract) unnamedNode() int64 {
	e.unnamed++
	return math.MinInt64 + int64(e.unnamed)
}

// isUnnamed reports whether an id was given by unnamedNode.
func isUnnamed(id int64) bool { return id < math.MinInt64/2 }

// memberLine adds the way that a relation's last member, which came with its
// geometry, stands for.
func (e *extract) memberLine(o osmObject, nodes []int64) *fault {
	if len(o.members) == 0 || o.members[len(o.members)-1].kind != osmWay {
		return nil
	}
	return e.add(osmObject{kind: osmWay, id: o.members[len(o.members)-1].id, nodes: nodes, unnamed: true})
}

// deleted counts an object that is no more.
func (e *extract) deleted(o *osmObject) {
	e.found(finding{
		severity: Note, code: "osm_deleted", plural: "objects",
		text: osmID(o.kind, o.id) + " is marked as deleted, left aside",
	})
}

// remarked passes on what the server says, which is that the data are not whole.
func (e *extract) remarked(text string) {
	e.found(finding{
		severity: Warning, code: "osm_remark", text: "the server that made it says: " + Quoted(strings.TrimSpace(text)), plural: "times",
	})
}

// leaveOut notes an object that cannot be used.
func (e *extract) leaveOut(code, text string, near *orb.Point) {
	e.found(finding{severity: Warning, code: code, text: text + ", left out", near: near, plural: "objects"})
}

// found notes something, or counts it.
func (e *extract) found(f finding) { e.findings.add(f) }

// tag adds a tag to an object.
func (e *extract) tag(o *osmObject, key, value string) *fault {
	if e.spent.tags++; e.spent.tags > e.limits.Tags {
		return beyond("limit_tags", e.limits.Tags, "tags")
	}
	o.tags = append(o.tags, Member{e.texts.name(key), e.texts.value(value)})
	return nil
}

// node adds a node to a way.
func (e *extract) node(o *osmObject, id int64) *fault {
	o.nodes = append(o.nodes, id)
	return e.spendMember()
}

// member adds a member to a relation.
func (e *extract) member(o *osmObject, m osmMember) *fault {
	m.role = e.texts.name(m.role)
	o.members = append(o.members, m)
	return e.spendMember()
}

func (e *extract) spendMember() *fault {
	if e.spent.members++; e.spent.members > e.limits.Members {
		return beyond("limit_members", e.limits.Members, "nodes of ways and members of relations")
	}
	return nil
}

// add takes an object as it was read; its slices may be used again.
func (e *extract) add(o osmObject) *fault {
	if o.kind == osmNode {
		return e.addPoint(o)
	}
	o.tags = slices.Clone(o.tags)
	o.nodes = slices.Clone(o.nodes)
	o.members = slices.Clone(o.members)
	if o.kind == osmWay {
		e.ways = append(e.ways, o)
	} else {
		e.relations = append(e.relations, o)
	}
	if e.spent.ways++; e.spent.ways > e.limits.Ways {
		return beyond("limit_ways", e.limits.Ways, "ways and relations")
	}
	return nil
}

// addPoint takes a node, if its tags say anything.
func (e *extract) addPoint(o osmObject) *fault {
	if !slices.ContainsFunc(o.tags, telling) {
		return nil
	}
	if len(e.points) == e.limits.Features {
		return beyond("limit_features", e.limits.Features, "features")
	}
	e.points = append(e.points, osmObject{kind: osmNode, id: o.id, tags: slices.Clone(o.tags)})
	return nil
}

// settle sorts the objects by id and makes one of those given more than once.
func (e *extract) settle() {
	slices.SortFunc(e.nodes, func(a, b mapNode) int {
		return cmp.Or(cmp.Compare(a.id, b.id), slices.Compare(a.at[:], b.at[:]))
	})
	kept := e.nodes[:0]
	for _, n := range e.nodes {
		if last := len(kept) - 1; last >= 0 && kept[last].id == n.id {
			e.again(kept[last], n)
			continue
		}
		kept = append(kept, n)
	}
	e.nodes = kept
	e.points = settledObjects(e.points)
	e.ways = settledObjects(e.ways)
	e.relations = settledObjects(e.relations)
}

// again notes a node that was given before, if it lies elsewhere now.
func (e *extract) again(n, later mapNode) {
	if n.at != later.at {
		e.found(finding{
			severity: Warning, code: "osm_moved", near: &n.at, plural: "nodes",
			text: osmID(osmNode, n.id) + " is given at two places, took the western one",
		})
	}
}

// settledObjects sorts objects by id and merges those with the same: servers
// give an object once with its tags and once for those that refer to it.
func settledObjects(objects []osmObject) []osmObject {
	slices.SortStableFunc(objects, func(a, b osmObject) int { return cmp.Compare(a.id, b.id) })
	kept := objects[:0]
	for _, o := range objects {
		slices.SortStableFunc(o.tags, func(a, b Member) int { return cmp.Compare(a.Name, b.Name) })
		if last := len(kept) - 1; last >= 0 && kept[last].id == o.id {
			kept[last].merge(o)
			continue
		}
		kept = append(kept, o)
	}
	return kept
}

// merge takes over what a later giving of the object says.
func (o *osmObject) merge(later osmObject) {
	if len(later.tags) > 0 {
		o.tags = later.tags
	}
	if len(later.nodes) > 0 && (len(o.nodes) == 0 || !later.unnamed) {
		o.nodes, o.unnamed = later.nodes, later.unnamed
	}
	if len(later.members) > 0 {
		o.members = later.members
	}
}

// at returns the position of a node.
func (e *extract) at(id int64) (orb.Point, bool) {
	i, ok := slices.BinarySearchFunc(e.nodes, id, func(n mapNode, id int64) int { return cmp.Compare(n.id, id) })
	if !ok {
		return orb.Point{}, false
	}
	return e.nodes[i].at, true
}

// wayOf returns the way with an id.
func (e *extract) wayOf(id int64) (*osmObject, bool) {
	i, ok := slices.BinarySearchFunc(e.ways, id, func(o osmObject, id int64) int { return cmp.Compare(o.id, id) })
	if !ok {
		return nil, false
	}
	return &e.ways[i], true
}
