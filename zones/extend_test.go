package zones

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo"
)

// brief tells a change: what became of which object, out of which.
func (c Change) brief() string {
	text := fmt.Sprintf("%s %s", c.What, c.ID)
	if len(c.Parents) > 0 {
		text += " of " + strings.Join(c.Parents, "+")
	}
	return text
}

func brief(changes []Change) string {
	var all []string
	for _, c := range changes {
		all = append(all, c.brief())
	}
	return strings.Join(all, ", ")
}

// at is a rectangle with its south-west corner at a position.
func at(x, y, width, depth float64) geo.Ring { return rectangle(x, y, x+width, y+depth) }

func fence(id string, y float64) item {
	return lineString(kind(Fence, id), xy(0, y), xy(20, y))
}

// A lawn of 30 by 20 m, on which the tests lay their objects.
var lawnItem = covering(Turf, "lawn", at(0, 0, 30, 20))

func TestWhatBecomesOfAnObject(t *testing.T) {
	const (
		walked   = `"source":"walked"`
		imported = `"source":"imported"`
		drawn    = `"source":"default_width","width_m":3`
	)
	bed := func(id string, r geo.Ring, more ...string) item { return polygon(kind(Bed, id, more...), r) }
	anonymous := func(k Kind, r geo.Ring, more ...string) item {
		return polygon(strings.Join(append([]string{fmt.Sprintf(`"kind":%q`, k)}, more...), ","), r)
	}
	drive := func(id string, x float64, more ...string) item {
		return lineString(kind(Hardscape, id, more...), xy(x, 0), xy(x, 20))
	}
	for _, tt := range []struct {
		name     string
		old, new []item
		want     string
		told     []string
	}{
		{"another bed", []item{bed("a", at(1, 1, 4, 4))}, []item{bed("b", at(10, 1, 4, 4))}, "added b", nil},
		{"beds without an id", nil, []item{anonymous(Bed, at(1, 1, 4, 4)), anonymous(Bed, at(10, 1, 4, 4))}, "added bed, added bed-2", nil},
		{"an id that an object without a part has", []item{polygon(`"id":"b"`, at(1, 1, 4, 4))}, []item{bed("b", at(10, 1, 4, 4))}, "added b-2", []string{"id_taken"}},

		{"same id, larger", []item{bed("a", at(1, 1, 4, 4))}, []item{bed("a", at(1, 1, 4, 6))}, "replaced a", nil},
		{"same id, elsewhere", []item{bed("a", at(1, 1, 4, 4))}, []item{bed("a", at(20, 1, 4, 4))}, "replaced a", []string{"id_elsewhere"}},
		{"same id, another kind", []item{bed("a", at(1, 1, 4, 4))}, []item{covering(Bare, "a", at(1, 1, 4, 4))}, "replaced a", nil},
		{"same id by chance, another kind", []item{bed("1", at(1, 1, 4, 4))}, []item{covering(Bare, "1", at(20, 1, 4, 4))}, "added 1-2", []string{"id_taken"}},
		{"same id by chance, and the object itself", []item{bed("1", at(1, 1, 4, 4))}, []item{covering(Bare, "1", at(20, 1, 4, 4)), bed("2", at(1, 1, 4, 5))}, "added 1-2, replaced 1", []string{"id_taken"}},
		{"same id of map data, another kind", []item{bed("osm:way/1", at(1, 1, 4, 4), imported)}, []item{polygon(kind(Building, "osm:way/1", imported), at(1, 1, 4, 4))},
			"kept osm:way/1", []string{"kind_differs"}},

		{"no id, larger", []item{bed("a", at(1, 1, 4, 4))}, []item{anonymous(Bed, at(1, 1, 4, 6))}, "replaced a", nil},
		{"no id on either side", []item{anonymous(Bed, at(1, 1, 4, 4))}, []item{anonymous(Bed, at(1, 1, 4, 6))}, "replaced bed", nil},
		{"another kind on the same ground", []item{bed("a", at(1, 1, 4, 4))}, []item{covering(Bare, "b", at(1, 1, 4, 4))}, "added b", nil},
		{"twice as large, and more", []item{bed("a", at(1, 1, 8, 8))}, []item{bed("b", at(1, 1, 8, 18))}, "added b", []string{"added_over"}},
		{"a small bed walked twice, 0.8 m off both ways", []item{bed("a", at(1, 1, 4, 3), walked)}, []item{bed("b", at(1.8, 1.8, 4, 3.2), walked)}, "replaced a", nil},
		{"a narrow path traced twice, half a metre off", []item{covering(Hardscape, "a", at(1, 0, 1.2, 20))}, []item{covering(Hardscape, "b", at(1.5, 0, 1.2, 20))}, "replaced a", nil},
		{"the likest of two", []item{bed("a", at(1, 1, 4, 4)), bed("b", at(2, 1, 4, 4))}, []item{anonymous(Bed, at(2.2, 1, 4.2, 4))}, "replaced b", nil},

		{"1.5 % larger", []item{bed("a", at(1, 1, 10, 10))}, []item{bed("a", at(1, 1, 10, 10.15))}, "unchanged a", nil},
		{"2.5 % larger", []item{bed("a", at(1, 1, 10, 10))}, []item{bed("a", at(1, 1, 10, 10.25))}, "replaced a", nil},
		{"1.5 % larger, taped", []item{bed("a", at(1, 1, 10, 10))}, []item{bed("a", at(1, 1, 10, 10.15), `"source":"taped"`)}, "replaced a", nil},
		{"1.5 % larger, as sure as stated", []item{bed("a", at(1, 1, 10, 10), `"sigma_m":0.2`)}, []item{bed("a", at(1, 1, 10, 10.15), `"sigma_m":0.2`)}, "unchanged a", nil},
		{"2.5 % larger, less sure", []item{bed("a", at(1, 1, 10, 10))}, []item{bed("a", at(1, 1, 10, 10.25), walked)}, "replaced a", []string{"less_sure"}},
		{"as large, 0.5 m off", []item{covering(Building, "shed", at(1, 1, 3, 3))}, []item{covering(Building, "shed", at(1.5, 1, 3, 3))}, "unchanged shed", nil},
		{"as large, 2 m off", []item{covering(Building, "shed", at(1, 1, 3, 3))}, []item{covering(Building, "shed", at(3, 1, 3, 3))}, "replaced shed", nil},
		{"the same positions, surer", []item{bed("a", at(1, 1, 4, 4), walked)}, []item{bed("a", at(1, 1, 4, 4), walked, `"sigma_m":0.5`)}, "replaced a", nil},

		{"map data over what was traced", []item{bed("a", at(1, 1, 4, 4))}, []item{bed("osm:way/1", at(1, 1, 4, 5), imported)}, "kept a", nil},
		{"map data over map data", []item{bed("osm:way/1", at(1, 1, 4, 4), imported)}, []item{bed("osm:way/1", at(1, 1, 4, 5), imported)}, "replaced osm:way/1", nil},
		{"map data over what was traced of it", []item{bed("osm:way/1", at(1, 1, 4, 4))}, []item{bed("osm:way/1", at(1, 1, 4, 5), imported)}, "kept osm:way/1", nil},
		{"map data like what was traced", []item{bed("a", at(1, 1, 10, 10))}, []item{bed("osm:way/1", at(1, 1, 10, 10.1), imported)}, "unchanged a", nil},
		{"traced over map data", []item{bed("osm:way/1", at(1, 1, 4, 4), imported)}, []item{bed("b", at(1, 1, 4, 5))}, "replaced osm:way/1", nil},
		{"a line at a default width over a mapped area", []item{polygon(kind(Hardscape, "a", imported), at(1, 0, 3, 20))}, []item{drive("osm:way/2", 2.5, drawn)}, "kept a", nil},
		{"a traced area over a line at a default width", []item{drive("osm:way/2", 2.5, drawn)}, []item{covering(Hardscape, "a", at(1, 0, 3.3, 20))}, "replaced osm:way/2", nil},

		{"a fence 0.9 m off", []item{fence("f", 5)}, []item{fence("", 5.9)}, "replaced f", nil},
		{"a fence 1.1 m off", []item{fence("f", 5)}, []item{fence("g", 6.1)}, "added g", nil},
		{"a fence 0.3 m off", []item{fence("f", 5)}, []item{fence("g", 5.3)}, "unchanged f", nil},
		{"a tree 0.9 m off", []item{pointAt(kind(Tree, "oak"), 5, 5)}, []item{pointAt(kind(Tree, "new"), 5.9, 5)}, "replaced oak", nil},
		{"a tree 1.1 m off", []item{pointAt(kind(Tree, "oak"), 5, 5)}, []item{pointAt(kind(Tree, "new"), 6.1, 5)}, "added new", nil},
		{"a valve box beside a tree", []item{pointAt(kind(Tree, "oak"), 5, 5)}, []item{pointAt(kind(Hazard, "box"), 5, 5)}, "added box", nil},

		{"fell into two", []item{bed("a", at(1, 1, 10, 4))}, []item{bed("p", at(1, 1, 6, 4)), bed("q", at(7.5, 1, 3.5, 4))}, "split p of a, split q of a", nil},
		{"lost a corner", []item{bed("a", at(1, 1, 20, 4))}, []item{bed("p", at(1, 1, 17.5, 4)), bed("q", at(19.2, 1, 1.8, 4))}, "added q, replaced a", []string{"added_over"}},
		{"fell into two without ids", []item{bed("bed", at(1, 1, 10, 4))}, []item{anonymous(Bed, at(1, 1, 6, 4)), anonymous(Bed, at(7.5, 1, 3.5, 4))},
			"split bed-2 of bed, split bed-3 of bed", nil},
		{"shrank, and another bed in it", []item{bed("a", at(1, 1, 10, 4))}, []item{bed("a", at(1, 1, 6, 4)), bed("q", at(7.5, 1, 3.5, 4))}, "added q, replaced a", []string{"added_over"}},
		{"two beds in a large one", []item{bed("a", at(0, 0, 30, 20))}, []item{bed("p", at(1, 1, 2, 2)), bed("q", at(8, 1, 2, 2))}, "added p, added q", []string{"added_over", "added_over"}},
		{"traced again, and a bed inside it", []item{bed("a", at(1, 1, 10, 4))}, []item{anonymous(Bed, at(1, 1, 10, 4.4)), bed("q", at(2, 2, 2, 2))}, "added q, replaced a", []string{"added_over"}},
		{"grew together", []item{bed("a", at(1, 1, 5, 4)), bed("b", at(6.5, 1, 4.5, 4))}, []item{bed("c", at(1, 1, 10, 4))}, "merged c of a+b", nil},
		{"a fence in two", []item{fence("f", 5)}, []item{lineString(kind(Fence, "g"), xy(0, 5), xy(9, 5)), lineString(kind(Fence, "h"), xy(11, 5), xy(20, 5))}, "split g of f, split h of f", nil},
		{"the map has in two what was traced as one", []item{bed("a", at(1, 1, 10, 4))}, []item{bed("osm:way/1", at(1, 1, 5, 4), imported), bed("osm:way/2", at(6, 1, 5, 4), imported)}, "kept a", nil},
		{"the map has as one what was traced as two", []item{bed("a", at(1, 1, 5, 4)), bed("b", at(6, 1, 5, 4))}, []item{bed("osm:way/1", at(1, 1, 10, 4), imported)}, "kept a, kept b", nil},

		{"the outline, 1 m larger all round", []item{covering(Outline, "lot", at(-1, -1, 32, 22))}, []item{covering(Outline, "parcel", at(-2, -2, 34, 24))}, "replaced lot", nil},
		{"41 m beyond the outline", []item{covering(Outline, "lot", at(-1, -1, 32, 22))}, []item{bed("b", at(72, 1, 4, 4)), bed("c", at(70, 1, 4, 4))}, "added c", nil},
		{"a bed in divided turf", []item{polygon(kind(ZoneKind, "z", `"derived":true`), at(0, 0, 30, 20))}, []item{bed("b", at(1, 1, 4, 4))}, "added b", []string{"zones_outdated"}},
		{"a hazard in divided turf", []item{polygon(kind(ZoneKind, "z", `"derived":true`), at(0, 0, 30, 20))}, []item{pointAt(kind(Hazard, "box"), 5, 5)}, "added box", nil},
		{"divided turf in the new data", nil, []item{polygon(kind(ZoneKind, "z", `"derived":true`), at(0, 0, 30, 20)), bed("b", at(1, 1, 4, 4))}, "added b", nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			site := sketch(slices.Concat([]item{lawnItem}, tt.old)).file(home, "")
			x := extended(t, site, sketch(tt.new).file(home, ""))
			if got := brief(x.Changes); got != tt.want {
				t.Errorf("%s, want %s\n%s", got, tt.want, told(x.Problems))
			}
			got := slices.DeleteFunc(codes(x.Problems), func(code string) bool { return code == "id_repeated" })
			if !slices.Equal(got, append([]string{}, tt.told...)) {
				t.Errorf("told %s", told(x.Problems))
			}
		})
	}
}

