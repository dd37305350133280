package render

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
)

// generatedNames are names as people give them, of several scripts, and some
// that nobody should.
var generatedNames = []string{
	"", "", "", "Front", "Back lawn", "Strip", "Rosenbeet", "Pelouse côté rivière", "Bed along the wall of the old glasshouse, east of the pump",
	"Газон у дома", "Νότιος κήπος",
	"חצר קדמית", "גינה 3 ליד השער", "מדשאה ארוכה מאוד לאורך הקיר של החממה הישנה, ממזרח למשאבה", "גִּנָּה",
	"الحديقة الخلفية", "مرج 12 ب", "أرض العشب الطويلة جدا بمحاذاة جدار البيت الزجاجي القديم، شرق المضخة", "حَدِيقة", "باغچهٔ پشتی ۱۲",
	"North lawn / גינה 2", "חצר (NW) 40 ft", "Հյուսիսային մարգագետին", "前庭の芝生", "잔디밭", "สนามหญ้า", "Ünïçødé — “lawn” №5",
	"Wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww", "A/B #7 (NW)", "🌳 grove", "Étang",
}

// generated makes up a property from a seed: any size from a court of 40 m² to
// a campus of 10 ha, of any shape, turned by any angle, with or without an
// outline, buildings and zones, of which it may have sixty.
func generated(seed uint64) *inventedSite {
	g := generator{r: rand.New(rand.NewPCG(seed, 0x7475726670)), site: &inventedSite{place: orb.Point{-90, 40}}}
	g.size()
	g.site.header = map[string]any{"id": fmt.Sprintf("generated-%03d", seed), "units": []string{"us", "metric"}[seed%2], "revision": 1}
	if name := g.name(); name != "" {
		g.site.header["name"] = name
	}
	if g.chance(0.8) {
		g.site.area("outline", "lot", "", g.ring(0, 0, g.width, g.depth), "sigma_m", 0.05)
	} else {
		g.site.area("turf", "turf", g.name(), g.ring(0, 0, g.width, g.depth), "sigma_m", 0.1)
	}
	g.buildings()
	g.grounds()
	g.zones()
	g.trees()
	g.lines()
	g.signs()
	return g.site
}

type generator struct {
	r            *rand.Rand
	site         *inventedSite
	width, depth float64 // m
	turn         float64 // radians
	count        int
}

func (g *generator) chance(share float64) bool { return g.r.Float64() < share }

func (g *generator) between(least, most float64) float64 { return least + g.r.Float64()*(most-least) }

func (g *generator) name() string { return generatedNames[g.r.IntN(len(generatedNames))] }

func (g *generator) id(kind string) string {
	g.count++
	return fmt.Sprintf("%s-%d", kind, g.count)
}

// size draws the area from 40 m² to 10 ha, all orders of size alike, and how
// long it is for its width: one site in four is a strip.
func (g *generator) size() {
	area := math.Exp(g.between(math.Log(40), math.Log(100_000)))
	long := g.between(0.6, 1.7)
	if g.chance(0.25) {
		long = g.between(4, 14)
	}
	g.width, g.depth = math.Sqrt(area*long), math.Sqrt(area/long)
	if g.chance(0.5) {
		g.turn = g.between(0, math.Pi)
	}
}

// at turns a place of the site.
func (g *generator) at(x, y float64) geo.XY {
	sin, cos := math.Sincos(g.turn)
	return geo.XY{X: x*cos - y*sin, Y: x*sin + y*cos}
}

func (g *generator) ring(x0, y0, x1, y1 float64) []geo.XY {
	return []geo.XY{g.at(x0, y0), g.at(x1, y0), g.at(x1, y1), g.at(x0, y1)}
}

func (g *generator) anywhere() (x, y float64) { return g.between(0, g.width), g.between(0, g.depth) }

// box is a rectangle on the site with sides up to a share of those of the site.
func (g *generator) box(share float64) []geo.XY {
	w, h := g.width*g.between(share/4, share), g.depth*g.between(share/4, share)
	x, y := g.between(0, g.width-w), g.between(0, g.depth-h)
	return g.ring(x, y, x+w, y+h)
}

