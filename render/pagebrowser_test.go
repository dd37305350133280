package render

import (
	"fmt"
	"strings"
	"testing"
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
		{"drag", dragAndPinchMoveTheMap}, {"layers", layersAreSwitched}, {"ticks", ticksAreKept}, {"fillings", fillingsAreToldBeforeTheirLanes}, {"passes", furtherPassesComeUp},
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
