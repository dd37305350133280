package render

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"
	"golang.org/x/net/html"

	"example.org/turfplat/geo"
	"example.org/turfplat/samples"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/program"
)

// A pageCase is a page that every law must hold for.
type pageCase struct {
	name    string
	plat    *zones.Plat
	m       zones.Measurement
	plan    *program.Plan // nil: none
	options PageOptions
}

// pageCases are pages of the invented sites and the real ones: alone, lit, with
// lanes, and with a program.
func pageCases(t *testing.T) []pageCase {
	t.Helper()
	var all []pageCase
	for _, name := range inventedNames() {
		text := inventedSites[name].site().geoJSON(t)
		p, m := surveyed(t, text, name)
		all = append(all, pageCase{name, p, m, nil, PageOptions{}})
		plan := planned(t, p, m, awkwardProgram(t), time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC))
		all = append(all, pageCase{name + " planned", p, m, plan, PageOptions{}})
		p, m = lit(t, text, name)
		all = append(all, pageCase{name + " lit", p, m, nil, PageOptions{PacketOptions: PacketOptions{Sun: p.Sun != nil}}})
	}
	for _, path := range realSites(t) {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		p, m := surveyed(t, string(text), path)
		all = append(all, pageCase{filepath.Base(path), p, m, nil, PageOptions{Walked: walkedOn(t, p, spreadWork(t, 2.5, lanes.Single))}})
	}
	return all
}

func TestPagesOfAllSites(t *testing.T) {
	const most = 3 << 20 // bytes that a phone opens at once
	for _, c := range pageCases(t) {
		sheet, file, err := Page(c.plat, c.m, c.plan, c.options)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if len(file) > most {
			t.Errorf("%s: %d bytes", c.name, len(file))
		}
		doc := parsed(t, file)
		ids := make(map[string]int)
		for _, n := range doc {
			if id := attribute(n, "id"); id != "" {
				ids[id]++
			}
		}
		for id, n := range ids {
			if n > 1 {
				t.Errorf("%s: %d elements are called %s", c.name, n, id)
			}
		}
		data := pageDataIn(t, doc)
		if len(data.Zones) != len(c.m.Zones) {
			t.Errorf("%s: %d zones on the page, %d measured", c.name, len(data.Zones), len(c.m.Zones))
		}
		for _, z := range data.Zones {
			if ids[z.Group] == 0 {
				t.Errorf("%s: zone %s cannot be touched", c.name, z.Letter)
			}
		}
		for _, s := range data.Sections {
			if ids[s.ID] == 0 || ids[s.Group+"-over"] == 0 || ids[s.Group+"-under"] == 0 {
				t.Errorf("%s: section %s has no text or no map", c.name, s.ID)
			}
			if s.ID != "sun" { // where each letter is one of a figure of hours
				labelsApart(t, c.name+" "+s.ID, group(sheet.Elements, strings.TrimPrefix(s.Group, "map-")+"-labels"))
			}
		}
	}
}

// labelsApart fails labels that lie on each other.
func labelsApart(t *testing.T, name string, labels []Element) {
	t.Helper()
	texts := textsOf(labels)
	for i, a := range texts {
		for _, b := range texts[:i] {
			if lettersPlate(a).meets(lettersPlate(b)) {
				t.Errorf("%s: %q lies on %q", name, a.String, b.String)
			}
		}
	}
}

