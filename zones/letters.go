package zones

import (
	"cmp"
	"slices"
)

// lettered orders the zones for people, those that are treated first, the
// largest first, and gives them letters.
func (d *division) lettered() []Zone {
	size := make(map[string]float64, len(d.zones))
	for _, z := range d.zones {
		size[z.ID] = squareCentimetres(d.site.Frame.Area(z.Region))
	}
	slices.SortStableFunc(d.zones, func(a, b Zone) int {
		if a.Apply != b.Apply {
			if a.Apply {
				return -1
			}
			return 1
		}
		return cmp.Or(cmp.Compare(size[b.ID], size[a.ID]), cmp.Compare(a.ID, b.ID))
	})
	for i := range d.zones {
		d.zones[i].Letter = letter(i)
	}
	return d.zones
}

// letter counts A to Z, AA, AB ...
func letter(i int) string {
	s := ""
	for i++; i > 0; i = (i - 1) / 26 {
		s = string(rune('A'+(i-1)%26)) + s
	}
	return s
}
