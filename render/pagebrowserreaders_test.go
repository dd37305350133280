package render

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/samples"
)

func pageIsWorkedByKeys(t *testing.T, c *chromium, crew crewFile) {
	b := c.open(desktop, crew.path)
	b.settle()
	focused := `(e => e.id || e.className || e.tagName)(document.activeElement)`
	var order []string
	for range 14 {
		b.press("Tab")
		order = append(order, b.text(focused))
	}
	if want := []string{"skip", "look", "section", "pane", "map-touch-0", "map-touch-1", "map-touch-2", "map-touch-3", "map-touch-4", "map-touch-5", "nearer", "farther", "whole", "here"}; !slices.Equal(order, want) {
		t.Errorf("Tab goes through %q, want %q", order, want)
	}
	b.eval(`map.focus()`, nil)
	whole := b.number(`seen.scale`)
	b.press("+")
	b.press("+")
	b.settle()
	if got := b.number(`seen.scale`) / whole; math.Abs(got-2.25) > 1e-6 {
		t.Errorf("+ twice zooms by %v", got)
	}
	for key, moved := range map[string][2]float64{"ArrowRight": {80, 0}, "ArrowLeft": {-80, 0}, "ArrowDown": {0, 80}, "ArrowUp": {0, -80}} {
		x, y := b.number(`seen.x`), b.number(`seen.y`)
		b.press(key)
		b.settle()
		scale := b.number(`seen.scale`)
		if dx, dy := (b.number(`seen.x`)-x)*scale, (b.number(`seen.y`)-y)*scale; math.Hypot(dx-moved[0], dy-moved[1]) > 1 {
			t.Errorf("%s moves the map by %.0f, %.0f px", key, dx, dy)
		}
	}
	b.press("-")
	b.settle()
	if got := b.number(`seen.scale`) / whole; math.Abs(got-1.5) > 1e-6 {
		t.Errorf("- zooms to %v", got)
	}
	b.press("0")
	b.settle()
	if got := b.number(`seen.scale`); got != whole {
		t.Errorf("0 zooms to %v, not %v", got, whole)
	}
	for _, key := range []string{"Enter", " "} {
		b.press("Tab")
		b.press(key)
		said := b.text(`told.innerText`)
		if want := b.text(`"Zone " + data.zones.find(z => z.group === document.activeElement.id).letter`); !strings.HasPrefix(said, want) {
			t.Errorf("%q on %s says %q", key, want, said)
		}
	}
	b.shoot("focused", false)
	b.clean()
}

func pageSaysItselfToReaders(t *testing.T, c *chromium, crew crewFile) {
	b := c.open(phone, crew.path)
	b.section("step-spring-feed")
	var tree struct {
		Nodes []struct {
			Ignored    bool
			Role, Name struct{ Value string }
		}
	}
	mustDecode(t, b.do("Accessibility.getFullAXTree", nil), &tree)
	var said []string
	for _, n := range tree.Nodes {
		if !n.Ignored {
			said = append(said, n.Role.Value+" "+n.Name.Value)
		}
	}
	for _, want := range []string{
		"banner ", "main ", "navigation Sheets", "contentinfo ", "region Map", "region Chosen zone", "combobox Show", "region Spring feed", "heading Spring feed",
		"group Map", "button Zone A, Back, north", "button Zone F, Pond edge", "button Zoom in", "heading Hazards", "columnheader Amount", "rowheader Zone A, on the map",
	} {
		if !slices.Contains(said, want) {
			t.Errorf("there is no %q in\n%s", want, strings.Join(said, "\n"))
		}
	}
	if !slices.ContainsFunc(said, func(s string) bool { return strings.HasPrefix(s, "checkbox 1 zone ") }) {
		t.Error("lanes to tick are not told")
	}
}

