package render

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"math"
	"testing"

	"example.org/turfplat/zones/sun"
)

// patternsOfSun are those that may lie side by side on a sheet of the sun.
func patternsOfSun() map[string]pattern {
	patterns := map[string]pattern{"check on site": doubt}
	for e, look := range exposureLooks {
		patterns[string(e)] = look.pattern
	}
	return patterns
}

// A photocopy is a sheet as an office printer and then a copier leave it: black or
// white, at 300 dots per inch.
type photocopy struct {
	black [][]bool
}

// copied prints a field of a pattern, has it blurred by three dots each way and
// parted again into black and white.
func copied(t *testing.T, pattern pattern) photocopy {
	t.Helper()
	s := NewSheet("field", "Field", Paper{"card", 60, 60})
	s.Add(pattern.fill(box(0, 0, 60), black))
	file, err := PNG(s, 300)
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return parted(picture)
}

func parted(picture image.Image) photocopy {
	const blur, threshold = 1, 0.35 // dots each side; share of black that a copier still sees
	size := picture.Bounds().Size()
	dark := func(x, y int) float64 {
		r, _, _, _ := picture.At(x, y).RGBA()
		return 1 - float64(r)/0xFFFF
	}
	p := photocopy{make([][]bool, size.Y)}
	for y := range p.black {
		p.black[y] = make([]bool, size.X)
		for x := range p.black[y] {
			sum, n := 0.0, 0
			for j := max(0, y-blur); j <= min(size.Y-1, y+blur); j++ {
				for i := max(0, x-blur); i <= min(size.X-1, x+blur); i++ {
					sum += dark(i, j)
					n++
				}
			}
			p.black[y][x] = sum/float64(n) > threshold
		}
	}
	return p
}

// share is the part of the print that is black.
func (p photocopy) share() float64 {
	n, all := 0, 0
	for _, row := range p.black {
		for _, b := range row {
			if b {
				n++
			}
			all++
		}
	}
	return float64(n) / float64(all)
}

// upright is the mean length of black runs from top to bottom, in millimetres.
func (p photocopy) upright() float64 {
	dots, runs := 0, 0
	for x := range p.black[0] {
		for y := range p.black {
			if !p.black[y][x] {
				continue
			}
			dots++
			if y == 0 || !p.black[y-1][x] {
				runs++
			}
		}
	}
	return float64(dots) / float64(max(1, runs)) * mmPerInch / 300
}

// After a photocopy without colour any two patterns of the sun still differ by
// half in how much ink they have or how it runs, and shade has more the deeper
// it is.
func TestPatternsOfSunSurviveACopy(t *testing.T) {
	const factor = 1.5
	prints := make(map[string]photocopy)
	for name, pattern := range patternsOfSun() {
		prints[name] = copied(t, pattern)
		t.Logf("%s: %.1f %% black, runs of %.2f mm", name, 100*prints[name].share(), prints[name].upright())
		if prints[name].share() < 0.01 {
			t.Errorf("%s: %.2f %% of it is left", name, 100*prints[name].share())
		}
	}
	differ := func(a, b float64) bool { return max(a, b) >= factor*min(a, b) }
	for a, p := range prints {
		for b, q := range prints {
			if a < b && !differ(p.share(), q.share()) && !differ(p.upright(), q.upright()) {
				t.Errorf("%s and %s look alike: %.1f and %.1f %% black, runs of %.2f and %.2f mm", a, b, 100*p.share(), 100*q.share(), p.upright(), q.upright())
			}
		}
	}
	for i, e := range sun.Exposures[1:] {
		if lighter := sun.Exposures[i]; i > 0 && prints[string(e)].share() < factor*prints[string(lighter)].share() {
			t.Errorf("%s is hardly darker than %s", e, lighter)
		}
	}
}

// linear gives the inks in linear light, 0 to 1 (IEC 61966-2-1).
func linear(k Ink) [3]float64 {
	one := func(c uint8) float64 {
		grey := Ink{c, c, c, true}
		return grey.luminance()
	}
	return [3]float64{one(k.R), one(k.G), one(k.B)}
}

type matrix [3][3]float64

func (m matrix) of(v [3]float64) (w [3]float64) {
	for i := range m {
		for j := range v {
			w[i] += m[i][j] * v[j]
		}
	}
	return w
}

