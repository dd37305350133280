package render

import (
	"fmt"
	"image"
	"math"
	"testing"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/sun"
)

const (
	tileDPI  = 300.0
	tileSide = 256 // pixels, 21.7 mm
)

// A groundClass is one of the classes of ground that a sheet tells apart.
type groundClass struct {
	name string
	draw func(polygon) []Element
}

// siteClasses are those of the site map.
func siteClasses() []groundClass {
	var classes []groundClass
	for _, kind := range zones.CoverKinds {
		classes = append(classes, groundClass{string(kind), looks[kind].fill})
	}
	onTurf := func(p pattern, ink Ink) func(polygon) []Element {
		return func(a polygon) []Element {
			return []Element{Path{Lines: a.lines(), Fill: turfTint}, p.fill(a, ink)}
		}
	}
	for _, e := range sun.Exposures {
		classes = append(classes, groundClass{"zone of " + string(e), onTurf(exposureLooks[e].pattern, shadeInk)})
	}
	return append(classes, groundClass{"unknown", unknownLook.fill}, groundClass{"no application", func(a polygon) []Element {
		turf := looks[zones.Turf]
		return append(turf.fill(a), barred.fill(a, warning))
	}})
}

// sunClasses are those of the sheet of the sun.
func sunClasses() []groundClass {
	classes := []groundClass{{"building", looks[zones.Building].fill}, {"other ground", func(a polygon) []Element {
		return []Element{Path{Lines: a.lines(), Fill: white}}
	}}}
	for _, e := range sun.Exposures {
		look := exposureLooks[e]
		classes = append(classes, groundClass{string(e), func(a polygon) []Element {
			return []Element{Path{Lines: a.lines(), Fill: look.tint}, look.pattern.fill(a, shadeInk)}
		}})
	}
	return classes
}

// drawnTile draws a class at 300 dots per inch.
func drawnTile(t *testing.T, c groundClass, mono bool) groundTile {
	t.Helper()
	side := tileSide/tileDPI*mmPerInch + 0.01
	s := NewSheet("tile", c.name, Paper{"tile", side, side})
	s.Add(c.draw(rect{Point{-20, -20}, Point{side + 20, side + 20}}.polygon())...)
	if mono {
		s.Elements = monochrome(s.Elements)
	}
	picture := drawn(t, s, tileDPI)
	made := groundTile{tileSide, make([][3]float64, tileSide*tileSide)}
	for i := range made.pixels {
		made.pixels[i] = linearAt(picture, i%tileSide, i/tileSide)
	}
	return made
}

func linearAt(picture image.Image, x, y int) (light [3]float64) {
	r, g, b, _ := picture.At(x, y).RGBA()
	for i, v := range [3]uint32{r, g, b} {
		light[i] = lightOf[v>>8]
	}
	return light
}

// lightOf is the linear light of each value of a channel.
var lightOf = func() (light [256]float64) {
	for v := range light {
		light[v] = linear(Ink{uint8(v), 0, 0, true})[0]
	}
	return light
}()

// Least differences between two classes that a person tells apart at a glance,
// each enough by itself: of their colours from afar, CIE 1976 units (2.3 are
// just noticed; Mahy, Van Eycken and Oosterlinck 1994, from memory), and of
// their textures, root mean square in L* (common practice, no source).
const (
	glanceColour  = 10.0
	glanceTexture = 5.0
)

// An impression is what a tile looks like from afar and from near by.
type impression struct {
	colour  [3]float64
	texture [octaves * directions]float64
}

func (t groundTile) impression() impression { return impression{t.meanColour(), t.texture()} }

// separability is how well two classes are told apart: 1 is just at a glance.
func separability(a, b impression) float64 {
	texture := 0.0
	for i := range a.texture {
		texture += (a.texture[i] - b.texture[i]) * (a.texture[i] - b.texture[i])
	}
	return math.Hypot(apart(a.colour, b.colour)/glanceColour, math.Sqrt(texture)/glanceTexture)
}

// Classes of ground are told apart by people of any colour vision, without
// colour, and on a copy of a copy.
func TestClassesStayApart(t *testing.T) {
	const least = 1.0
	same := func(p groundTile) groundTile { return p }
	for sheet, classes := range map[string][]groundClass{"site map": siteClasses(), "sun": sunClasses()} {
		for _, seen := range []struct {
			as   string
			mono bool
			by   func(groundTile) groundTile
		}{
			{"in colour", false, same},
			{"with deuteranopia", false, func(p groundTile) groundTile { return p.seen(seenWith(sights["deuteranopia"])) }},
			{"with protanopia", false, func(p groundTile) groundTile { return p.seen(seenWith(sights["protanopia"])) }},
			{"in grey", false, func(p groundTile) groundTile { return p.seen(greyed) }},
			{"mono", true, same},
			{"on a copy", true, groundTile.copied},
			{"on a copy of a copy", true, func(p groundTile) groundTile { return p.copied().copied() }},
		} {
			tiles := make([]impression, len(classes))
			for i, c := range classes {
				tiles[i] = seen.by(drawnTile(t, c, seen.mono)).impression()
			}
			closest, pair := math.Inf(1), ""
			for i := range tiles {
				for j := range i {
					d := separability(tiles[i], tiles[j])
					words := fmt.Sprintf("%s and %s", classes[i].name, classes[j].name)
					if d < closest {
						closest, pair = d, words
					}
					if d < least {
						t.Errorf("%s %s: %s are %.2f apart, want %g", sheet, seen.as, words, d, least)
					}
				}
			}
			t.Logf("%s %s: the closest are %s, %.2f", sheet, seen.as, pair, closest)
		}
	}
}
