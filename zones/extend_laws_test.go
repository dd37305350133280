package zones

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// extended extends a site file with others and must not refuse them.
func extended(t failer, site, data []byte) Extension {
	t.Helper()
	s := siteOf(t, site)
	if s.Refused() {
		t.Fatalf("site refused: %s", told(s.Problems))
	}
	x := s.Extend(collectionOf(t, data), Reading{Key: builtInKey})
	if x.File == nil {
		t.Fatalf("refused: %s", told(x.Problems))
	}
	return x
}

func fileOf(t failer, c *ingest.Collection) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := c.WriteGeoJSON(&b); err != nil {
		t.Fatalf("not written: %v", err)
	}
	return b.Bytes()
}

// asWritten is a sketch as the program writes it.
func (s sketch) asWritten(t failer, members string) []byte {
	t.Helper()
	return fileOf(t, collectionOf(t, s.file(home, members)))
}

// surveyedAgain draws a second survey of a sketch: some of its objects, each a
// little elsewhere, some without their id, and others that are new.
func (s sketch) surveyedAgain(t *rapid.T) sketch {
	d := &drawing{T: t, coarse: rapid.Bool().Draw(t, "coarse")}
	for i, it := range s {
		if rapid.IntRange(0, 2).Draw(t, "left out") == 0 {
			continue
		}
		if rapid.Bool().Draw(t, "without its id") {
			it.props = strings.Replace(it.props, `"id":`, `"was":`, 1)
		}
		if rapid.Bool().Draw(t, "walked") {
			it.props += `,"source":"walked"`
		}
		it.lines = slices.Clone(it.lines)
		east, north := d.size(-1, 1), d.size(-1, 1)
		for j, l := range it.lines {
			it.lines[j] = slices.Clone(l)
			for k := range l {
				it.lines[j][k] = geo.XY{X: l[k].X + east, Y: l[k].Y + north}
			}
		}
		d.add(it)
		if len(it.lines[0]) == 5 && rapid.Bool().Draw(t, "in two") {
			d.inTwo(i)
		}
	}
	d.several("new bed", 2, func(id string) { d.add(covering(Bed, id, d.blob(15, 1, 6))) })
	d.several("new oak", 2, func(id string) { at := d.at(20); d.add(pointAt(kind(Tree, id), at.X, at.Y)) })
	return d.sketch
}

// inTwo divides the four-cornered ring that was drawn last.
func (d *drawing) inTwo(n int) {
	it := d.sketch[len(d.sketch)-1]
	if it.geometry != "Polygon" {
		return
	}
	d.sketch = d.sketch[:len(d.sketch)-1]
	middle := func(a, b geo.XY) geo.XY { return geo.XY{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2} }
	r := it.lines[0]
	low, high := middle(r[1], r[2]), middle(r[3], r[0])
	props := func(part int) string {
		return strings.NewReplacer(`"id":`, fmt.Sprintf(`"id":"part-%d-%d","was":`, n, part)).Replace(it.props)
	}
	d.add(polygon(props(1), geo.Ring{r[0], r[1], low, high}))
	d.add(polygon(props(2), geo.Ring{high, low, r[2], r[3]}))
}

func TestExtendingWithNothingOrItselfChangesNothing(t *testing.T) {
	t.Parallel()
	check(t, 150, func(t *rapid.T) {
		s := drawProperty(t)
		if rapid.Bool().Draw(t, "without ids") {
			for i := range s {
				s[i].props = strings.Replace(s[i].props, `"id":`, `"was":`, 1)
			}
		}
		site := s.asWritten(t, `"site":{"id":"a1","revision":3,"unheard":{"of":[1]}},"also":"kept"`)
		nothing := extended(t, site, sketch{polygon(kind(ZoneKind, "z", `"derived":true`), at(0, 0, 1, 1))}.file(home, ""))
		itself := extended(t, site, sketch(rapid.Permutation(s).Draw(t, "order")).asWritten(t, ""))
		for _, x := range []Extension{nothing, itself} {
			if got := fileOf(t, x.File); x.Altered() || x.Revision != 3 || !bytes.Equal(got, site) {
				t.Fatalf("changed %s\n%s\nwas\n%s", asJSON(t, x.Changes), got, site)
			}
		}
		if len(itself.Changes) < len(s) {
			t.Errorf("%d of %d objects found again", len(itself.Changes), len(s))
		}
	})
}

