package zones

import (
	"fmt"
	"slices"
	"strings"
)

// HeightAccount tells on what assumptions the heights of the objects rest that
// throw shade: a line of those reckoned from storeys, and one of those assumed.
// There is none if all heights are stated or tagged.
func (s *Site) HeightAccount() []string {
	var account []string
	for _, line := range []struct {
		from Basis
		text string
	}{{Levels, fmt.Sprintf("heights reckoned from storeys, %g m each: ", levelM)}, {Assumed, "heights assumed: "}} {
		var shares []string
		for _, k := range []Kind{Building, Tree, Hedge, Wall, Fence, Bed} {
			if n, all := s.heightsFrom(k, line.from); n > 0 {
				shares = append(shares, fmt.Sprintf("%d of %d %s", n, all, throwers(k, all)))
			}
		}
		if shares != nil {
			account = append(account, line.text+strings.Join(shares, ", "))
		}
	}
	return account
}

// heightsFrom counts the objects of a kind whose height rests on something, and
// all that have a height.
func (s *Site) heightsFrom(k Kind, from Basis) (n, all int) {
	for _, o := range slices.Concat(s.Objects, s.Beyond) {
		if o.Kind != k || o.Stature.Height == 0 {
			continue
		}
		if all++; o.Stature.From == from {
			n++
		}
	}
	return n, all
}

// throwers are so many of a kind that throw shade.
func throwers(k Kind, n int) string {
	name := string(k)
	if n != 1 {
		name += "s"
	}
	if k == Bed {
		name += " of shrubs"
	}
	return name
}
