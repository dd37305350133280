package zones

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
)

// realData is a directory of real inputs beside the project, found by walking
// up from here; "" if there is none.
func realData(t *testing.T, name string) string {
	t.Helper()
	for dir := ".."; len(dir) < 40; dir = filepath.Join("..", dir) {
		found := filepath.Join(dir, "shared", "data", name)
		if info, err := os.Stat(found); err == nil && info.IsDir() {
			return found
		}
	}
	return ""
}

func TestRealSites(t *testing.T) {
	dir := realData(t, "sites")
	if dir == "" {
		t.Skip("no shared/data/sites beside the project")
	}
	files, err := filepath.Glob(filepath.Join(dir, "*.geojson"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no sites in %s: %v", dir, err)
	}
	for _, name := range files {
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
