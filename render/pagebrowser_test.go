package render

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo"
	"example.org/turfplat/samples"
	"example.org/turfplat/zones/lanes"
)

var (
	phone      = screen{width: 390, height: 844, touch: true}
	smallPhone = screen{width: 360, height: 640, touch: true}
	desktop    = screen{width: 1280, height: 800}
)

func (s screen) inTheDark() screen { s.dark = true; return s }

// A crewFile is a page of the sample with all that a page can have.
type crewFile struct {
	sheet *Sheet
	path  string
}

// TestPageInABrowser opens pages in Chromium, which is started once.
func TestPageInABrowser(t *testing.T) {
	c := startChromium(t)
	s, file := crewPage(t)
	crew := crewFile{s, onDisk(t, file)}
	for _, test := range []struct {
		name string
		run  func(*testing.T, *chromium, crewFile)
	}{
		{"laws", pageKeepsItsLawsOnScreens}, {"tap", tapOnAZoneTellsWhatItGets},
		{"drag", dragAndPinchMoveTheMap}, {"layers", layersAreSwitched}, {"ticks", ticksAreKept}, {"fillings", fillingsAreToldBeforeTheirLanes},
		{"nothing kept", ticksWorkWhereNothingIsKept}, {"keys", pageIsWorkedByKeys}, {"readers", pageSaysItselfToReaders},
		{"where", whereAmI}, {"no scripts", pageWithoutScripts}, {"hostile", hostileNamesDoNothing},
		{"both ways", namesBothWaysKeepTheirPlace},
	} {
		t.Run(test.name, func(t *testing.T) {
			c.t = t
			test.run(t, c, crew)
		})
	}
	c.t = t
	if *sheetsDir != "" {
		picturesOfPages(t, c, crew)
	}
}

// clean fails a page that complained or asked for anything but itself.
func (b *tab) clean() {
	b.t.Helper()
	for _, p := range b.problems {
		b.t.Errorf("the browser says: %.400s", p)
	}
	for _, url := range b.requests {
		if !strings.HasPrefix(url, "file://") || !strings.HasSuffix(strings.Split(url, "#")[0], "crew.html") {
			b.t.Errorf("the page asks for %s", url)
		}
	}
}

func (b *tab) section(id string) {
	b.t.Helper()
	b.eval(fmt.Sprintf(`choice.value = %q; choice.dispatchEvent(new Event("change"))`, id), nil)
	b.settle()
}

func (b *tab) sections() []string {
	b.t.Helper()
	var ids []string
	b.eval(`data.sections.map(s => s.id)`, &ids)
	return ids
}

// laws of a page, each a script that lists what breaks it.
var pageLaws = map[string]string{
	"nothing is wider than the screen": `(() => {
		const wide = [...document.querySelectorAll("body *")].filter(e => !e.closest("svg, .unseen, .skip, thead") && e.getClientRects().length && e.getBoundingClientRect().right > innerWidth + 0.5);
		if (document.documentElement.scrollWidth > innerWidth) wide.unshift(document.documentElement);
		return wide.map(e => e.outerHTML.slice(0, 120));
	})()`,
	"letters are 18 px or more": `[...document.querySelectorAll("body *")].filter(e => !e.closest("svg, script, [hidden]") && [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()) && parseFloat(getComputedStyle(e).fontSize) < 18).map(e => e.outerHTML.slice(0, 120))`,
	"what is touched is 44 px high": `[...document.querySelectorAll("button, select, summary, label:has(input), [data-zone]")].filter(e => {
		const box = e.getBoundingClientRect();
		return e.getClientRects().length && !e.closest("[hidden]") && (box.height < 44 || box.width < 44);
	}).map(e => e.outerHTML.slice(0, 120))`,
	"text stands out by 4.5 to 1": `(() => {
		const rgba = text => { const n = text.match(/[\d.]+/g).map(Number); return [n[0], n[1], n[2], n[3] ?? 1]; };
		const light = c => { const [r, g, b] = c.map(v => v / 255).map(v => v <= .04045 ? v / 12.92 : ((v + .055) / 1.055) ** 2.4); return .2126 * r + .7152 * g + .0722 * b; };
		const under = e => { for (; e; e = e.parentElement) { const c = rgba(getComputedStyle(e).backgroundColor); if (c[3] > .8) return c; } return [255, 255, 255, 1]; };
		let seen = 0;
		const faint = [...document.querySelectorAll("body *")].filter(e => {
			if (e.closest("svg, script, button:disabled") || !e.getClientRects().length || ![...e.childNodes].some(n => n.nodeType === 3 && n.data.trim())) return false;
			const [a, b] = [rgba(getComputedStyle(e).color), under(e)].map(c => light(c.slice(0, 3)));
			seen++;
			return (Math.max(a, b) + .05) / (Math.min(a, b) + .05) < 4.5;
		}).map(e => e.outerHTML.slice(0, 120));
		return seen < 20 ? ["only " + seen + " texts were looked at"] : faint;
	})()`,
	"all that can be worked has a name": `[...document.querySelectorAll("button, select, input, summary, [role=button], a")].filter(e => e.getClientRects().length && !(e.getAttribute("aria-label") || e.textContent.trim() || e.labels?.[0]?.textContent.trim())).map(e => e.outerHTML.slice(0, 120))`,
	"ids are told apart":                `(ids => ids.filter((id, i) => ids.indexOf(id) !== i))([...document.querySelectorAll("[id]")].map(e => e.id))`,
}