// buildings puts up none, some, or four wings round a court.
func (g *generator) buildings() {
	switch g.r.IntN(4) {
	case 0:
	case 1:
		w, h := g.width/5, g.depth/5
		for _, wing := range [][]geo.XY{
			g.ring(w, h, 4*w, 1.5*h), g.ring(w, 3.5*h, 4*w, 4*h), g.ring(w, 1.5*h, 1.5*w, 3.5*h), g.ring(3.5*w, 1.5*h, 4*w, 3.5*h),
		} {
			g.site.area("building", g.id("wing"), g.name(), wing)
		}
	default:
		for range 1 + g.r.IntN(1+int(g.width*g.depth/4000)) {
			g.site.area("building", g.id("house"), g.name(), g.box(0.35))
		}
	}
}

func (g *generator) grounds() {
	kinds := []string{"bed", "hardscape", "pool", "water", "synthetic", "bare", "rough", "keepout"}
	for range g.r.IntN(25) {
		kind := kinds[g.r.IntN(len(kinds))]
		if g.chance(0.5) {
			x, y := g.anywhere()
			p := g.at(x, y)
			g.site.area(kind, g.id(kind), g.name(), blob(p.X, p.Y, max(0.4, min(g.width, g.depth)*g.between(0.01, 0.12))))
			continue
		}
		g.site.area(kind, g.id(kind), g.name(), g.box(0.2))
	}
}

// zones leaves the turf whole, or lays zones over it as a grid of up to sixty,
// or as some of any size, of which many are tiny.
func (g *generator) zones() {
	facts := func() []any {
		facts := []any{"exposure", []string{"full", "part", "shade", "deep"}[g.r.IntN(4)]}
		if g.chance(0.15) {
			facts = append(facts, "apply", false)
		}
		if g.chance(0.3) {
			facts = append(facts, "species", "tall fescue", "slope_percent", g.r.IntN(30))
		}
		return facts
	}
	switch g.r.IntN(4) {
	case 0:
	case 1:
		across := 2 + g.r.IntN(9)
		up := 1 + g.r.IntN(max(1, 60/across))
		for i := range across * up {
			x, y := float64(i%across)*g.width/float64(across), float64(i/across)*g.depth/float64(up)
			g.site.area("zone", g.id("zone"), g.name(), g.ring(x, y, x+g.width/float64(across), y+g.depth/float64(up)), facts()...)
		}
	case 2:
		for range 1 + g.r.IntN(30) {
			x, y := g.anywhere()
			side := max(0.6, min(g.width, g.depth)/30)
			g.site.area("zone", g.id("zone"), g.name(), g.ring(x, y, x+side, y+side), facts()...)
		}
	default:
		for range 1 + g.r.IntN(12) {
			g.site.area("zone", g.id("zone"), g.name(), g.box(0.6), facts()...)
		}
	}
}

func (g *generator) trees() {
	for range g.r.IntN(20) {
		x, y := g.anywhere()
		p := g.at(x, y)
		g.site.point("tree", g.id("tree"), g.name(), p.X, p.Y, "crown_m", g.between(2, 12), "leaf", []string{"deciduous", "evergreen"}[g.r.IntN(2)])
	}
}

func (g *generator) lines() {
	for _, kind := range []string{"fence", "wall", "hedge", "cutline"} {
		if g.chance(0.4) {
			x0, y0 := g.anywhere()
			x1, y1 := g.anywhere()
			var facts []any
			if kind == "hedge" {
				facts = []any{"width_m", 1}
			}
			g.site.line(kind, g.id(kind), g.name(), []geo.XY{g.at(x0, y0), g.at(x1, y1)}, facts...)
		}
	}
	if g.chance(0.5) {
		g.site.line("hardscape", "street", "Cider Street", []geo.XY{g.at(-0.4*g.width, -6), g.at(1.4*g.width, -6)}, "width_m", 8)
	}
}

// signs puts points on the site, some of them side by side.
func (g *generator) signs() {
	x, y := g.anywhere()
	for range g.r.IntN(20) {
		if g.chance(0.7) {
			x, y = g.anywhere()
		}
		p := g.at(x+g.between(-0.3, 0.3), y+g.between(-0.3, 0.3))
		kind := []string{"hazard", "hazard", "hazard", "access", "refill", "start"}[g.r.IntN(6)]
		if kind == "start" && slices.ContainsFunc(g.site.features, func(f inventedFeature) bool { return f.props["kind"] == kind }) {
			continue
		}
		g.site.point(kind, g.id(kind), g.name(), p.X, p.Y)
	}
}
