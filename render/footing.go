package render

import (
	"fmt"
	"strings"

	"example.org/turfplat/zones"
)

// cautionText goes with every map. 811 is the number of the one-call centres
// of the United States (US DOT, PHMSA; from memory).
const cautionText = "This map is a planning aid: verify on site before work. Follow product labels and local rules. " +
	"Before digging or coring call the one-call centre (811 in the US), then flag heads, valves and shallow lines."

// noLawnText goes with every map on which turf is what nobody mapped.
const noLawnText = "No lawn is mapped: turf is what is left of the outline."

// footing sets the caution, and beside it how the figures came about.
func (d *draft) footing(corner Point, width float64) (elements []Element, height float64) {
	return d.footingWith(cautionText, d.subject.method(), corner, width)
}

func (d *draft) footingWith(caution, method string, corner Point, width float64) (elements []Element, height float64) {
	const cautionShare, gap = 0.4, 5.0
	left := width*cautionShare - gap
	warned, h1 := stack(corner, left, 0,
		paragraph{text: "Caution", face: Bold, size: mapSize, ink: black},
		paragraph{text: caution, size: mapSize, ink: black})
	var blocks []block
	if d.lacking != "" {
		blocks = append(blocks, paragraph{text: d.lacking, face: Medium, size: mapSize, ink: black})
	}
	if d.plat.TurfResidual() {
		blocks = append(blocks, paragraph{text: noLawnText, face: Medium, size: mapSize, ink: black})
	}
	blocks = append(blocks, paragraph{text: method, size: footSize, ink: grey})
	if attribution := d.letters.of(d.plat.Site.Attribution); attribution != "" {
		blocks = append(blocks, paragraph{text: attribution, face: Medium, size: footSize, ink: black})
	}
	told, h2 := stack(corner.plus(width*cautionShare, 0), width*(1-cautionShare), 1, blocks...)
	return []Element{
		Group{ID: "caution", Title: "Caution", Elements: warned},
		Group{ID: "method", Title: "Method and error", Elements: told},
	}, max(h1, h2)
}

func (s siteMap) method() string {
	text := fmt.Sprintf("Method: edges straight in the site's equal-area frame (Lambert azimuthal), areas on the WGS 84 ellipsoid, slopes not added. "+
		"Edges: %s. The error in brackets is 1 sigma of an edge. ± is half of the 95 %% interval that these edges leave to an area: about 19 of 20 areas so measured lie within it. "+
		"Figures are rounded to what their error bears, so that sums may differ in the last place. Input SHA-256 %.12s, revision %d.",
		s.sourceText(), s.measured.InputSHA256, s.measured.Revision)
	if !s.doubtful().Empty() {
		text += " Check on site: hours of sun within half an hour of a limit."
	}
	return text
}

var sourceWords = []struct {
	source zones.Source
	words  string
}{
	{zones.Traced, "traced"}, {zones.Walked, "walked"}, {zones.Taped, "taped"},
	{zones.Imported, "imported from map data"}, {zones.DefaultWidth, "drawn at a default width"},
}

// sourceText counts the objects that bound areas by where their edges come
// from, with the error of those edges.
func (d *draft) sourceText() string {
	var told []string
	for _, s := range sourceWords {
		count, least, most := 0, 0.0, 0.0
		for _, o := range d.plat.Site.Objects {
			if o.Source != s.source || o.Ground.Empty() || o.Cover == "" && o.Kind != zones.Outline {
				continue
			}
			sigma := float64(o.Error.Sigma)
			if count == 0 {
				least, most = sigma, sigma
			}
			least, most = min(least, sigma), max(most, sigma)
			count++
		}
		if count > 0 {
			told = append(told, fmt.Sprintf("%d %s (%s)", count, s.words, d.figures.errorRange(least, most)))
		}
	}
	return strings.Join(told, ", ")
}

// errorRange writes the errors of edges, which are small, to a tenth of a foot
// or to a centimetre.
func (f figures) errorRange(least, most float64) string {
	format := "%.1f"
	if f.Metric() {
		format = "%.2f"
	}
	from, to := fmt.Sprintf(format, f.InLengthUnit(least)), fmt.Sprintf(format, f.InLengthUnit(most))
	if from == to {
		return to + " " + f.lengthUnit()
	}
	return from + " to " + to + " " + f.lengthUnit()
}