// parsed are the elements of a page in order.
func parsed(t testing.TB, file []byte) []*html.Node {
	t.Helper()
	root, err := html.Parse(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	var all []*html.Node
	for n := range root.Descendants() {
		if n.Type == html.ElementNode {
			all = append(all, n)
		}
	}
	return all
}

func attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

func pageDataIn(t testing.TB, doc []*html.Node) pageData {
	t.Helper()
	i := slices.IndexFunc(doc, func(n *html.Node) bool { return attribute(n, "id") == "data" })
	var data pageData
	if err := json.Unmarshal([]byte(doc[i].FirstChild.Data), &data); err != nil {
		t.Fatal(err)
	}
	return data
}

func TestPageLoadsNothing(t *testing.T) {
	_, file := crewPage(t)
	var policy string
	var styles, scripts []string
	for _, n := range parsed(t, file) {
		if attribute(n, "http-equiv") == "Content-Security-Policy" {
			policy = attribute(n, "content")
		}
		switch n.Data {
		case "style":
			styles = append(styles, n.FirstChild.Data)
		case "script":
			if attribute(n, "type") == "" {
				scripts = append(scripts, n.FirstChild.Data)
			}
		}
		for _, a := range n.Attr {
			switch strings.ToLower(a.Key) {
			case "src", "srcset", "action", "data", "poster", "style":
				t.Errorf("<%s> has %s", n.Data, a.Key)
			case "href":
				if !strings.HasPrefix(a.Val, "#") {
					t.Errorf("<%s> leads to %s", n.Data, a.Val)
				}
			}
			if strings.HasPrefix(strings.ToLower(a.Key), "on") {
				t.Errorf("<%s> runs %s", n.Data, a.Key)
			}
		}
	}
	if len(styles) != 3 || len(scripts) != 1 {
		t.Errorf("%d styles and %d scripts", len(styles), len(scripts))
	}
	if want := pagePolicy(styles, scripts[0]); policy != want {
		t.Errorf("policy %q, want %q", policy, want)
	}
	for _, open := range []string{"unsafe", "http", "*"} {
		if strings.Contains(policy, open) {
			t.Errorf("policy %q has %q", policy, open)
		}
	}
	for _, word := range []string{"fetch(", "XMLHttpRequest", "WebSocket", "EventSource", "sendBeacon", "import(", "innerHTML", "insertAdjacent", "document.write", "eval("} {
		if strings.Contains(scripts[0], word) {
			t.Errorf("the script has %s", word)
		}
	}
}

func TestPageIsTheSameAgain(t *testing.T) {
	_, one := crewPage(t)
	_, other := crewPage(t)
	if !bytes.Equal(one, other) {
		t.Error("two runs give two pages")
	}
}

// TestPageTellsThePlan compares what taps tell with the plan and the measure.
func TestPageTellsThePlan(t *testing.T) {
	p, m, season := alderLane(t)
	plan := planned(t, p, m, season, time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC))
	_, file := pageOn(t, p, m, season, MapOptions{})
	data := pageDataIn(t, parsed(t, file))
	for i, z := range data.Zones {
		want := fmt.Sprintf("%s ± ", zones.Figures{}.Area(m.Zones[i].AreaM2, m.Zones[i].CI95M2))
		if z.Facts[0][0] != "Area" || !strings.HasPrefix(z.Facts[0][1], want) {
			t.Errorf("zone %s: %q, want %q", z.Letter, z.Facts[0], want)
		}
	}
	told := 0
	for _, s := range plan.Steps {
		if s.Status == program.Skipped {
			continue
		}
		i := slices.IndexFunc(data.Sections, func(d dataPart) bool { return d.ID == "step-"+s.Step.ID })
		if i < 0 {
			t.Errorf("there is no section of step %s", s.Step.ID)
			continue
		}
		amounts := data.Sections[i].Amounts
		worked := 0
		for _, z := range s.Zones {
			if z.Closed() || s.Status.KeepsOff() {
				continue
			}
			worked++
			figures, there := amounts[z.Letter]
			if !there {
				t.Errorf("step %s: zone %s is not told", s.Step.ID, z.Letter)
			}
			if z.Draw == nil {
				continue
			}
			sheet := stepSheetOf(t, &draft{measured: m, plat: p, letters: &lettering{}, options: MapOptions{Units: zones.US}, figures: figuresUS}, plan, slices.IndexFunc(plan.Steps, func(o program.StepPlan) bool { return o.Step.ID == s.Step.ID })+1, nil)
			if want := [2]string{"Amount", sheet.amountText(z)}; !slices.Contains(figures, want) {
				t.Errorf("step %s, zone %s: %q without %q", s.Step.ID, z.Letter, figures, want)
			}
			told++
		}
		if worked != len(amounts) {
			t.Errorf("step %s: %d zones are worked, %d told", s.Step.ID, worked, len(amounts))
		}
	}
	if told < 10 {
		t.Errorf("only %d amounts were compared", told)
	}
}

var figuresUS = figures{zones.Figures{Units: zones.US}}

