package render

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

// A long thin site is turned where that shows it larger, and the sheet says so
// in the arrow, in words and in the place of everything on it.
func TestLongSiteTurns(t *testing.T) {
	d, sheet := inventedMap(t, "strip")
	up, err := d.arrange()
	if err != nil {
		t.Fatal(err)
	}
	d.turned = nil
	upright, err := d.arrange()
	if err != nil {
		t.Fatal(err)
	}
	if up.lie.turn == 0 || up.scale >= upright.scale {
		t.Fatalf("turned by %g degrees it is drawn at %s, with north up at %s", up.lie.turn, up.scale, upright.scale)
	}
	if turn := math.Abs(up.lie.turn); math.Abs(turn-40) > 0.1 && math.Abs(turn-50) > 0.1 {
		t.Errorf("it is turned by %g degrees, and runs 50 degrees from north", up.lie.turn)
	}
	if !strings.Contains(sheet.Subject, up.lie.northInWords()) || strings.Contains(sheet.Subject, "north up") {
		t.Errorf("told of north: %s", sheet.Subject)
	}
	v, err := up.view()
	if err != nil {
		t.Fatal(err)
	}
	from, to := v.at(geo.XY{}), v.at(geo.XY{Y: 10})
	if north := math.Atan2(from.X-to.X, to.Y-from.Y) * 180 / math.Pi; math.Abs(north-up.lie.turn) > 1e-9 {
		t.Errorf("north runs %g degrees from the top, told as %g", north, up.lie.turn)
	}
	for _, text := range textsOf(group(sheet.Elements, "labels")) {
		if strings.HasPrefix(text.String, "Middle") && text.Turn != 0 {
			t.Errorf("%q is turned by %g degrees", text.String, text.Turn)
		}
	}
}

// North stays up where a turn gains no step of the scale.
func TestNorthStaysUp(t *testing.T) {
	turned := 0
	for _, c := range mapCases(t) {
		a, err := c.draft.arrange()
		if err != nil {
			t.Fatal(err)
		}
		if (a.lie.turn == 0) != strings.Contains(c.sheet.Subject, "north up") {
			t.Errorf("%s is turned by %g degrees, told as %s", c.name, a.lie.turn, c.sheet.Subject)
		}
		if a.lie.turn == 0 {
			continue
		}
		turned++
		level := *c.draft
		level.turned = nil
		if up, err := level.arrange(); err == nil && up.scale <= a.scale {
			t.Errorf("%s is turned by %g degrees at %s, and drawn at %s with north up", c.name, a.lie.turn, a.scale, up.scale)
		}
	}
	if turned < 3 {
		t.Errorf("only %d maps are turned", turned)
	}
	p, m := surveyed(t, strip().geoJSON(t), "strip")
	d, err := siteDraft(p, m, MapOptions{Scale: 2000})
	if err != nil {
		t.Fatal(err)
	}
	if a, err := d.arrange(); err != nil || a.lie.turn != 0 {
		t.Errorf("at a scale at which it fits with north up it is turned by %g degrees, %v", a.lie.turn, err)
	}
}

func TestNorthArrowPointsNorth(t *testing.T) {
	for _, turn := range []float64{0, 40, -90, 90} {
		arrow := northArrow(Point{50, 50}, 12, turn)
		for _, text := range textsOf(arrow.Elements) {
			letter := lettersPlate(text).center()
			way := math.Atan2(50-letter.X, letter.Y-50) * 180 / math.Pi
			if text.Turn != 0 || math.Abs(way-turn) > 1e-9 {
				t.Errorf("turned by %g degrees the letter stands at %g, turned by %g", turn, way, text.Turn)
			}
		}
	}
}

func TestNorthInWords(t *testing.T) {
	for turn, want := range map[float64]string{0: "north up", 40.4: "north 40° to the left of the top", -90: "north 90° to the right of the top"} {
		if got := (lie{turn: turn}).northInWords(); got != want {
			t.Errorf("%g: %q", turn, got)
		}
	}
}

func anyGround(t *rapid.T) geo.Ring {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) geo.XY {
		place := rapid.Float64Range(-500, 500)
		return geo.XY{X: place.Draw(t, "x"), Y: place.Draw(t, "y")}
	}), 3, 40).Draw(t, "ground")
}

// A turn moves ground and no more: lengths stay, and the way back leads back.
func TestLieKeepsLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ground := anyGround(t)
		l := lieOf(ground, rapid.Float64Range(-90, 90).Draw(t, "turn"))
		a, b := ground[0], ground[1]
		if d := l.onSheet(a).Distance(l.onSheet(b)) - a.Distance(b); math.Abs(d) > 1e-9 {
			t.Fatalf("a length grows by %g", d)
		}
		if back := l.onGround(l.onSheet(a)); back.Distance(a) > 1e-9 {
			t.Fatalf("%v comes back as %v", a, back)
		}
		for _, p := range ground {
			if q := l.onSheet(p); q.X < l.extent.Min.X || q.Y > l.extent.Max.Y {
				t.Fatalf("%v lies outside the extent", p)
			}
		}
	})
}

// Long sites lie level or upright, whatever their bearing.
func TestTurnedLiesAreLevel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bearing := rapid.Float64Range(0, 360).Draw(t, "bearing")
		length, width := rapid.Float64Range(50, 300).Draw(t, "length"), rapid.Float64Range(5, 20).Draw(t, "width")
		site := lieOf(nil, bearing)
		var ring geo.Ring
		for _, p := range oblong(0, 0, length, width) {
			ring = append(ring, site.onSheet(p))
		}
		for _, l := range turnedLies(ring) {
			across, up := l.extent.Width(), l.extent.Height()
			const slant = 0.0018 * 300 // m, of a twentieth of a degree over the length, on either side
			level := math.Abs(across-length) < slant && math.Abs(up-width) < slant
			upright := math.Abs(across-width) < slant && math.Abs(up-length) < slant
			if !level && !upright || math.Abs(l.turn) > 90 {
				t.Fatalf("turned by %g degrees it is %g x %g m", l.turn, across, up)
			}
		}
	})
}