func pageKeepsItsLawsOnScreens(t *testing.T, c *chromium, crew crewFile) {
	for _, s := range []screen{phone, smallPhone, desktop, phone.inTheDark(), smallPhone.inTheDark(), desktop.inTheDark()} {
		b := c.open(s, crew.path)
		b.settle()
		b.eval(`for (const d of document.querySelectorAll("details")) d.open = true; choose(data.zones[0])`, nil)
		for _, id := range b.sections() {
			b.section(id)
			for law, script := range pageLaws {
				var broken []string
				if b.eval(script, &broken); len(broken) > 0 {
					t.Errorf("%s, %s: %s: %q", s, id, law, broken)
				}
			}
		}
		b.clean()
	}
}

// picturesOfPages takes pictures, to be looked at, where a folder is named.
func picturesOfPages(t *testing.T, c *chromium, crew crewFile) {
	for _, s := range []screen{phone, smallPhone, desktop, phone.inTheDark(), desktop.inTheDark()} {
		b := c.open(s, crew.path)
		b.settle()
		b.shoot(s.String()+"-site", false)
		b.eval(`choose(data.zones[0])`, nil)
		b.section("step-spring-feed")
		b.shoot(s.String()+"-step", false)
		b.shoot(s.String()+"-step-whole", true)
		if !s.dark {
			b.section("sun")
			b.shoot(s.String()+"-sun", false)
			b.section("season")
			b.shoot(s.String()+"-season-whole", true)
		}
	}
}

func tapOnAZoneTellsWhatItGets(t *testing.T, c *chromium, crew crewFile) {
	for _, s := range []screen{phone, smallPhone, desktop} {
		b := c.open(s, crew.path)
		b.section("step-spring-feed")
		b.eval(`map.scrollIntoView()`, nil)
		for _, letter := range []string{"A", "B", "F"} {
			var at struct{ X, Y float64 }
			// a point well within the zone, for a finger is no needle
			b.eval(fmt.Sprintf(`(() => {
				const group = byID(data.zones.find(z => z.letter === %q).group), box = group.getBoundingClientRect();
				for (let i = 1; i < 40; i++) for (let j = 1; j < 40; j++) {
					const x = box.left + box.width * i / 40, y = box.top + box.height * j / 40;
					if ([[0, 0], [7, 0], [-7, 0], [0, 7], [0, -7]].every(([dx, dy]) => group.contains(document.elementFromPoint(x + dx, y + dy)))) return {x, y};
				}
			})()`, letter), &at)
			if s.touch {
				b.tap(at.X, at.Y)
			} else {
				b.click(at.X, at.Y)
			}
			said := b.text(`told.innerText`)
			want := map[string][]string{
				"A": {"Zone A, Back, north", "4,900 ± 170 ft²", "tall fescue", "full sun", "Spring feed", "lb"},
				"B": {"Zone B, Front", "Kentucky bluegrass", "Spring feed", "lb"},
				"F": {"Zone F, Pond edge", noApplication, "left alone"},
			}[letter]
			for _, w := range want {
				if !strings.Contains(said, w) {
					t.Errorf("%s: zone %s says %q, without %q", s, letter, said, w)
				}
			}
			if n := b.number(`document.querySelectorAll("#pane .chosen").length`); n != 1 {
				t.Errorf("%s: %v zones are chosen", s, n)
			}
		}
		b.section("site")
		if said := b.text(`(choose(data.zones[0]), told.innerText)`); strings.Count(said, "lb") < 2 {
			t.Errorf("%s: zone A says %q, not what each step brings", s, said)
		}
		b.clean()
	}
}

