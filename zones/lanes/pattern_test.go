package lanes

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const foot = 0.3048

// near asks two figures to agree to a relative or an absolute tolerance.
func near(t failer, what string, got, want, rel, abs float64) {
	t.Helper()
	if !(math.Abs(got-want) <= max(rel*math.Abs(want), abs)) {
		t.Errorf("%s: %.9f, want %.9f", what, got, want)
	}
}

// Passes of a triangle that reaches 10 ft to each side: sums of straight lines,
// in closed form.
func TestAbreastOfTriangles(t *testing.T) {
	for _, tt := range []struct{ pitch, mean, cv, least, most float64 }{
		{5, 2, 0, 1, 1}, {8, 1.25, 0.05164, 0.96, 1.12}, {10, 1, 0, 1, 1},
		{12, 0.83333, 0.06928, 0.96, 1.2}, {15, 0.66667, 0.25, 0.75, 1.5}, {20, 0.5, 0.57735, 0, 2},
	} {
		e := Triangle(10 * foot).Abreast(tt.pitch * foot)
		near(t, "mean", e.Mean, tt.mean, 1e-3, 0)
		near(t, "CV", e.CV, tt.cv, 0.01, 1e-6)
		near(t, "least", e.Least/e.Mean, tt.least, 0.01, 2e-3)
		near(t, "most", e.Most/e.Mean, tt.most, 0.01, 0)
	}
}

// Passes of a normal curve sum to their mean and a cosine of relative height
// 2 exp(-2 (pi sigma / pitch)^2), the rest being less than a thousandth of that
// (Poisson's summation formula).
func TestAbreastOfBells(t *testing.T) {
	const sigma = 4 * foot
	p := Bell(sigma * math.Sqrt(8*math.Ln2))
	near(t, "half-centre distance, ft", p.Swath()/foot, 9.4193, 1e-4, 0)
	e := p.Abreast(p.Swath())
	wave := 2 * math.Exp(-2*math.Pow(math.Pi*sigma/p.Swath(), 2))
	near(t, "CV", e.CV, wave/math.Sqrt2, 0.01, 0)
	near(t, "CV as computed elsewhere", e.CV, 0.04023, 0.01, 0)
	near(t, "mean", e.Mean, math.Sqrt(2*math.Pi)*sigma/p.Swath(), 1e-3, 0)
}

// The whole table of computed values, where it lies beside the project.
func TestAbreastAsComputedElsewhere(t *testing.T) {
	var table struct {
		Overlap []struct {
			Pattern string
			Pitch   float64 `json:"pass_spacing_ft"`
			Mean    float64 `json:"mean_relative_to_centre_single_pass"`
			CV      float64 `json:"cv_percent"`
			Least   float64 `json:"min_over_mean"`
			Most    float64 `json:"max_over_mean"`
		}
		Counts []struct {
			Width, Swath float64
			N            int
			Even         float64 `json:"even_spacing"`
		} `json:"swath_counts"`
	}
	readShared(t, "checks/coverage.json", &table)
	checked := 0
	for _, row := range table.Overlap {
		if !strings.HasPrefix(row.Pattern, "triangular, throw half-width 10 ft") {
			continue
		}
		e := Triangle(10 * foot).Abreast(row.Pitch * foot)
		near(t, "mean", e.Mean, row.Mean, 1e-3, 0)
		near(t, "CV", 100*e.CV, row.CV, 0.01, 1e-3)
		near(t, "least", e.Least/e.Mean, row.Least, 0.01, 2e-3)
		near(t, "most", e.Most/e.Mean, row.Most, 0.01, 0)
		checked++
	}
	if checked == 0 || len(table.Counts) == 0 {
		t.Fatal("no rows were checked")
	}
	for _, row := range table.Counts {
		n, pitch := Abreast(row.Width, row.Swath)
		if n != row.N {
			t.Errorf("%v wide at %v: %d lanes, want %d", row.Width, row.Swath, n, row.N)
		}
		near(t, "pitch", pitch, row.Even, 0, 1e-6)
	}
}

// readShared reads JSON from the folder of reading matter beside the project,
// found by walking up from here.
func readShared(t *testing.T, name string, into any) {
	t.Helper()
	file, err := os.ReadFile(shared(t, name))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(file, into); err != nil {
		t.Fatal(err)
	}
}

func shared(t *testing.T, name string) string {
	t.Helper()
	for dir := ".."; len(dir) < 40; dir = filepath.Join("..", dir) {
		if found := filepath.Join(dir, "shared", name); exists(found) {
			return found
		}
	}
	t.Skip("no shared/" + name + " beside the project")
	return ""
}

func exists(name string) bool {
	_, err := os.Stat(name)
	return err == nil
}

// Lanes side by side: ceil of the width over the swath, evened out.
func TestAbreastCounts(t *testing.T) {
	for _, tt := range []struct {
		width, swath float64
		n            int
	}{
		{50, 8, 7}, {48, 8, 6}, {49, 8, 7}, {20, 6, 4}, {20, 2.5, 8}, {7, 8, 1}, {100, 12, 9}, {100.0001, 12, 9}, {36, 12, 3}, {65.6, 9, 8},
		{20.0000002, 2.5, 8}, // rounding adds no lane
		{20.01, 2.5, 9},
	} {
		n, pitch := Abreast(tt.width, tt.swath)
		if n != tt.n {
			t.Errorf("%v wide at %v: %d lanes, want %d", tt.width, tt.swath, n, tt.n)
		}
		near(t, "pitch", pitch*float64(n), tt.width, 1e-12, 0)
	}
}

