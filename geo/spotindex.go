package geo

// A spotIndex numbers spots in the order in which they are first asked for.
type spotIndex struct {
	spots []spot
	slots []int32 // number of a spot plus one, by hash; a power of two of them
}

// newSpotIndex returns an index with room for twice n spots. Slots and spots no
// longer in use are taken if there are enough.
func newSpotIndex(n int, slots []int32, spots []spot) *spotIndex {
	size := 16
	for size < 4*n {
		size *= 2
	}
	if cap(slots) < size {
		slots = make([]int32, size)
	}
	slots = slots[:size]
	clear(slots)
	return &spotIndex{spots: spots[:0], slots: slots}
}

func (x *spotIndex) of(p spot) int32 {
	const odd = 0x9e3779b97f4a7c15 // 2^64 over the golden ratio, scatters neighbours
	mask := uint64(len(x.slots) - 1)
	h := (uint64(p.x)*odd ^ uint64(p.y)) * odd
	for at := (h >> 32) & mask; ; at = (at + 1) & mask {
		switch n := x.slots[at]; {
		case n == 0:
			x.spots = append(x.spots, p)
			x.slots[at] = int32(len(x.spots))
			return int32(len(x.spots)) - 1
		case x.spots[n-1] == p:
			return n - 1
		}
	}
}
