package lanes

// A stop is a node of a graph and how far it is.
type stop struct {
	node int
	away float64
}

// nearestFirst is a heap of stops.
type nearestFirst []stop

func (h nearestFirst) Len() int { return len(h) }
func (h nearestFirst) Less(i, j int) bool {
	return h[i].away < h[j].away || h[i].away == h[j].away && h[i].node < h[j].node
}
func (h nearestFirst) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h *nearestFirst) Push(v any)   { *h = append(*h, v.(stop)) }
func (h *nearestFirst) Pop() any {
	old := *h
	last := old[len(old)-1]
	*h = old[:len(old)-1]
	return last
}
