package material

import (
	"cmp"
	"math"
	"slices"
)

// A Pack is a size in which a product is sold.
type Pack struct {
	Size Amount
	Cost float64 // in any one currency; 0 = not known
}

// A PackCount is so many packs of a size.
type PackCount struct {
	Pack
	Count int
}

// BestPacks returns the packs, largest first, that hold at least an amount:
// those that cost least, if every pack has a cost; then those that leave least
// over; then the fewest. Sizes must be measured alike.
//
// The choice is the best there is for sizes that are multiples of one that
// goes at most 1,000 times into the largest, as those of one trade are. Others
// are compared as if each held up to a thousandth of the largest less than it
// does: what is chosen is always enough.
func BestPacks(need Amount, packs []Pack) ([]PackCount, error) {
	if len(packs) == 0 {
		return nil, inputErrorf("write it as in 50 lb", "the product has no pack")
	}
	for _, p := range packs {
		if p.Size.By != need.By || !(p.Size.Size > 0) || p.Cost < 0 {
			return nil, inputErrorf("state all packs alike, as weights or as volumes", "a pack holds nothing, or is measured in another way")
		}
	}
	if math.IsNaN(need.Size) || need.Size > math.MaxInt32*smallest(packs) {
		return nil, inputErrorf("state larger packs", "the job takes more than %d packs", math.MaxInt32)
	}
	if !(need.Size > 0) {
		return nil, nil
	}
	return newShelf(packs).take(need.Size), nil
}

func smallest(packs []Pack) float64 {
	return slices.MinFunc(packs, func(a, b Pack) int { return cmp.Compare(a.Size.Size, b.Size.Size) }).Size.Size
}

// counted returns how many packs of each size there are.
func counted(packs []Pack, counts []int) []PackCount {
	var set []PackCount
	for i, n := range counts {
		if n > 0 {
			set = append(set, PackCount{packs[i], n})
		}
	}
	slices.SortStableFunc(set, func(a, b PackCount) int { return cmp.Compare(b.Size.Size, a.Size.Size) })
	return set
}