// inverse by cofactors.
func (m matrix) inverse() (inv matrix) {
	minor := func(i, j int) float64 {
		a, b, c, d := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
		return m[a][c]*m[b][d] - m[a][d]*m[b][c]
	}
	det := m[0][0]*minor(0, 0) + m[0][1]*minor(0, 1) + m[0][2]*minor(0, 2)
	for i := range inv {
		for j := range inv {
			inv[i][j] = minor(j, i) / det
		}
	}
	return inv
}

// Linear RGB to the responses of the cones, and what they become where one
// kind is missing: Vienot, Brettel and Mollon 1999, Color Research and
// Application 24:243 (from memory).
var (
	cones = matrix{{17.8824, 43.5161, 4.11935}, {3.45565, 27.1554, 3.86714}, {0.0299566, 0.184309, 1.46709}}

	sights = map[string]matrix{
		"usual":        {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
		"deuteranopia": {{1, 0, 0}, {0.494207, 0, 1.24827}, {0, 0, 1}},
		"protanopia":   {{0, 2.02344, -2.52581}, {0, 1, 0}, {0, 0, 1}},
	}
)

// lab is CIE 1976 L*a*b* of linear light under D65.
func lab(v [3]float64) [3]float64 {
	xyz := matrix{{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}}.of(v)
	f := func(t float64) float64 {
		if t > 216.0/24389 {
			return math.Cbrt(t)
		}
		return (24389.0/27*t + 16) / 116
	}
	x, y, z := f(max(0, xyz[0])/0.9505), f(max(0, xyz[1])), f(max(0, xyz[2])/1.089)
	return [3]float64{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

func apart(a, b [3]float64) float64 {
	return math.Sqrt((a[0]-b[0])*(a[0]-b[0]) + (a[1]-b[1])*(a[1]-b[1]) + (a[2]-b[2])*(a[2]-b[2]))
}

// Eyes that lack a kind of cone see as they are said to: a grey stays itself,
// and to deuteranopes and protanopes a red and a green come together.
func TestSightsAreThoseOfPeople(t *testing.T) {
	for name, sight := range sights {
		see := func(k Ink) [3]float64 { return lab(cones.inverse().of(sight.of(cones.of(linear(k))))) }
		if d := apart(see(grey), lab(linear(grey))); d > 1 {
			t.Errorf("%s: grey moves by %.1f", name, d)
		}
		red, green := RGB(0xB06030), RGB(0x708030)
		if usual := apart(lab(linear(red)), lab(linear(green))); name != "usual" && apart(see(red), see(green)) > 0.5*usual {
			t.Errorf("%s: red and green are %.0f apart, to usual eyes %.0f", name, apart(see(red), see(green)), usual)
		}
	}
}

// To people of any colour vision, and in grey, the tints of neighbouring
// exposures differ by far more than what is just seen (2.3, Mahy, Van Eycken
// and Oosterlinck 1994, from memory), and text can be read on them.
func TestTintsOfSunStayApart(t *testing.T) {
	const least, leastGrey = 12, 6
	for i, e := range sun.Exposures {
		tint := exposureLooks[e].tint
		for _, ground := range []Ink{tint, tint.grey()} {
			if c := contrast(black, ground); c < readableContrast {
				t.Errorf("black on %s (%s) has a contrast of %.2f", e, ground, c)
			}
		}
		for _, f := range sun.Exposures[:i] {
			other := exposureLooks[f].tint
			for name, sight := range sights {
				see := func(k Ink) [3]float64 { return lab(cones.inverse().of(sight.of(cones.of(linear(k))))) }
				if d := apart(see(tint), see(other)); d < least {
					t.Errorf("%s: %s and %s are %.1f apart", name, e, f, d)
				}
			}
			if d := lab(linear(other.grey()))[0] - lab(linear(tint.grey()))[0]; d < leastGrey {
				t.Errorf("in grey %s is only %.1f darker than %s", e, d, f)
			}
		}
	}
}

// Greys of a sheet of the sun: white, and three more.
func TestFewGreysOfSun(t *testing.T) {
	greys := make(map[string]bool)
	for _, look := range exposureLooks {
		if k := look.tint.grey(); k != white {
			greys[fmt.Sprint(k)] = true
		}
	}
	if len(greys) > 3 {
		t.Errorf("%d greys", len(greys))
	}
}