// extendedOne extends the lawn and an object with a second survey of it.
func extendedOne(t failer, members string, old, new item) Extension {
	t.Helper()
	return extended(t, sketch{lawnItem, old}.file(home, members), sketch{new}.file(home, ""))
}

func TestWhatIsSaidOfAnObjectStays(t *testing.T) {
	bed, larger := at(1, 1, 4, 4), at(1, 1, 4, 6)
	path := func(x float64, props string) item { return lineString(props, xy(x, 0), xy(x, 20)) }
	for _, tt := range []struct {
		name     string
		old, new item
		want     string
	}{
		{"the owner's word", polygon(kind(Bed, "a", `"name":"Roses","species":"mixed","unheard":{"of":[1, 2]}`), bed),
			polygon(kind(Bed, "b", `"name":"Walk 3","species":"none","source":"walked","sigma_m":0.7,"laps":3,"class":"C"`), larger),
			`"kind":"bed","id":"a","name":"Roses","species":"mixed","unheard":{"of":[1,2]},"source":"walked","sigma_m":0.7,"laps":3,"class":"C"`},
		{"what told of the first survey goes", polygon(kind(Bed, "a", `"source":"walked","sigma_m":0.7,"laps":3,"notes":"wet"`), bed),
			polygon(kind(Bed, "b"), larger), `"kind":"bed","id":"a","notes":"wet"`},
		{"what nobody said before comes", polygon(kind(Bed, "a"), bed),
			polygon(kind(Bed, "b", `"name":"Roses","notes":"wet"`), larger), `"kind":"bed","id":"a","name":"Roses","notes":"wet"`},
		{"a kind that is stated anew", polygon(kind(Bed, "a", `"notes":"wet"`), bed),
			polygon(kind(Rough, "a"), larger), `"kind":"rough","id":"a","notes":"wet"`},
		{"a line that became an area has no width", path(5, kind(Hardscape, "a", `"width_ft":4,"name":"Walk"`)),
			polygon(kind(Hardscape, "b"), at(4, 0, 3, 20)), `"kind":"hardscape","id":"a","name":"Walk"`},
		{"a stated width", path(5, kind(Hardscape, "a", `"width_ft":4`)),
			path(5.5, kind(Hardscape, "b", `"width_m":2`)), `"kind":"hardscape","id":"a","width_m":2`},
		{"a default width is no news", path(5, kind(Hardscape, "osm:way/1", `"width_m":4,"source":"imported"`)),
			path(5.9, kind(Hardscape, "osm:way/1", `"width_m":3,"source":"default_width"`)), `"kind":"hardscape","id":"osm:way/1","width_m":4,"source":"imported"`},
		{"the width of a fence", path(5, kind(Fence, "a", `"width_m":0.2`)),
			path(5.8, kind(Fence, "b")), `"kind":"fence","id":"a","width_m":0.2`},
		{"map tags follow the map", polygon(kind(Bed, "osm:way/1", `"source":"imported","tags":{"natural":"scrub"}`), bed),
			polygon(`"id":"osm:way/1","natural":"shrubbery","height":"2"`, larger), `"kind":"bed","id":"osm:way/1","source":"imported","tags":{"height":"2","natural":"shrubbery"},"height_m":2,"height_from":"tagged","leaf":"deciduous"`},
		{"map tags alone", polygon(kind(Bed, "osm:way/1", `"source":"imported","tags":{"natural":"scrub"},"notes":"wet"`), bed),
			polygon(`"id":"osm:way/1","natural":"shrubbery"`, bed), `"kind":"bed","id":"osm:way/1","source":"imported","tags":{"natural":"shrubbery"},"notes":"wet"`},
		{"a kind that only tags told", polygon(`"landuse":"flowerbed","id":"osm:way/1","unheard":[1]`, bed),
			polygon(kind(Bed, "b"), larger), `"landuse":"flowerbed","id":"osm:way/1","unheard":[1],"kind":"bed"`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			x := extendedOne(t, "", tt.old, tt.new)
			file := string(fileOf(t, x.File))
			if !strings.Contains(file, `"properties":{`+tt.want+"}") {
				t.Errorf("%s\n%s", brief(x.Changes), file)
			}
		})
	}
}

