package material

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func packs(texts ...string) []Pack {
	var list []Pack
	for _, text := range texts {
		size, cost, _ := strings.Cut(text, " for ")
		p := Pack{Size: amount(size)}
		fmt.Sscan(cost, &p.Cost)
		list = append(list, p)
	}
	return list
}

func listed(set []PackCount, in string) string {
	var parts []string
	for _, c := range set {
		parts = append(parts, fmt.Sprintf("%d x %g", c.Count, must(c.Size.In(unit(in)))))
	}
	return strings.Join(parts, ", ")
}

func TestBestPacks(t *testing.T) {
	for _, tt := range []struct {
		need  string
		packs []Pack
		in    string
		want  string
	}{
		{"18.7 lb", packs("50 lb"), "lb", "1 x 50"},
		{"50 lb", packs("50 lb"), "lb", "1 x 50"},
		{"50.001 lb", packs("50 lb"), "lb", "2 x 50"},
		{"0 lb", packs("50 lb"), "lb", ""},
		{"92.4 lb", packs("50 lb", "25 lb"), "lb", "2 x 50"},
		{"72 lb", packs("25 lb", "50 lb"), "lb", "1 x 50, 1 x 25"},
		{"80 lb", packs("50 lb", "40 lb"), "lb", "2 x 40"},
		{"92 lb", packs("50 lb", "5 lb"), "lb", "1 x 50, 9 x 5"}, // least left over before fewest
		{"92 lb", packs("50 lb for 30", "5 lb for 8"), "lb", "2 x 50"},
		{"92 lb", packs("50 lb for 30", "5 lb"), "lb", "1 x 50, 9 x 5"}, // a cost is missing
		{"60 lb", packs("50 lb for 30", "20 lb for 10"), "lb", "3 x 20"},
		{"140 fl oz", packs("1 gal", "1 qt", "1 pt"), "fl oz", "1 x 128, 1 x 16"},
		{"2.2 lb", packs("18 oz", "1.125 lb"), "lb", "2 x 1.125"}, // one size, written twice
		{"101 kg", packs("50 lb", "20 kg", "25 kg"), "kg", "1 x 22.6796185, 4 x 20"},
		{"20000 lb", packs("2000 lb", "50 lb", "40 lb"), "lb", "10 x 2000"},
		{"1 lb", packs("2000 lb", "1 lb"), "lb", "1 x 2000"}, // too small to count beside a tote
	} {
		set, err := BestPacks(amount(tt.need), tt.packs)
		if got := listed(set, tt.in); err != nil || got != tt.want {
			t.Errorf("%s from %v: %s, %v; want %s", tt.need, tt.packs, got, err, tt.want)
		}
	}
}

func TestPacksRefused(t *testing.T) {
	const unlike = "a pack holds nothing, or is measured in another way (state all packs alike, as weights or as volumes)"
	for _, tt := range []struct {
		need  Amount
		packs []Pack
		want  string
	}{
		{amount("1 lb"), nil, "the product has no pack (write it as in 50 lb)"},
		{amount("1 lb"), packs("1 gal"), unlike},
		{amount("1 lb"), packs("50 lb", "0 lb"), unlike},
		{amount("1 lb"), packs("50 lb for -3"), unlike},
		{Amount{Weight, math.NaN()}, packs("50 lb"), "the job takes more than 2147483647 packs (state larger packs)"},
		{Amount{Weight, math.Inf(1)}, packs("50 lb"), "the job takes more than 2147483647 packs (state larger packs)"},
		{amount("9999999999 lb"), packs("50 lb", "1 lb"), "the job takes more than 2147483647 packs (state larger packs)"},
	} {
		_, err := BestPacks(tt.need, tt.packs)
		checkError(t, tt.want, err, tt.want)
	}
}

// exhausted tries every set of packs that is not plainly too many, and returns
// the best cost, what it leaves over and its packs.
func exhausted(need int, sizes []int, costs []float64) (cost float64, over, count int) {
	over, cost = math.MaxInt, math.Inf(1)
	var try func(i, left, n int, c float64)
	try = func(i, left, n int, c float64) {
		if left <= 0 || i == len(sizes) {
			if left <= 0 && beats(c, -left, n, cost, over, count) {
				cost, over, count = c, -left, n
			}
			return
		}
		for k := 0; ; k++ {
			try(i+1, left-k*sizes[i], n+k, c+float64(k)*costs[i])
			if k*sizes[i] >= left {
				return
			}
		}
	}
	try(0, need, 0, 0)
	return cost, over, count
}

func beats(c1 float64, o1, n1 int, c2 float64, o2, n2 int) bool {
	if c1 != c2 {
		return c1 < c2
	}
	return o1 < o2 || o1 == o2 && n1 < n2
}

// The set chosen is as good as the best of all sets, by cost where costs are
// known, then by what is left over, then by the number of packs.
func TestBestPacksAgainstAllSets(t *testing.T) {
	check(t, 400, func(t *rapid.T) {
		sizes := rapid.SliceOfNDistinct(rapid.IntRange(1, 40), 1, 4, rapid.ID[int]).Draw(t, "lb")
		need := rapid.IntRange(1, 150).Draw(t, "need")
		costed := rapid.Bool().Draw(t, "costed")
		list := make([]Pack, len(sizes))
		costs := make([]float64, len(sizes))
		for i, size := range sizes {
			if costed {
				costs[i] = float64(rapid.IntRange(1, 60).Draw(t, "cost"))
			}
			list[i] = Pack{Amount{Weight, float64(size) * unit("lb").factor()}, costs[i]}
		}
		set := must(BestPacks(Amount{Weight, float64(need) * unit("lb").factor()}, list))
		cost, held, count := 0.0, 0.0, 0
		for _, c := range set {
			cost += float64(c.Count) * c.Cost
			held += float64(c.Count) * must(c.Size.In(unit("lb")))
			count += c.Count
		}
		wantCost, wantOver, wantCount := exhausted(need, sizes, costs)
		if over := int(math.Round(held)) - need; cost != wantCost || over != wantOver || count != wantCount {
			t.Errorf("%s: cost %g, %d over, %d packs; best %g, %d, %d", listed(set, "lb"), cost, over, count, wantCost, wantOver, wantCount)
		}
	})
}

// Sizes that share no grain still hold enough, and leave no more than the
// smallest pack and the grain of each.
func TestPacksOfUnlikeSizes(t *testing.T) {
	check(t, 200, func(t *rapid.T) {
		var list []Pack
		smallest, largest := math.Inf(1), 0.0
		for range rapid.IntRange(1, 4).Draw(t, "sizes") {
			size := rapid.Float64Range(0.5, 50).Draw(t, "kg")
			smallest, largest = min(smallest, size), max(largest, size)
			list = append(list, Pack{Size: Amount{Weight, size}})
		}
		need := rapid.Float64Range(0.1, 500).Draw(t, "need")
		held, count := 0.0, 0
		for _, c := range must(BestPacks(Amount{Weight, need}, list)) {
			held += float64(c.Count) * c.Size.Size
			count += c.Count
		}
		if held < need*(1-1e-12) || held-need > smallest+float64(count+1)*largest/finestGrain {
			t.Errorf("%g kg in %d packs for %g kg", held, count, need)
		}
	})
}