func dragAndPinchMoveTheMap(t *testing.T, c *chromium, crew crewFile) {
	b := c.open(phone, crew.path)
	b.settle()
	b.eval(`map.scrollIntoView()`, nil)
	touch := func(kind string, at ...float64) {
		points := []cdp{}
		for i := 0; i < len(at); i += 2 {
			points = append(points, cdp{"x": at[i], "y": at[i+1], "id": i / 2})
		}
		b.do("Input.dispatchTouchEvent", cdp{"type": kind, "touchPoints": points})
	}
	top := b.number(`map.getBoundingClientRect().top`)
	whole := b.number(`seen.scale`)
	touch("touchStart", 150, top+150, 250, top+250)
	for i := 1.0; i <= 10; i++ {
		touch("touchMove", 150-8*i, top+150-8*i, 250+8*i, top+250+8*i)
	}
	touch("touchEnd")
	b.settle()
	if got, want := b.number(`seen.scale`)/whole, 260.0/100; math.Abs(got-want) > 0.15 {
		t.Errorf("a pinch from 100 to 260 zooms by %.2f", got)
	}
	x, scroll := b.number(`seen.x`), b.number(`scrollY`)
	touch("touchStart", 200, top+200)
	for i := 1.0; i <= 5; i++ {
		touch("touchMove", 200-10*i, top+200)
	}
	touch("touchEnd")
	b.settle()
	if got := (b.number(`seen.x`) - x) * b.number(`seen.scale`); math.Abs(got-50) > 1 {
		t.Errorf("a finger moved by 50 px moves the map by %.1f", got)
	}
	if got := b.number(`scrollY`); got != scroll {
		t.Errorf("the page moved with the map, by %v", got-scroll)
	}
	if b.holds(`Boolean(chosen)`) {
		t.Error("a drag chose a zone")
	}
	b.shoot("pinched", false)
	b.eval(`byID("whole").click()`, nil)
	b.settle()
	if got := b.number(`seen.scale`); got != whole {
		t.Errorf("the whole site is shown at %v, not %v", got, whole)
	}
	b.show(screen{width: 844, height: 390, touch: true})
	b.eval(`new Promise(done => setTimeout(done, 300))`, nil)
	b.settle()
	if !b.holds(`Math.abs(seen.scale - fitting()) < 1e-9`) {
		t.Error("a turned phone does not show the whole site")
	}
	b.clean()
}

func layersAreSwitched(t *testing.T, c *chromium, crew crewFile) {
	b := c.open(phone, crew.path)
	b.section("step-spring-feed")
	b.eval(`byID("layers").open = true`, nil)
	groups := map[string]string{
		"zones": "map-zones", "lanes": "map-part2-lanes", "beds": "map-cover-bed", "trees": "map-trees",
		"hazards": "", "sun": "map-hours", "labels": "map-part2-labels",
	}
	groups["lanes"] = b.text(`shown.group + "-lanes"`)
	groups["hazards"] = b.text(`shown.group + "-signs-hazard"`)
	groups["labels"] = b.text(`shown.group + "-labels"`)
	var ids []string
	b.eval(`[...document.querySelectorAll("#layers input")].map(b => b.id.slice(6))`, &ids)
	if len(ids) != len(groups) {
		t.Errorf("layers %q", ids)
	}
	for _, id := range ids {
		visible := func() bool {
			return b.holds(fmt.Sprintf(`byID(%q).querySelector("path, text").getClientRects().length > 0`, groups[id]))
		}
		before := visible()
		if before != b.holds(fmt.Sprintf(`byID("layer-%s").checked`, id)) {
			t.Errorf("layer %s: box and map differ at first", id)
		}
		b.eval(fmt.Sprintf(`byID("layer-%s").click()`, id), nil)
		if visible() == before {
			t.Errorf("layer %s is not switched", id)
		}
		b.eval(fmt.Sprintf(`byID("layer-%s").click()`, id), nil)
		if visible() != before {
			t.Errorf("layer %s is not switched back", id)
		}
	}
	named := `byID(shown.group + "-names-hazard").querySelector("path, text").getClientRects().length > 0`
	if !b.holds(named) {
		t.Error("no hazard has its name")
	}
	b.eval(`byID("layer-hazards").click()`, nil)
	if b.holds(named) {
		t.Error("names of hazards stay without their signs")
	}
	b.section("sun")
	if !b.holds(`byID("map-hours").querySelector("path").getClientRects().length > 0`) {
		t.Error("the section of the sun does not show its hours")
	}
	b.clean()
}

