package render

import (
	"slices"
	"testing"
)

// A cutline is on the map and in the key only where it parts nothing: else it is
// the edge of zones.
func TestCutlinesThatAreZoneEdgesAreLeftOut(t *testing.T) {
	lawn := func(more func(*inventedSite)) *inventedSite {
		s := &inventedSite{header: map[string]any{"id": "lawn", "name": "Lawn"}}
		s.area("turf", "lawn", "Lawn", oblong(0, 0, 40, 20))
		more(s)
		return s
	}
	for _, c := range []struct {
		name   string
		site   *inventedSite
		parted bool // into more than one zone
		drawn  bool
	}{
		{"right across", lawn(func(s *inventedSite) { s.line("cutline", "cut", "", xy(20, -2, 20, 22)) }), true, false},
		{"run on to the edge", lawn(func(s *inventedSite) { s.line("cutline", "cut", "", xy(20, 8, 22, 13)) }), true, false},
		{"askew to the frame, with a bend", lawn(func(s *inventedSite) { s.line("cutline", "cut", "", xy(3, -2, 11.3, 9.7, 37, 23)) }), true, false},
		{"through a strip on which nothing is applied", lawn(func(s *inventedSite) {
			s.area("keepout", "keep", "Keep out", oblong(18, 8, 22, 12))
			s.line("cutline", "cut", "", xy(20, -2, 20, 22))
		}), true, false},
		{"a corner cut off that is no zone", lawn(func(s *inventedSite) { s.line("cutline", "cut", "", xy(-1, 2, 2, -1)) }), false, true},
		{"a pen that slipped over the edge", lawn(func(s *inventedSite) { s.line("cutline", "cut", "", xy(-1, 1.3, 1.3, -1)) }), false, false},
		{"drawn since the zones were written", lawn(func(s *inventedSite) {
			s.area("zone", "zone/west", "West", oblong(0, 0, 20, 20), "derived", true)
			s.area("zone", "zone/east", "East", oblong(20, 0, 40, 20), "derived", true)
			s.line("cutline", "old", "", xy(20, -2, 20, 22))
			s.line("cutline", "new", "", xy(30, -2, 30, 22))
		}), true, true},
	} {
		d, sheet := drafted(t, c.site, MapOptions{})
		if parted := len(d.plat.Zones) > 1; parted != c.parted {
			t.Errorf("%s: %d zones", c.name, len(d.plat.Zones))
		}
		if told := slices.ContainsFunc(d.legend().entries, func(e legendEntry) bool { return e.text == "Cutline, parts nothing" }); told != c.drawn {
			t.Errorf("%s: the key tells a cutline: %v", c.name, told)
		}
		if drawn := len(group(sheet.Elements, "barriers")) > 0; drawn != c.drawn {
			t.Errorf("%s: a cutline is drawn: %v", c.name, drawn)
		}
		for o, lines := range d.uncut {
			if o.ID == "old" && len(lines) > 0 {
				t.Errorf("%s: %v of the line that parts the zones is told", c.name, lines)
			}
		}
	}
}