func pageWithoutScripts(t *testing.T, c *chromium, crew crewFile) {
	b := c.open(phone, crew.path)
	b.do("Emulation.setScriptExecutionDisabled", cdp{"value": true})
	b.reload()
	said := b.text(`document.body.innerText`)
	for _, want := range []string{"Alder Lane", "Spring feed", "Kentucky bluegrass", "Season and shopping"} {
		if !strings.Contains(said, want) {
			t.Errorf("without scripts there is no %q", want)
		}
	}
	if !b.holds(`document.querySelector("#choice").getClientRects().length === 0 && document.querySelector("#pane svg").getBoundingClientRect().height > 100 && document.querySelector("#map-part1-over").getClientRects().length === 0`) {
		t.Error("without scripts the page shows what does not work, or no map")
	}
	b.shoot("no-scripts", true)
	b.clean()
}

// hostileNamesDoNothing opens a page whose every name is markup.
func hostileNamesDoNothing(t *testing.T, c *chromium, _ crewFile) {
	p, m, season := hostileSite(t)
	_, file := pageOn(t, p, m, season, MapOptions{})
	b := c.open(phone, onDisk(t, file))
	for _, id := range b.sections() {
		b.section(id)
		b.eval(`for (const z of data.zones) choose(z)`, nil)
		b.eval(`new Promise(done => setTimeout(done, 50))`, nil)
	}
	if n := b.number(`document.images.length + document.scripts.length + document.querySelectorAll("iframe, object, embed, base, link").length`); n != 2 {
		t.Errorf("names made %v elements", n-2)
	}
	if b.holds(`"hit" in window`) {
		t.Error("a name ran as a script")
	}
	if said := b.text(`told.innerText`); !strings.Contains(said, hostile) {
		t.Errorf("zone says %q, not its name", said)
	}
	b.shoot("hostile", true)
	b.clean()
}

// Names that run from right to left stand as they are read, and leave what
// follows them on the page where it belongs.
func namesBothWaysKeepTheirPlace(t *testing.T, c *chromium, _ crewFile) {
	text := string(samples.AlderLane)
	for from, to := range map[string]string{`"Front"`: `"גינה 3 ליד השער"`, `"Under the maples"`: `"الحديقة الخلفية"`, `"Verge"`: `"North lawn / גינה 2"`} {
		text = strings.ReplaceAll(text, from, to)
	}
	_, _, season := alderLane(t)
	p, m := lit(t, text, "both-ways")
	_, file := pageOn(t, p, m, season, MapOptions{})
	b := c.open(phone, onDisk(t, file))
	b.settle()
	b.eval(`for (const d of document.querySelectorAll("details")) d.open = true; choose(data.zones[1])`, nil)
	const places = `((text, parts) => {
		for (const root of document.querySelectorAll("main :not(svg, svg *)")) for (const node of root.childNodes) {
			if (node.nodeType !== 3 || !node.data.includes(text) || !parts.every(part => node.data.includes(part)) || !root.getClientRects().length) continue;
			return parts.map(part => {
				const range = document.createRange(), from = node.data.indexOf(part);
				range.setStart(node, from);
				range.setEnd(node, from + part.length);
				const box = range.getBoundingClientRect();
				return [box.left, box.right];
			});
		}
		return [];
	})`
	for _, tt := range []struct {
		text  string
		parts []string // from the left
	}{
		{"גינה 3 ליד השער", []string{"השער", "ליד", "3", "גינה"}},
		{"גינה 3 ליד השער", []string{"השער", "full sun"}},
		{"الحديقة الخلفية", []string{"الخلفية", "الحديقة", "part sun"}},
		{"North lawn / גינה 2", []string{"North lawn", "2", "גינה"}},
	} {
		script, err := json.Marshal(tt.parts)
		if err != nil {
			t.Fatal(err)
		}
		var boxes [][2]float64
		b.eval(fmt.Sprintf("%s(%q, %s)", places, tt.text, script), &boxes)
		if len(boxes) != len(tt.parts) {
			t.Fatalf("%q is not on the page", tt.text)
		}
		for i := 1; i < len(boxes); i++ {
			if boxes[i][0] < boxes[i-1][1]-1 {
				t.Errorf("%q: %q is not to the right of %q: %v", tt.text, tt.parts[i], tt.parts[i-1], boxes)
			}
		}
	}
	b.shoot("both-ways", true)
	b.clean()
}