func ticksAreKept(t *testing.T, c *chromium, crew crewFile) {
	b := c.open(phone, crew.path)
	b.section("step-spring-feed")
	count := func() float64 { return b.number(`byID(shown.id).querySelectorAll("[data-tick]:checked").length`) }
	tick := func(name string) {
		b.eval(fmt.Sprintf(`byID(shown.id).querySelector("[data-tick=%s]").click()`, name), nil)
	}
	tick("lane-1")
	tick("lane-2")
	if said := b.text(`byID(shown.id).querySelector(".next").textContent`); !strings.HasPrefix(said, "Next is lane 3; 2 of ") {
		t.Errorf("after two lanes the page says %q", said)
	}
	faded := `byID(shown.group + "-lane-1").classList.contains("ticked") && byID(shown.group + "-lane-3").classList.contains("onward")`
	if !b.holds(faded) {
		t.Error("the map does not show which lanes are walked")
	}
	b.shoot("ticked", true)
	b.reload()
	b.settle()
	if got := b.text(`shown.id`); got != "step-spring-feed" {
		t.Errorf("a reload shows %s", got)
	}
	if got := count(); got != 2 || !b.holds(faded) {
		t.Errorf("%v ticks after a reload", got)
	}
	b.section("step-autumn-feed")
	if got := count(); got != 0 {
		t.Errorf("another step has %v ticks", got)
	}
	b.section("step-spring-feed")
	b.eval(`byID(shown.id).querySelector(".clear button").click()`, nil)
	if got := count(); got != 0 {
		t.Errorf("%v ticks when cleared", got)
	}
	b.eval(`byID(shown.id).querySelector(".clear button").click()`, nil)
	if got := count(); got != 2 {
		t.Errorf("%v ticks brought back", got)
	}
	b.eval(`byID(shown.id).querySelector(".clear button").click()`, nil)
	b.reload()
	if got := count(); got != 0 {
		t.Errorf("%v ticks when cleared and loaded again", got)
	}
	b.clean()
}

func fillingsAreToldBeforeTheirLanes(t *testing.T, c *chromium, _ crewFile) {
	p, m := surveyed(t, string(samples.AlderLane), samples.AlderLaneName)
	w := spreadWork(t, 3.048, lanes.Tight)
	w.Filling = 300
	walked := walkedOn(t, p, w)
	_, file := sitePage(t, p, m, PageOptions{Walked: walked})
	b := c.open(phone, onDisk(t, file))
	b.section("lanes")
	next := func() string { return b.text(`byID(shown.id).querySelector(".next").textContent`) }
	tick := func(name string) {
		b.eval(fmt.Sprintf(`byID(shown.id).querySelector("[data-tick=%s]").click()`, name), nil)
	}
	if said := next(); !strings.HasPrefix(said, "Next is lane 1: before lane 1 put in enough for 3,230 ft²; 0 of ") {
		t.Errorf("at first the page says %q", said)
	}
	tick("fill-1-0")
	if said := next(); !strings.HasPrefix(said, "Next is lane 1; 0 of ") {
		t.Errorf("once the hopper is filled the page says %q", said)
	}
	again := walked.Plan.Fills[1]
	for n := 1; n < again.Lane; n++ {
		tick(fmt.Sprintf("lane-%d", n))
	}
	if said := next(); !strings.HasPrefix(said, fmt.Sprintf("Next is lane %d: before lane %d put in ", again.Lane, again.Lane)) {
		t.Errorf("before lane %d the page says %q", again.Lane, said)
	}
	b.eval(fmt.Sprintf(`byID(shown.id).querySelector("[data-tick=fill-%d-0]").scrollIntoView({block: "center"})`, again.Lane), nil)
	b.shoot("fillings", false)
	b.reload()
	b.settle()
	if !b.holds(`byID(shown.id).querySelector("[data-tick=fill-1-0]").checked`) {
		t.Error("a filling is not kept as ticked")
	}
	b.clean()
}

