package zones

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
)

// failer is what testing.T, testing.B and rapid.T have in common.
type failer interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

// An item is one object of an invented property, in metres east and north of
// where the property is put.
type item struct {
	props    string // inside of the properties object
	geometry string // type
	lines    []geo.Line
}

// A sketch is an invented property.
type sketch []item

// polygon has rings without the first position repeated.
func polygon(props string, rings ...geo.Ring) item {
	it := item{props: props, geometry: "Polygon"}
	for i, r := range rings {
		l := slices.Concat(geo.Line(r), geo.Line(r[:1]))
		if i > 0 {
			slices.Reverse(l) // holes run clockwise
		}
		it.lines = append(it.lines, l)
	}
	return it
}

func lineString(props string, l ...geo.XY) item {
	return item{props: props, geometry: "LineString", lines: []geo.Line{l}}
}

func pointAt(props string, x, y float64) item {
	return item{props: props, geometry: "Point", lines: []geo.Line{{{X: x, Y: y}}}}
}

// kind writes the properties of an object of a kind, with more of them.
func kind(k Kind, id string, more ...string) string {
	return strings.Join(append([]string{fmt.Sprintf(`"kind":%q,"id":%q`, k, id)}, more...), ",")
}

// covering is a polygon of a kind.
func covering(k Kind, id string, ring geo.Ring) item { return polygon(kind(k, id), ring) }

func rectangle(west, south, east, north float64) geo.Ring {
	return geo.Ring{{X: west, Y: south}, {X: east, Y: south}, {X: east, Y: north}, {X: west, Y: north}}
}

// regular returns a regular polygon.
func regular(n int, x, y, radius float64) geo.Ring {
	r := make(geo.Ring, n)
	for i := range r {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r[i] = geo.XY{X: x + radius*cos, Y: y + radius*sin}
	}
	return r
}

// home is where invented properties lie.
var home = orb.Point{-93.1, 44.95}

// file writes a sketch as a site file whose metres count from a place.
func (s sketch) file(at orb.Point, members string) []byte {
	frame := geo.NewFrame(at)
	var b bytes.Buffer
	b.WriteString(`{"type":"FeatureCollection",`)
	if members != "" {
		b.WriteString(members + ",")
	}
	b.WriteString("\"features\":[\n")
	for i, it := range s {
		if i > 0 {
			b.WriteString(",\n")
		}
		fmt.Fprintf(&b, `{"type":"Feature","properties":{%s},"geometry":{"type":%q,"coordinates":%s}}`, it.props, it.geometry, it.coordinates(frame))
	}
	b.WriteString("]}\n")
	return b.Bytes()
}

func (it item) coordinates(frame geo.Frame) string {
	positions := func(l geo.Line) string {
		var texts []string
		for _, p := range l {
			at := frame.Place(p)
			texts = append(texts, "["+strconv.FormatFloat(at.Lon(), 'f', -1, 64)+","+strconv.FormatFloat(at.Lat(), 'f', -1, 64)+"]")
		}
		return strings.Join(texts, ",")
	}
	if it.geometry == "Point" {
		return positions(it.lines[0])
	}
	var lines []string
	for _, l := range it.lines {
		lines = append(lines, "["+positions(l)+"]")
	}
	if it.geometry == "LineString" {
		return lines[0]
	}
	return "[" + strings.Join(lines, ",") + "]"
}

var builtInKey = DefaultMapKey()

// collectionOf reads the one site of a file.
func collectionOf(t failer, file []byte) *ingest.Collection {
	t.Helper()
	for c := range ingest.GeoJSON(bytes.NewReader(file), "yard.geojson", ingest.DefaultLimits) {
		return c
	}
	t.Fatalf("file holds no site")
	return nil
}

func siteOf(t failer, file []byte) *Site {
	t.Helper()
	return NewSite(collectionOf(t, file), Reading{Key: builtInKey})
}

// platOf surveys a site that must not be refused.
func platOf(t failer, file []byte) *Plat {
	t.Helper()
	s := siteOf(t, file)
	p := Survey(s)
	if p == nil {
		t.Fatalf("refused: %s\n%s", told(s.Problems), file)
	}
	return p
}

// plat surveys a sketch at home.
func (s sketch) plat(t failer) *Plat {
	t.Helper()
	return platOf(t, s.file(home, ""))
}

func (s sketch) measure(t failer) Measurement {
	t.Helper()
	return s.plat(t).Measurement()
}

// told writes problems as people read them.
func told(problems []ingest.Problem) string {
	var lines []string
	for _, p := range problems {
		line := p.Severity.String() + ": " + p.String()
		if p.Hint != "" {
			line += " (" + p.Hint + ")"
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}

// codes lists the codes of problems.
func codes(problems []ingest.Problem) []string {
	list := []string{}
	for _, p := range problems {
		list = append(list, p.Code)
	}
	return list
}

// near asks two figures to agree to a relative or an absolute tolerance.
func near(t failer, what string, got, want, rel, abs float64) {
	t.Helper()
	if !(math.Abs(got-want) <= max(rel*math.Abs(want), abs)) {
		t.Errorf("%s: %.9f, want %.9f", what, got, want)
	}
}

// check tries a property on a number of random cases, fewer with -short.
func check(t *testing.T, cases int, property func(*rapid.T)) {
	t.Helper()
	if testing.Short() {
		cases = max(1, cases/10)
	}
	checks := flag.Lookup("rapid.checks")
	defer checks.Value.Set(checks.Value.String())
	checks.Value.Set(strconv.Itoa(cases))
	rapid.Check(t, property)
}

func asJSON(t failer, v any) string {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatalf("not JSON: %v", err)
	}
	return string(text)
}

func xy(x, y float64) geo.XY { return geo.XY{X: x, Y: y} }