func TestPartsInheritWhatIsSaidOfTheWhole(t *testing.T) {
	bed := func(id, more string, r geo.Ring) item { return polygon(kind(Bed, id, more), r) }
	whole := bed("a", `"name":"Roses","species":"mixed","laps":2`, at(1, 1, 10, 4))
	file := string(fileOf(t, extended(t, sketch{lawnItem, whole}.file(home, ""),
		sketch{bed("p", `"name":"East"`, at(7, 1, 4, 4)), bed("q", `"notes":"dry"`, at(1, 1, 5, 4))}.file(home, "")).File))
	for _, want := range []string{
		`{"kind":"bed","id":"p","name":"East","species":"mixed","parents":["a"]}`,
		`{"kind":"bed","id":"q","name":"Roses","species":"mixed","notes":"dry","parents":["a"]}`,
	} {
		if !strings.Contains(file, want) {
			t.Errorf("no %s in\n%s", want, file)
		}
	}
	grown := string(fileOf(t, extended(t,
		sketch{lawnItem, bed("a", `"species":"mixed","notes":"wet","soil":"clay"`, at(1, 1, 5, 4)), bed("b", `"species":"mixed","notes":"dry"`, at(6, 1, 5, 4))}.file(home, ""),
		sketch{bed("c", `"notes":"one bed now"`, at(1, 1, 10, 4))}.file(home, "")).File))
	if want := `{"kind":"bed","id":"c","species":"mixed","notes":"one bed now","parents":["a","b"]}`; !strings.Contains(grown, want) {
		t.Errorf("no %s in\n%s", want, grown)
	}
}