// Every shape leaves half of what it leaves at the centre half a swath away,
// and its output is the integral of its catch.
func TestShapes(t *testing.T) {
	for _, name := range Shapes {
		p := must[Pattern](t)(Shaped(name, 3))
		within, beyond := p.catch(1.499)/p.catch(0), p.catch(1.501)/p.catch(0)
		if name == "drop" {
			if within != 1 || beyond != 0 {
				t.Errorf("drop leaves %v and %v beside half its swath", within, beyond)
			}
		} else {
			near(t, name+" at half its swath", (within+beyond)/2, 0.5, 2e-3, 0)
		}
		left, right := p.Reach()
		sum := 0.0
		const step = 1e-3
		for x := -left - 1 + step/2; x < right+1; x += step {
			sum += p.catch(x) * step
		}
		near(t, name+" output", p.output, sum, 2e-3, 0)
		near(t, name+" to the left", p.half(-1), 0.5, 2e-3, 0)
		if _, err := Shaped(name+"s", 3); err == nil {
			t.Errorf("%ss is no shape", name)
		}
	}
}

// A row of trays that catch a triangle gives a triangle; a skewed one has its
// halves apart.
func TestMeasured(t *testing.T) {
	var row []Tray
	for x := -10.0; x <= 10; x++ {
		row = append(row, Tray{x * foot, 30 * max(0, 1-math.Abs(x)/8)})
	}
	p := must[Pattern](t)(Measured(row))
	near(t, "swath", p.Swath(), 8*foot, 1e-9, 0)
	near(t, "CV", p.Abreast(8*foot).CV, 0, 0, 1e-6)
	near(t, "output", p.output, 30*8*foot, 1e-9, 0)
	near(t, "to the left", p.half(-1), 0.5, 1e-9, 0)

	skewed := must[Pattern](t)(Measured([]Tray{{-2, 0}, {-1, 4}, {0, 8}, {1, 8}, {2, 4}, {3, 0}}))
	near(t, "skewed swath", skewed.Swath(), 1+2, 1e-9, 0)
	near(t, "skewed, to the left", skewed.half(-1), 8./24, 1e-9, 0) // trapezoids: 2+6 to the left, 8+6+2 to the right

	// Half of the centre's 6.0 g lies on the tray at 4 ft to the left, and between
	// those at 4 and 5 ft to the right.
	row = nil
	for i, grams := range []float64{0, .5, 1.1, 2, 3, 4.1, 5, 5.9, 6, 5.8, 5.1, 4, 3.1, 2.1, 1, .4, 0} {
		row = append(row, Tray{float64(i-8) * foot, grams})
	}
	p = must[Pattern](t)(Measured(row))
	near(t, "swath of a test", p.Swath(), 8.1*foot, 1e-9, 0)
	if cv, wide := p.Abreast(p.Swath()).CV, p.Abreast(1.5*p.Swath()).CV; !(cv < 0.05 && wide > 2*cv) {
		t.Errorf("CV %.3f at the swath and %.3f at half as much again", cv, wide)
	}

	for name, bad := range map[string][]Tray{
		"two trays": {{-1, 2}, {1, 2}}, "two on one place": {{-1, 1}, {0, 2}, {0, 3}, {1, 1}}, "nothing caught": {{-1, 0}, {0, 0}, {1, 0}},
		"all to one side": {{5, 1}, {6, 2}, {7, 1}}, "less than nothing": {{-1, 1}, {0, -2}, {1, 1}}, "no number": {{-1, 1}, {0, math.NaN()}, {1, 1}},
		"endless": {{-1, 1}, {0, math.Inf(1)}, {1, 1}},
	} {
		if p, err := Measured(bad); err == nil {
			t.Errorf("%s: swath %v", name, p.Swath())
		}
	}
}

// What two passes leave together never depends on where one starts to count.
func TestAbreastLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := must[Pattern](t)(Shaped(rapid.SampledFrom(Shapes).Draw(t, "shape"), rapid.Float64Range(0.5, 10).Draw(t, "swath")))
		pitch := rapid.Float64Range(0.3, 1.5).Draw(t, "pitch") * p.Swath()
		e := p.Abreast(pitch)
		near(t, "mean", e.Mean, p.output/p.catch(0)/pitch, 5e-3, 0) // all output lies somewhere
		if e.Least > e.Mean || e.Most < e.Mean || e.CV < 0 {
			t.Errorf("unordered: %+v", e)
		}
	})
}

func FuzzReadTrays(f *testing.F) {
	f.Add("offset_ft,catch\n-5,1\n0,9\n5,2\n")
	f.Add("catch,offset_m,note\n1,-1,a\n4,0,b\n1,1,c\n")
	f.Add("offset_m;catch\n")
	f.Add("offset_m,catch\n1e400,1\n")
	f.Add("\ufeffoffset_m,catch\n\"1\n")
	f.Fuzz(func(t *testing.T, text string) {
		trays, err := ReadTrays(strings.NewReader(text))
		if err != nil {
			return
		}
		p, err := Measured(trays)
		if err != nil {
			return
		}
		left, right := p.Reach()
		if !(p.Swath() > 0) || !(left > 0) || !(right > 0) || p.Swath() > left+right {
			t.Errorf("swath %v, reach %v and %v", p.Swath(), left, right)
		}
	})
}
