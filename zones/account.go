package zones

import (
	"fmt"
	"maps"
	"slices"

	"example.org/turfplat/geo/ingest"
)

// Taken counts the objects of a kind in a site file.
type Taken struct {
	Kind          Kind `json:"kind"`
	Objects       int  `json:"objects"`
	DefaultWidth  int  `json:"default_width"`  // those of them that are lines drawn at a default width
	DefaultHeight int  `json:"default_height"` // those of them that stand at a default height
}

// Omitted counts objects that are not in a site file, and says why.
type Omitted struct {
	Reason  string `json:"reason"`
	Objects int    `json:"objects"`
}

// Taken tells what the site file is made of, a row a kind.
func (c Compilation) Taken() []Taken {
	all := []Taken{}
	for _, k := range slices.Sorted(maps.Keys(shapes)) {
		row := Taken{Kind: k}
		for _, o := range c.took {
			if o.Kind != k {
				continue
			}
			row.Objects++
			if o.Source == DefaultWidth {
				row.DefaultWidth++
			}
			if o.Stature.Height > 0 && o.Stature.From == Assumed {
				row.DefaultHeight++
			}
		}
		if row.Objects > 0 {
			all = append(all, row)
		}
	}
	return all
}

// Ignored tells what was well but left aside.
func (c Compilation) Ignored() []Omitted {
	placeless := 0
	for _, f := range c.Site.collection.Features {
		if f.Geometry == nil {
			placeless++
		}
	}
	rows := []Omitted{
		{"no kind, and no map tag that gives one", c.Site.idle},
		{fmt.Sprintf("farther than %d m from the outline", vicinity), c.far},
		{"no geometry", placeless},
	}
	return counted(append(rows, c.told(ingest.Note, leavingAside)...))
}

// LeftOut tells what was at fault and could not be taken. Problems say where
// it stands.
func (c Compilation) LeftOut() []Omitted { return counted(c.told(ingest.Warning, leavingOut)) }

// An omission is a problem that tells of objects that were not taken.
type omission struct{ code, reason string }

var leavingAside = []omission{
	{"osm_untagged", "ways without tags"},
	{"osm_redundant", "ways that say nothing beyond the area they bound"},
	{"osm_relation_other", "relations that are no areas"},
	{"osm_relation_untagged", "relations without tags"},
	{"osm_deleted", "objects that were deleted"},
	{"objects_repeated", "objects of another file as well"},
}

var leavingOut = []omission{
	{"osm_way_cut", "ways that lack nodes"},
	{"osm_nodes_unsaid", "ways that came without their nodes"},
	{"osm_relation_cut", "relations that lack ways or nodes"},
	{"osm_relation_open", "relations whose ways do not close"},
	{"osm_relation_crossed", "relations whose ways cross each other"},
	{"osm_relation_tags", "relations whose ways are tagged apart"},
	{"osm_position", "objects without a position on the globe"},
	{"osm_id", "objects without a number"},
	{"line_short", "lines of fewer than two points"},
	{"ring_short", "areas of fewer than three points"},
	{"ring_flat", "areas that go round nothing"},
}

// told counts the objects that problems tell of.
func (c Compilation) told(severity ingest.Severity, of []omission) []Omitted {
	rows := make([]Omitted, len(of))
	for i, o := range of {
		rows[i].Reason = o.reason
		for _, p := range c.Site.Problems {
			if p.Code == o.code && p.Severity == severity {
				rows[i].Objects += p.Number()
			}
		}
	}
	return rows
}

// counted are the rows that count something.
func counted(all []Omitted) []Omitted {
	return slices.DeleteFunc(all, func(o Omitted) bool { return o.Objects == 0 })
}

// Account tells in words what the site file is made of, and what is not in
// it.
func (c Compilation) Account() []string {
	var account []string
	for _, t := range c.Taken() {
		line := fmt.Sprintf("%d %s", t.Objects, t.Kind)
		if t.DefaultWidth > 0 {
			line += fmt.Sprintf(", %d of them lines drawn at a default width", t.DefaultWidth)
		}
		if t.DefaultHeight > 0 {
			line += fmt.Sprintf(", %d of them at a default height", t.DefaultHeight)
		}
		account = append(account, line)
	}
	for _, o := range c.Ignored() {
		account = append(account, fmt.Sprintf("ignored: %d (%s)", o.Objects, o.Reason))
	}
	for _, o := range c.LeftOut() {
		account = append(account, fmt.Sprintf("left out: %d (%s)", o.Objects, o.Reason))
	}
	return account
}
