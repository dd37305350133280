package render

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/turfplat/geo"
)

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

func whereAmI(t *testing.T, c *chromium, crew crewFile) {
	s := crew.sheet
	b := c.open(phone, crew.path)
	b.do("Browser.grantPermissions", cdp{"permissions": []string{"geolocation"}, "browserContextId": b.profile})
	for _, p := range []Point{{20, 30}, {s.Width - 12, s.Height - 20}, {s.Width / 2, s.Height / 2}} {
		place := s.ground.place(p)
		b.do("Emulation.setGeolocationOverride", cdp{"longitude": place.Lon(), "latitude": place.Lat(), "accuracy": 4})
		b.eval(`hereButton.click()`, nil)
		b.eval(`new Promise(done => { const wait = () => /dot|off|not/.test(fix.textContent) ? done() : setTimeout(wait, 20); wait(); })`, nil)
		x, y := b.number(`Number(dot.lastChild.getAttribute("cx"))`), b.number(`Number(dot.lastChild.getAttribute("cy"))`)
		if off := s.Scale.metres(math.Hypot(x-p.X, s.Height-y-p.Y)); off > 0.05 {
			t.Errorf("the dot is %.2f m off", off)
		}
		b.shoot("here", false)
		b.eval(`hereButton.click()`, nil)
		if b.holds(`Boolean(byID("here-dot"))`) {
			t.Error("the dot stays")
		}
	}
	far := s.ground.place(Point{s.Width / 2, s.Height + 100})
	b.do("Emulation.setGeolocationOverride", cdp{"longitude": far.Lon(), "latitude": far.Lat(), "accuracy": 4})
	b.eval(`hereButton.click()`, nil)
	b.eval(`new Promise(done => { const wait = () => /off/.test(fix.textContent) ? done() : setTimeout(wait, 20); wait(); })`, nil)
	if said, want := b.text(`fix.textContent`), fmt.Sprintf("You are %.0f ft off the map.", s.Scale.metres(100)/geo.FootM); said != want {
		t.Errorf("%q, want %q", said, want)
	}
	b.do("Browser.resetPermissions", cdp{"browserContextId": b.profile})
	b.clean()
}
