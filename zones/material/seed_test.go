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

// A mix of 80 % ryegrass and 20 % bluegrass by weight of live seed, 4 lb on
// 1,000 ft2, worked by hand.
func TestSeedMix(t *testing.T) {
	mix := SeedMix{{"ryegrass", 0.8, SeedLot{0.98, 0.90}}, {"bluegrass", 0.2, SeedLot{0.95, 0.80}}}
	rates := must(mix.Rates(rate("4 lb PLS / M")))
	near(t, "ryegrass", must(rates[0].In(unit("lb / M"))), 3.2/0.882, 1e-12)
	near(t, "bluegrass", must(rates[1].In(unit("lb / M"))), 0.8/0.76, 1e-12)

	thirds := SeedMix{{"a", 0.333, SeedLot{1, 1}}, {"b", 0.333, SeedLot{1, 1}}, {"c", 0.333, SeedLot{1, 1}}}
	rates = must(thirds.Rates(rate("3 lb PLS / M")))
	near(t, "a printed third", must(rates[0].In(unit("lb / M"))), 1, 1e-12)

	_, err := SeedMix{{"a", 0.5, SeedLot{1, 1}}}.Rates(rate("3 lb PLS / M"))
	checkError(t, "half a mix", err, "shares of the seed mix add up to 50 %, not 100 %")
	_, err = SeedMix{{"a", 1, SeedLot{1, 0}}}.Rates(rate("3 lb PLS / M"))
	checkError(t, "dead seed", err, `seed "a" has no share or no live seed (state its share, purity and germination from the tag)`)
}

// Seeds in a pound: Cornell, Safe Sports Fields, gives 1.5 million of Kentucky
// bluegrass and 250,000 of perennial ryegrass; University of Illinois, 1995,
// gives 1.4 million and 240,000.
func TestSeedCounts(t *testing.T) {
	perKg := func(perPound float64) float64 { return perPound / unit("lb").factor() }
	bluegrass, ryegrass := perKg(1.5e6), perKg(250e3)
	shares := must(SharesByWeight([]SeedCount{{0.5, bluegrass}, {0.5, ryegrass}}))
	near(t, "weight of half the seeds, bluegrass", float64(shares[0]), 1.0/7, 1e-12)
	near(t, "weight of half the seeds, ryegrass", float64(shares[1]), 6.0/7, 1e-12)
	shares = must(SharesByNumber([]SeedCount{{0.7, bluegrass}, {0.3, ryegrass}}))
	near(t, "seeds of 70 % bluegrass by weight", float64(shares[0]), 70*6/(70*6+30.0), 1e-12)
	for _, counts := range [][]SeedCount{{{1, 0}}, {{-1, 5}}} {
		_, err := SharesByWeight(counts)
		checkError(t, "no seeds", err, "a kind of seed without a weight or a share (state how many seeds weigh a pound or a kilogram)")
	}
	_, err := SharesByNumber([]SeedCount{{0, 5}})
	checkError(t, "no share", err, "a mix of no seed has no shares")
}
