package material

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// Height writes a small length, as of grass or of water: to a millimetre, or a
// hundredth of an inch; eighths of one as they are.
func (f Figures) Height(h geo.Length) string {
	if f.metric() {
		return fmt.Sprintf("%.0f mm", 1000*float64(h))
	}
	in, steps := 12*h.Feet(), 100.0
	if isOddEighth(in) {
		steps = 1000
	}
	return strconv.FormatFloat(math.Round(in*steps)/steps, 'f', -1, 64) + " in"
}

// Packs says what is bought, as in "1 x 40.0 lb + 3 x 10.0 lb".
func (f Figures) Packs(p Purchase) string {
	if len(p.Packs) == 0 {
		return "loose"
	}
	var parts []string
	for _, c := range p.Packs {
		parts = append(parts, fmt.Sprintf("%d x %s", c.Count, f.Amount(c.Size)))
	}
	return strings.Join(parts, " + ")
}

// LeftOver is what the packs hold beyond what is loaded; "" of what is sold
// loose.
func (f Figures) LeftOver(p Purchase) string {
	if len(p.Packs) == 0 {
		return ""
	}
	return f.Amount(p.LeftOver).String()
}

func (f Figures) metric() bool { return f.Units == zones.Metric }
