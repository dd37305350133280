package lanes

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

var update = flag.Bool("update", false, "rewrite the tables in testdata/lanes")

// A row is what the lanes of a yard come to.
type row struct {
	name     string
	plan     Plan
	coverage Coverage
}

func rowOf(t failer, s sample, w Work) row {
	t.Helper()
	p := must[Plan](t)(Lay(s.yard, w))
	return row{s.name, p, p.Coverage(s.yard)}
}

func (r row) ratio() float64 { return r.plan.SpreadLength() / r.plan.bound() }

func tableOf(rows []row) string {
	var b strings.Builder
	b.WriteString("| yard | ground m2 | by hand m2 | least m | spreading m | ratio | other walking m | lanes | covered % | off the turf % | CV % |\n|---|---|---|---|---|---|---|---|---|---|---|\n")
	for _, r := range rows {
		c := r.coverage
		fmt.Fprintf(&b, "| %s | %.0f | %.1f | %.0f | %.0f | %.3f | %.0f | %d | %.2f | %.2f | %.0f |\n", r.name, c.Ground, c.Hand, r.plan.bound(),
			r.plan.SpreadLength(), r.ratio(), r.plan.TravelLength(), r.plan.Summary(c).Lanes, 100*c.Covered, 100*c.Outside, 100*c.Even.CV)
	}
	return b.String()
}

// checkTable compares a table with the one in testdata/lanes, or rewrites it.
func checkTable(t *testing.T, name, text string) {
	t.Helper()
	file := filepath.Join("..", "..", "testdata", "lanes", name)
	if *update {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(want, []byte(text)) {
		t.Errorf("%s is not what is measured now: look at the difference that go test ./zones/lanes -update makes", file)
	}
}

// median of figures, which it sorts.
func median(figures []float64) float64 {
	slices.Sort(figures)
	return figures[len(figures)/2]
}

func TestGeneratedYards(t *testing.T) {
	var rows []row
	var ratios []float64
	for _, s := range generated(t) {
		r := rowOf(t, s, singleWork(2.5))
		rows, ratios = append(rows, r), append(ratios, r.ratio())
		if r.ratio() > 1.3 || r.coverage.Covered < 0.99 || r.coverage.Outside > 0.01 {
			t.Errorf("%s: ratio %.3f, covered %.4f, outside %.4f", r.name, r.ratio(), r.coverage.Covered, r.coverage.Outside)
		}
	}
	text := fmt.Sprintf(generatedHead, len(rows), median(ratios), ratios[len(ratios)*9/10], ratios[len(ratios)-1])
	checkTable(t, "generated.md", text+tableOf(rows))
}

const generatedHead = `# Lanes on generated yards

%d invented yards, a swath of 2.5 m, a triangular pattern, every place gone over
once. The least length is the ground over the swath, what lanes exactly a swath
apart would take. Spreading is %.3f times that on the median yard, %.3f at the 90th
percentile and %.3f at most. Ground is covered that gets half of the rate or more.
Written by
` + "`go test ./zones/lanes -update`" + `.

`

// realSites reads the real sites beside the project.
func realSites(t *testing.T) []sample {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(shared(t, "data/sites"), "*.geojson"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no real sites: %v", err)
	}
	var samples []sample
	for _, name := range files {
		file, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for c := range ingest.GeoJSON(bytes.NewReader(file), name, ingest.DefaultLimits) {
			plat := zones.Survey(zones.NewSite(c, zones.Reading{Key: zones.DefaultMapKey()}))
			if plat == nil {
				t.Fatalf("%s is refused", name)
			}
			y := must[Yard](t)(YardOf(plat, CommonPractice()))
			samples = append(samples, sample{strings.TrimSuffix(filepath.Base(name), ".geojson"), y})
		}
	}
	return samples
}

func TestRealSites(t *testing.T) {
	var rows []row
	var savings []float64
	lines := ""
	for _, s := range realSites(t) {
		r := rowOf(t, s, singleWork(2.5))
		rows = append(rows, r)
		if r.ratio() > 1.25 || r.coverage.Covered < 0.99 || r.coverage.Outside > 0.01 {
			t.Errorf("%s: ratio %.3f, covered %.4f, outside %.4f", r.name, r.ratio(), r.coverage.Covered, r.coverage.Outside)
		}
		if wet := r.coverage.Where[zones.Water] + r.coverage.Where[zones.Pool]; wet > 0 {
			t.Errorf("%s: %.2g of the output lands on water", r.name, wet)
		}
		plain, walked := plainWalk(t, s.yard, r.plan), r.plan.SpreadLength()+r.plan.TravelLength()
		savings = append(savings, 1-walked/plain)
		lines += fmt.Sprintf("| %s | %.0f | %.0f | %.1f |\n", r.name, plain, walked, 100*(1-walked/plain))
	}
	saved := median(savings)
	if saved < 0.12 {
		t.Errorf("the median site saves %.1f %% of walking, want 12", 100*saved)
	}
	text := fmt.Sprintf(realHead, len(rows)) + tableOf(rows) + fmt.Sprintf(plainHead, 100*saved) + lines
	checkTable(t, "real.md", text)
}

const realHead = `# Lanes on real properties

%d properties of open map data (Map data © OpenStreetMap contributors, ODbL 1.0),
a swath of 2.5 m, a triangular pattern, every place gone over once. The least
length is the ground over the swath. Written by ` + "`go test ./zones/lanes -update`" + `.

`

const plainHead = `
## Against plain back-and-forth

The same laps and axes, then rows along the longest side of each lawn, walked in
the order in which they lie, and lawns in the order of the map. All walking, the
ways between lanes included; the median site saves %.1f %%.

| yard | plain m | here m | saved %% |
|---|---|---|---|
`