func TestExtendingKeepsWhatIsThereAndDoesNotHangOnOrder(t *testing.T) {
	t.Parallel()
	check(t, 150, func(t *rapid.T) {
		s := drawProperty(t)
		again := s.surveyedAgain(t)
		if len(again) == 0 {
			return
		}
		site := s.asWritten(t, `"site":{"revision":3},"also":"kept"`)
		x := extended(t, site, again.file(home, ""))
		file := fileOf(t, x.File)

		other := extended(t, site, sketch(rapid.Permutation(again).Draw(t, "order")).file(home, ""))
		if got := fileOf(t, other.File); !bytes.Equal(got, file) || asJSON(t, other.Changes) != asJSON(t, x.Changes) {
			t.Errorf("in another order\n%s\nnot\n%s", got, file)
		}
		checkIDsThere(t, collectionOf(t, site), collectionOf(t, file))
		if want := 3 + map[bool]int{true: 1}[x.Altered()]; siteOf(t, file).Revision != want || x.Revision != want {
			t.Errorf("revision %d, want %d", x.Revision, want)
		}
		if s := siteOf(t, file); s.Refused() {
			t.Errorf("refused: %s\n%s", told(s.Problems), file)
		}
	})
}

// apart leaves out objects that lie near others of their kind.
func (s sketch) apart() sketch {
	var kept sketch
	var rooms []geo.Bounds
	for _, it := range s {
		room := geo.Region{}.Bounds()
		for _, l := range it.lines {
			for _, p := range l {
				room = room.With(p)
			}
		}
		room = room.Grown(4)
		sort := strings.SplitN(it.props, ",", 2)[0] // its kind, or the tag that tells it
		near := false
		for i, k := range kept {
			near = near || rooms[i].Meets(room) && (strings.HasPrefix(k.props, sort) || !strings.HasPrefix(sort, `"kind"`))
		}
		if !near {
			kept, rooms = append(kept, it), append(rooms, room)
		}
	}
	return kept
}

// Where objects of a kind lie apart, it is plain which is which, and working
// the same survey in once more changes nothing.
func TestExtendingOnceMoreChangesNothing(t *testing.T) {
	t.Parallel()
	check(t, 150, func(t *rapid.T) {
		s := drawProperty(t).apart()
		again := s.surveyedAgain(t).apart()
		if len(again) == 0 {
			return
		}
		x := extended(t, s.asWritten(t, ""), again.file(home, ""))
		file := fileOf(t, x.File)
		twice := extended(t, file, again.file(home, ""))
		if got := fileOf(t, twice.File); !bytes.Equal(got, file) {
			t.Errorf("once more changes %s\n%s\nto\n%s\nhaving changed %s", asJSON(t, twice.Changes), file, got, asJSON(t, x.Changes))
		}
	})
}

// checkIDsThere proves that each id of a site stands in its extension as often
// as before, or among the parents of something.
func checkIDsThere(t failer, before, after *ingest.Collection) {
	t.Helper()
	parents := make(map[string]bool)
	for _, f := range after.Features {
		for _, id := range parentsOf(f) {
			parents[id] = true
		}
	}
	now := countIDs(after)
	for id, count := range countIDs(before) {
		if now[id] != count && !(parents[id] && now[id] < count) {
			t.Errorf("id %q stands there %d times, was %d times, parent: %t", id, now[id], count, parents[id])
		}
	}
}

func countIDs(c *ingest.Collection) map[string]int {
	count := make(map[string]int)
	for _, f := range c.Features {
		if f.ID != "" {
			count[f.ID]++
		}
	}
	return count
}

// Whatever is traced, new data is either refused for a reason or worked in.
func TestScrawlsAreWorkedInOrRefused(t *testing.T) {
	t.Parallel()
	check(t, 150, func(t *rapid.T) {
		scrawled := func(most int) sketch {
			d := &drawing{T: t, coarse: rapid.Bool().Draw(t, "coarse")}
			for range rapid.IntRange(1, most).Draw(t, "objects") {
				d.scrawl(rapid.IntRange(0, most).Draw(t, "id"))
			}
			return d.sketch
		}
		how := Reading{Key: builtInKey, Repair: true}
		s := NewSite(collectionOf(t, scrawled(8).file(home, "")), how)
		if s.Refused() {
			return
		}
		before := fileOf(t, s.collection)
		x := s.Extend(collectionOf(t, scrawled(8).file(home, "")), how)
		if after := fileOf(t, s.collection); !bytes.Equal(after, before) {
			t.Errorf("changed what it was made from\n%s\nto\n%s", before, after)
		}
		if x.File == nil {
			if !ingest.Refuses(x.Problems) || slices.Contains(codes(x.Problems), "overlay_failed") {
				t.Errorf("not refused for a reason: %s", told(x.Problems))
			}
			return
		}
		checkIDsThere(t, s.collection, x.File)
	})
}

func TestRealSitesExtendedWithThemselves(t *testing.T) {
	t.Parallel()
	for _, name := range realSites(t) {
		file, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		site := fileOf(t, collectionOf(t, file))
		x := extended(t, site, file)
		if got := fileOf(t, x.File); !bytes.Equal(got, site) || len(x.Changes) == 0 {
			t.Errorf("%s: changed %s", name, asJSON(t, x.Changes))
		}
	}
}
