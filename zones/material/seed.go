package material

import (
	"math"

	"example.org/turfplat/geo/ingest"
)

// A SeedLot is what the tag of a lot of seed says. Coating counts as what is
// not pure, so coated seed needs no other treatment.
type SeedLot struct{ Purity, Germination Share }

// PLS returns the part of the lot that is pure live seed.
func (l SeedLot) PLS() Share { return l.Purity * l.Germination }

// A SeedPart is one kind of seed in a mix.
type SeedPart struct {
	Name  string
	Share Share // of the mix's pure live seed, by weight
	Lot   SeedLot
}

// A SeedMix is seed of several kinds, sown together.
type SeedMix []SeedPart

// Rates returns what of each lot, as it is weighed, puts down a rate of pure
// live seed of the mix. Shares must add up to the whole within 0.1 %, as those
// printed do; what is missing is made up in proportion.
func (m SeedMix) Rates(pls Rate) ([]Rate, error) {
	const printed = 0.001
	sum := 0.0
	for _, part := range m {
		if !(part.Share >= 0) || !(part.Lot.PLS() > 0) {
			return nil, inputErrorf("state its share, purity and germination from the tag", "seed %s has no share or no live seed", ingest.Quoted(part.Name))
		}
		sum += float64(part.Share)
	}
	if !(math.Abs(sum-1) <= printed) {
		return nil, inputErrorf("", "shares of the seed mix add up to %s %%, not 100 %%", number(100*sum))
	}
	rates := make([]Rate, len(m))
	for i, part := range m {
		rates[i] = Rate{By: Weight, PerM2: pls.PerM2 * float64(part.Share) / sum / float64(part.Lot.PLS())}
	}
	return rates, nil
}

// A SeedCount is a share of the seeds of a mix, or of its weight, and how many
// seeds of the kind weigh a kilogram.
type SeedCount struct {
	Share      Share
	SeedsPerKg float64
}

// SharesByWeight turns shares of the number of seeds into shares of weight.
func SharesByWeight(byNumber []SeedCount) ([]Share, error) {
	return proportions(byNumber, func(c SeedCount) float64 { return float64(c.Share) / c.SeedsPerKg })
}

// SharesByNumber turns shares of weight into shares of the number of seeds.
func SharesByNumber(byWeight []SeedCount) ([]Share, error) {
	return proportions(byWeight, func(c SeedCount) float64 { return float64(c.Share) * c.SeedsPerKg })
}

func proportions(counts []SeedCount, part func(SeedCount) float64) ([]Share, error) {
	shares := make([]Share, len(counts))
	sum := 0.0
	for i, c := range counts {
		if !(c.SeedsPerKg > 0) || !(c.Share >= 0) {
			return nil, inputErrorf("state how many seeds weigh a pound or a kilogram", "a kind of seed without a weight or a share")
		}
		shares[i] = Share(part(c))
		sum += float64(shares[i])
	}
	if !(sum > 0) {
		return nil, inputErrorf("", "a mix of no seed has no shares")
	}
	for i := range shares {
		shares[i] /= Share(sum)
	}
	return shares, nil
}