func ticksWorkWhereNothingIsKept(t *testing.T, c *chromium, crew crewFile) {
	for name, refusal := range map[string]string{
		"refused": `Object.defineProperty(window, "localStorage", {get() { throw new DOMException("no", "SecurityError"); }})`,
		"spoiled": `for (const s of ["null", "7", "{", "{\"a\":1}"]) Storage.prototype.getItem = () => s`,
		"full":    `Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }`,
	} {
		b := c.open(phone, crew.path)
		b.do("Page.addScriptToEvaluateOnNewDocument", cdp{"source": refusal})
		b.reload()
		b.section("step-spring-feed")
		b.eval(`byID(shown.id).querySelector("[data-tick=lane-1]").click()`, nil)
		if !b.holds(`byID(shown.group + "-lane-1").classList.contains("ticked")`) {
			t.Errorf("%s: a tick does nothing", name)
		}
		if said := b.text(`byID(shown.id).querySelector(".clear span").textContent`); (said == "") != (name == "spoiled") {
			t.Errorf("%s: the page says %q", name, said)
		}
		b.eval(`lookButton.click()`, nil)
		if !b.holds(`isDark()`) {
			t.Errorf("%s: the page stays light", name)
		}
		b.clean()
	}
}

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

func whereAmI(t *testing.T, c *chromium, crew crewFile) {
	s := crew.sheet
	b := c.open(phone, crew.path)
	b.do("Browser.grantPermissions", cdp{"permissions": []string{"geolocation"}, "browserContextId": b.profile})
	for _, p := range []Point{{20, 30}, {s.Width - 12, s.Height - 20}, {s.Width / 2, s.Height / 2}} {
		place := s.Ground.Place(p)
		b.do("Emulation.setGeolocationOverride", cdp{"longitude": place.Lon(), "latitude": place.Lat(), "accuracy": 4})
		b.eval(`hereButton.click()`, nil)
		b.eval(`new Promise(done => { const wait = () => /dot|off|not/.test(fix.textContent) ? done() : setTimeout(wait, 20); wait(); })`, nil)
		x, y := b.number(`Number(dot.lastChild.getAttribute("cx"))`), b.number(`Number(dot.lastChild.getAttribute("cy"))`)
		if off := s.Scale.Metres(math.Hypot(x-p.X, s.Height-y-p.Y)); off > 0.05 {
			t.Errorf("the dot is %.2f m off", off)
		}
		b.shoot("here", false)
		b.eval(`hereButton.click()`, nil)
		if b.holds(`Boolean(byID("here-dot"))`) {
			t.Error("the dot stays")
		}
	}
	far := s.Ground.Place(Point{s.Width / 2, s.Height + 100})
	b.do("Emulation.setGeolocationOverride", cdp{"longitude": far.Lon(), "latitude": far.Lat(), "accuracy": 4})
	b.eval(`hereButton.click()`, nil)
	b.eval(`new Promise(done => { const wait = () => /off/.test(fix.textContent) ? done() : setTimeout(wait, 20); wait(); })`, nil)
	if said, want := b.text(`fix.textContent`), fmt.Sprintf("You are %.0f ft off the map.", s.Scale.Metres(100)/geo.FootM); said != want {
		t.Errorf("%q, want %q", said, want)
	}
	b.do("Browser.resetPermissions", cdp{"browserContextId": b.profile})
	b.clean()
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