// TestHostileNamesStayText compares the elements of a page of hostile names with
// those of the same page.
func TestHostileNamesStayText(t *testing.T) {
	p, m, season := hostileSite(t)
	_, file := pageOn(t, p, m, season, MapOptions{})
	said := 0
	for _, n := range parsed(t, file) {
		switch n.Data {
		case "img", "iframe", "object", "embed", "base", "form", "image", "foreignobject", "link":
			t.Errorf("there is an <%s>", n.Data)
		}
		for _, a := range n.Attr {
			if strings.HasPrefix(a.Key, "on") || strings.ContainsAny(a.Key, `"'<`) {
				t.Errorf("<%s> has %s", n.Data, a.Key)
			}
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			if c.Type == html.TextNode && n.Data != "script" && strings.Contains(c.Data, hostile) {
				said++
			}
		}
	}
	if said < 20 {
		t.Errorf("the name stands on the page %d times", said)
	}
	data := pageDataIn(t, parsed(t, file))
	for _, z := range data.Zones {
		if !strings.Contains(z.Name, hostile) {
			t.Errorf("zone %s is called %q", z.Letter, z.Name)
		}
	}
}

// TestPageKeepsForeignLetters: below the map text is that of the device.
func TestPageKeepsForeignLetters(t *testing.T) {
	const name = "芝生と庭 حديقة"
	text := strings.Replace(string(samples.AlderLane), "Alder Lane corner lot", name, 1)
	p, m := surveyed(t, text, "foreign")
	sheet, file := sitePage(t, p, m, PageOptions{})
	if !bytes.Contains(file, []byte(`<h1 dir="auto">`+isolated(name+" (invented)"))) {
		t.Error("the name does not head the page")
	}
	if len(sheet.Missing) == 0 {
		t.Error("nobody is told that the map lacks its letters")
	}
	if !bytes.Contains(file, []byte("<li>? on the map stands for letters that its typefaces lack: Han, Hiragana</li>")) {
		t.Error("the page does not tell what ? stands for")
	}
	p, m = surveyed(t, string(samples.AlderLane), "all letters")
	if _, file := sitePage(t, p, m, PageOptions{}); bytes.Contains(file, []byte("? on the map")) {
		t.Error("the page tells of letters that are not missing")
	}
}

func TestGateCodesStayOffThePage(t *testing.T) {
	const code = "7391#"
	text := strings.Replace(string(samples.AlderLane), `"access": {`, `"access": {"gate_code": "`+code+`", `, 1)
	p, m := surveyed(t, text, "gated")
	if p.Site.Access.GateCode != code {
		t.Fatal("the site has no code")
	}
	if _, file := sitePage(t, p, m, PageOptions{}); bytes.Contains(file, []byte(code)) {
		t.Error("the code stands on the page")
	}
	if _, file := sitePage(t, p, m, PageOptions{PacketOptions: PacketOptions{Codes: true}}); !bytes.Contains(file, []byte(code)) {
		t.Error("the code that was asked for does not stand on the page")
	}
}

// TestPlacesOnThePage: between the corners that scripts know, places follow to 5
// cm on a site of a kilometre.
func TestPlacesOnThePage(t *testing.T) {
	for _, center := range []orb.Point{{-93, 45}, {179.999, -41}, {25, 68}, {-78, 0.001}} {
		frame := geo.NewFrame(center)
		const half, scale = 500.0, Scale(5000) // m
		window := rect{max: Point{200, 200}}
		v, err := newView(window, scale, lie{cos: 1}, geo.XY{})
		if err != nil {
			t.Fatal(err)
		}
		g := &ground{window, v, frame}
		c := cornersOf(g, 200)
		for x := 0.0; x <= 200; x += 12.5 {
			for y := 0.0; y <= 200; y += 12.5 {
				place := g.place(Point{x, y})
				u := (math.Mod(place.Lon()-c.West+900, 360) - 180) / (c.East - c.West)
				w := (place.Lat() - c.South) / (c.North - c.South)
				between := func(i int) float64 {
					return (1-w)*((1-u)*c.At[0][i]+u*c.At[1][i]) + w*((1-u)*c.At[2][i]+u*c.At[3][i])
				}
				if off := scale.metres(math.Hypot(between(0)-x, 200-between(1)-y)); off > 0.05 {
					t.Fatalf("%v: a place is %.3f m off", center, off)
				}
			}
		}
		if ends := scale.metres(window.width()); ends != 2*half {
			t.Fatal(ends)
		}
	}
}
