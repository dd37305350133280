package zones

import (
	"fmt"
	"slices"
)

// HeightAccount tells, a line a kind, on what assumptions the heights of the
// objects rest that throw shade. There is none for a kind all of whose heights
// are stated or tagged.
func (s *Site) HeightAccount() []string {
	var account []string
	for _, k := range []Kind{Building, Tree, Hedge, Wall, Fence, Bed} {
		all, assumed, counted, name := 0, 0, 0, string(k)+"s"
		if k == Bed {
			name = "beds of shrubs"
		}
		for _, o := range slices.Concat(s.Objects, s.Beyond) {
			if o.Kind != k || o.Stature.Height == 0 {
				continue
			}
			all++
			switch o.Stature.From {
			case Assumed:
				assumed++
			case Levels:
				counted++
			}
		}
		if counted > 0 {
			account = append(account, fmt.Sprintf("heights of %d of %d %s reckoned from their storeys, %g m each", counted, all, name, levelM))
		}
		if assumed > 0 {
			account = append(account, fmt.Sprintf("heights assumed for %d of %d %s", assumed, all, name))
		}
	}
	return account
}
