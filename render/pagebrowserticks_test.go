package render

import (
	"fmt"
	"strings"
	"testing"

	"example.org/turfplat/samples"
	"example.org/turfplat/zones/lanes"
)

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

// furtherPassesComeUp ticks off the first of two passes, whereupon the lanes of the
// second are seen, also when the page is loaded again.
func furtherPassesComeUp(t *testing.T, c *chromium, _ crewFile) {
	p, m, season := alderLane(t)
	_, file := pageOn(t, p, m, inTwoPasses(season), MapOptions{})
	b := c.open(phone, onDisk(t, file))
	b.section("step-spring-feed")
	const seen = `getComputedStyle(byID(shown.group + "-lanes-pass-2")).display !== "none"`
	if b.holds(seen) || !b.holds(`getComputedStyle(byID(shown.group + "-lanes")).display !== "none"`) {
		t.Error("at first the lanes of pass 2 are seen, or those of pass 1 are not")
	}
	b.eval(`for (const box of byID(shown.id).querySelectorAll("[data-lane]:not([data-pass])")) box.click()`, nil)
	if !b.holds(seen) || !b.holds(`byID(shown.id).querySelector("li.onward [data-pass='2']") !== null`) {
		t.Error("once pass 1 is walked the lanes of pass 2 are not seen")
	}
	b.shoot("passes", true)
	b.reload()
	b.settle()
	if !b.holds(seen) {
		t.Error("a reload hides the lanes of pass 2")
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
