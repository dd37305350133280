package material

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
)

// Cornell, Safe Sports Fields, seeding rates, prints 81 % and about 20 % more
// seed for purity 95 % and germination 85 %. LSU AgCenter, Pure Live Seed
// Calculation, rounds 48 % x 80 % to 0.38 and so gets 52.6 lb for 52.1.
func TestPureLiveSeed(t *testing.T) {
	lot := SeedLot{0.95, 0.85}
	near(t, "PLS", float64(lot.PLS()), 0.8075, 1e-12)
	printed(t, "PLS, Cornell", float64(lot.PLS()), 0.81, 0.005)
	near(t, "seed for 1 of live seed", must(Product{Seed: lot}.Rate(rate("1 lb PLS / M"))).PerM2/rate("1 lb / M").PerM2, 1/0.8075, 1e-12)
	printed(t, "more seed, Cornell", 1/float64(lot.PLS()), 1.20, 0.04) // "about 20 %"

	p := Product{Seed: SeedLot{0.48, 0.80}, Packs: []Pack{{Size: amount("50 lb")}}}
	r := must(p.Rate(rate("20 lb PLS / M")))
	got := must(r.Over(area("1000 ft2")).In(unit("lb")))
	near(t, "20 lb PLS", got, 20/0.384, 1e-12)
	printed(t, "20 lb PLS, LSU", got, 52.6, 0.6)
	near(t, "back", must(must(p.Delivers(PureLiveSeed, r)).In(unit("lb / M"))), 20, 1e-12)
}

// Computed.
func TestSeedOnAnArea(t *testing.T) {
	near(t, "tall fescue, new", must(rate("7 lb / 1000 ft2").Over(area("4200 ft2")).In(unit("lb"))), 29.4, 1e-12)
	near(t, "Kentucky bluegrass, overseeded", must(rate("1.5 lb / 1000 ft2").Over(area("4200 ft2")).In(unit("lb"))), 6.3, 1e-12)
	near(t, "rye mix", must(rate("35 g / m2").Over(area("250 m2")).In(unit("kg"))), 8.75, 1e-12)
}

// seedingRates are published, each with its source, in the unit of its source
// and in g on a square metre, to 0.01.
type seedingRates struct {
	Rows []struct {
		Species    string
		New        []float64
		Overseed   []float64
		Unit       string
		Source     string
		NewG       []float64 `json:"new_g_per_m2"`
		OverseedG  []float64 `json:"overseed_g_per_m2"`
		Confidence string
	}
}

func TestSeedingRates(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "shared", "checks", "seeding.json"))
	if err != nil {
		t.Skip("the published rates are not beside the project (shared/checks)")
	}
	var published seedingRates
	if err := json.Unmarshal(text, &published); err != nil {
		t.Fatal(err)
	}
	if len(published.Rows) < 20 {
		t.Fatalf("%d rows of rates", len(published.Rows))
	}
	for _, row := range published.Rows {
		u := unit(row.Unit)
		for i, v := range append(row.New, row.Overseed...) {
			got := must(Quantity{Number: v, Unit: u}.In(unit("g / m2")))
			printed(t, row.Species+", "+row.Source, got, append(row.NewG, row.OverseedG...)[i], 0.005)
		}
	}
}