func TestHeaderOfAnExtendedSite(t *testing.T) {
	const (
		osm  = `"attribution":"Map data © OpenStreetMap contributors, ODbL 1.0"`
		town = `"attribution":"Town survey, invented"`
	)
	newBed := covering(Bed, "b", at(1, 1, 4, 4))
	for _, tt := range []struct {
		name, old, new, want string
		extension            item
	}{
		{"revision", `"site":{"id":"a1","revision":6,"access":{"gate":"east"}},"also":[1]`, "", `"site":{"id":"a1","revision":7,"access":{"gate":"east"}},"also":[1]`, newBed},
		{"no revision so far", `"site":{"id":"a1"}`, "", `"site":{"id":"a1","revision":1}`, newBed},
		{"an id that was the file's name", ``, "", `"site":{"id":"yard","revision":1}`, newBed},
		{"an empty id", `"site":{"id":""}`, "", `"site":{"id":"yard","revision":1}`, newBed},
		{"another site's header", `"site":{"id":"a1"}`, `"site":{"id":"b2","revision":9}`, `"site":{"id":"a1","revision":1}`, newBed},
		{"makers of map data", `"site":{"id":"a1"}`, osm, `"site":{"id":"a1","revision":1},` + osm, newBed},
		{"makers known already", `"site":{"id":"a1"},` + osm, osm, `"site":{"id":"a1","revision":1},` + osm, newBed},
		{"other makers", `"site":{"id":"a1"},` + town, osm,
			`"site":{"id":"a1","revision":1},"attribution":"Town survey, invented; Map data © OpenStreetMap contributors, ODbL 1.0"`, newBed},
		{"makers that nothing is taken from", `"site":{"id":"a1"}`, osm, `"site":{"id":"a1"}`, lawnItem},
	} {
		t.Run(tt.name, func(t *testing.T) {
			file := string(fileOf(t, extended(t, sketch{lawnItem}.file(home, tt.old), sketch{tt.extension}.file(home, tt.new)).File))
			if !strings.HasPrefix(file, `{"type":"FeatureCollection",`+tt.want+`,"features":`) {
				t.Errorf("header of\n%s", file)
			}
		})
	}
}

