package zones

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
)

// realData is a directory of real inputs beside the project, found by walking
// up from here. A test that needs one is skipped where there is none.
func realData(t *testing.T, name string) string {
	t.Helper()
	for dir := ".."; len(dir) < 40; dir = filepath.Join("..", dir) {
		found := filepath.Join(dir, "shared", "data", name)
		if info, err := os.Stat(found); err == nil && info.IsDir() {
			return found
		}
	}
	t.Skipf("no shared/data/%s beside the project", name)
	return ""
}

// realSites are the files of the real sites.
func realSites(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(realData(t, "sites"), "*.geojson"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no sites: %v", err)
	}
	return files
}

func TestRealSites(t *testing.T) {
	for _, name := range realSites(t) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			t.Parallel()
			file, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			p := platOf(t, file)
			m := p.Measurement()
			checkIdentities(t, m)
			checkDisjoint(t, p)
			if p.Site.Attribution != "Map data from OpenStreetMap contributors, ODbL 1.0" {
				t.Errorf("attribution %q", p.Site.Attribution)
			}

			shuffled := collectionOf(t, file)
			rand.New(rand.NewPCG(1, 2)).Shuffle(len(shuffled.Features), func(i, j int) {
				shuffled.Features[i], shuffled.Features[j] = shuffled.Features[j], shuffled.Features[i]
			})
			again := Survey(NewSite(shuffled, Reading{Key: builtInKey}))
			if again == nil {
				t.Fatal("refused in another order")
			}
			inOtherOrder := again.Measurement()
			checkSameAreas(t, inOtherOrder, m, 1e-9)
			checkSameZones(t, inOtherOrder.Zones, m.Zones, 1e-9)
			checkSameEdges(t, inOtherOrder, m)
			checkReadsBack(t, p, m)
		})
	}
}
