package render

import (
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/zones"
)

// A pageLayer is a part of the map that a person may switch off.
type pageLayer struct {
	ID, Word string
	Groups   string // ids of what it switches, with spaces between them
	Off      bool   // at first
}

// layers lists the layers that have anything to show.
func (w *webPage) layers() []pageLayer {
	var all []pageLayer
	add := func(there bool, l pageLayer) {
		if there {
			all = append(all, l)
		}
	}
	has := func(kind zones.Kind) bool { return slices.ContainsFunc(w.plat.Site.Of(kind), w.draft.shows) }
	walked := func(s pageSection) bool { return len(s.Ticks) > 0 }
	lit := func(s pageSection) bool { return s.sun != nil }
	add(len(w.plat.Zones) > 0, pageLayer{"zones", "Zones", "map-zones " + w.groupsOf("under"), false})
	add(slices.ContainsFunc(w.sections, walked), pageLayer{"lanes", "Spread lanes", w.groupsOf("lanes") + " " + w.groupsOf("walk-starts"), false})
	for _, pass := range w.furtherPasses() {
		name := passGroup(pass)
		add(true, pageLayer{name[1:], fmt.Sprintf("Spread lanes, pass %d", pass), w.groupsOf("lanes"+name) + " " + w.groupsOf("walk-starts"+name), true})
	}
	add(!w.plat.Ground.Cover(zones.Bed).Empty(), pageLayer{"beds", "Beds", "map-cover-bed", false})
	add(has(zones.Tree), pageLayer{"trees", "Trees", "map-trees", false})
	add(has(zones.Hazard), pageLayer{"hazards", "Hazards", w.groupsOf("signs-hazard") + " " + w.groupsOf("names-hazard"), false})
	add(len(w.draft.fixesDrawn()) > 0, pageLayer{"fixes", "Fixes of the walks", "map-fixes", false})
	add(slices.ContainsFunc(w.sections, lit), pageLayer{"sun", "Hours of sun", "map-hours", true})
	add(true, pageLayer{"labels", "Names and figures", w.groupsOf("labels"), false})
	return all
}

// furtherPasses are the numbers of passes beyond the first for which a section has
// lanes.
func (w *webPage) furtherPasses() []int {
	most := 1
	for _, s := range w.sections {
		most = max(most, s.passes)
	}
	var further []int
	for pass := 2; pass <= most; pass++ {
		further = append(further, pass)
	}
	return further
}

// groupsOf are the ids of the groups of one name in all sections.
func (w *webPage) groupsOf(name string) string {
	var ids []string
	for i := range w.sections {
		ids = append(ids, "map-"+sectionGroup(i)+"-"+name)
	}
	return strings.Join(ids, " ")
}

// legendOfPage explains all that the map may show.
func (w *webPage) legendOfPage() legend {
	key := w.draft.legend()
	known := make(map[string]bool)
	for _, e := range key.entries {
		known[e.text] = true
	}
	for _, s := range w.sections {
		for _, e := range s.key.entries {
			if !known[e.text] {
				known[e.text] = true
				key.entries = append(key.entries, e)
			}
		}
	}
	return key
}