func TestNewDataThatIsRefused(t *testing.T) {
	bowTie := geo.Ring{xy(0, 0), xy(5, 5), xy(5, 0), xy(0, 5)}
	for _, tt := range []struct {
		name string
		new  []byte
		told string
	}{
		{"nothing that plays a part", collection(), "no_part"},
		{"a ring that crosses itself", sketch{covering(Bed, "b", bowTie)}.file(home, ""), "ring_crosses"},
		{"a kind that is not known", sketch{covering("flowers", "b", at(1, 1, 2, 2))}.file(home, ""), "kind_unknown"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := siteOf(t, sketch{lawnItem}.file(home, ""))
			x := s.Extend(collectionOf(t, tt.new), Reading{Key: builtInKey})
			if x.File != nil || strings.Join(codes(x.Problems), " ") != tt.told {
				t.Errorf("file %v, told %s", x.File, told(x.Problems))
			}
		})
	}
}

// A height that came from map data follows it; one that its owner states stays.
func TestHeightsOfASecondSurvey(t *testing.T) {
	shed := func(tags, more string) item {
		return polygon(`"kind":"building","id":"osm:way/1","source":"imported","tags":{"building":"shed"`+tags+`}`+more, rectangle(1, 1, 4, 4))
	}
	for _, tt := range []struct {
		name, stands string
		want         float64
		from         Basis
	}{
		{"a default", `,"height_m":2.8,"height_from":"assumed"`, 4, Tagged},
		{"one that was changed", `,"height_m":3.1,"height_from":"assumed"`, 3.1, Stated},
		{"stated", `,"height_m":3.1`, 3.1, Stated},
	} {
		x := extended(t, sketch{lawn, shed("", tt.stands)}.file(home, ""), sketch{shed(`,"height":"4"`, `,"height_m":4,"height_from":"tagged"`)}.file(home, ""))
		o := NewSite(x.File, Reading{Key: builtInKey}).Of(Building)[0]
		if o.Stature.Height != tt.want || o.Stature.From != tt.from {
			t.Errorf("%s: %g m, %s; want %g m, %s", tt.name, o.Stature.Height, o.Stature.From, tt.want, tt.from)
		}
	}
}
