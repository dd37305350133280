package render

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"example.org/turfplat/zones"
)

var generatedFrom = flag.Int("generated-from", 0, "the first seed of the generated sites")

var generatedCount = flag.Int("generated", 40, "how many generated sites the layout is checked on")

// Nothing on a sheet lies on anything else, nothing is cut, all can be read
// and each zone is labelled: on every sheet of every site there is, invented,
// real and generated.
func TestLayouts(t *testing.T) {
	check := func(c mapCase) {
		found := layoutOf(c.sheet).findings()
		found = append(found, c.zonesWithoutLetter()...)
		found = append(found, c.wrongSums()...)
		for _, f := range found {
			t.Errorf("%s: %s", c.name, f)
		}
		if len(found) > 0 && *sheetsDir != "" {
			writePicture(t, c)
		}
	}
	if *generatedFrom == 0 {
		for _, c := range mapCases(t) {
			check(c)
		}
	}
	for seed := range *generatedCount {
		check(generatedCase(t, uint64(*generatedFrom+seed)))
	}
}

func writePicture(t *testing.T, c mapCase) {
	t.Helper()
	file, err := PNG(c.sheet, ScreenDPI)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(*sheetsDir, xmlName(c.name)+".png"), file, 0o644); err != nil {
		t.Fatal(err)
	}
}

// generatedCase is the site map of a generated site, on a paper, in units and
// inks that change from seed to seed.
func generatedCase(t *testing.T, seed uint64) mapCase {
	t.Helper()
	papers := []Paper{Letter, A4, Tabloid, A3, {}}
	o := MapOptions{Paper: papers[seed/2%5], Mono: seed%3 == 0}
	if seed%7 == 0 {
		o.Units = zones.Metric
	}
	name := fmt.Sprintf("generated %d %s", seed, o.Paper.Name)
	p, m := surveyed(t, generated(seed).geoJSON(t), name)
	return mapCaseOf(t, name, siteDraft, p, m, o)
}

// zonesWithoutLetter are the zones whose letter is not on the map, at least 14
// points tall.
func (c mapCase) zonesWithoutLetter() (found []string) {
	letters := map[string]float64{}
	for _, t := range layoutOf(c.sheet).labels() {
		if t.Face == Bold {
			letters[t.String] = max(letters[t.String], t.Size)
		}
	}
	for _, z := range c.draft.plat.Zones {
		if size := letters[z.Letter]; size < 14 {
			found = append(found, fmt.Sprintf("zone %s has a letter of %g points", z.Letter, size))
		}
	}
	return found
}

// Sheets of packets are laid out as well as any.
func TestLayoutsOfPackets(t *testing.T) {
	for _, c := range packetCases(t) {
		for _, sheet := range c.sheets {
			for _, f := range layoutOf(sheet).findings() {
				t.Errorf("%s %s: %s", c.name, sheet.ID, f)
			}
		}
	}
}
