package zones

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/turfplat/geo"
)

// FeedSchema names the form of FeedRow.
const FeedSchema = "turfplat/feed/1"

// FeedColumns are the columns of the feed, in order.
var FeedColumns = []string{
	"site_id", "zone_id", "class", "name", "species", "exposure", "area_m2", "area_ft2", "area_quote_ft2", "area_acre",
	"perimeter_m", "edging_m", "bed_area_ft2", "method", "sigma_m2", "ci95_ft2", "revision", "input_sha256", "software", "schema",
	"apply", "treated_ft2", "warnings",
}

// A FeedRow is a zone, or a cover as a whole, as quoting tools take it. Areas
// are full precision but for area_quote_ft2, the next full 100 ft2.
type FeedRow struct {
	SiteID       string  `json:"site_id"`
	ZoneID       string  `json:"zone_id"` // "" in the row of a cover
	Class        string  `json:"class"`
	Name         string  `json:"name"`
	Species      string  `json:"species"`
	Exposure     string  `json:"exposure"`
	AreaM2       float64 `json:"area_m2"`
	AreaFt2      float64 `json:"area_ft2"`
	AreaQuoteFt2 float64 `json:"area_quote_ft2"`
	AreaAcre     float64 `json:"area_acre"`
	PerimeterM   float64 `json:"perimeter_m"`
	EdgingM      float64 `json:"edging_m"`     // along hardscape and beds
	BedAreaFt2   float64 `json:"bed_area_ft2"` // of the whole site, in every row
	Method       string  `json:"method"`
	SigmaM2      float64 `json:"sigma_m2"`
	CI95Ft2      float64 `json:"ci95_ft2"` // half-width of the 95 % interval
	Revision     int     `json:"revision"`
	InputSHA256  string  `json:"input_sha256"`
	Software     string  `json:"software"`
	Schema       string  `json:"schema"`
	Apply        bool    `json:"apply"`       // of a zone: something may be applied; of a cover: on some of it
	TreatedFt2   float64 `json:"treated_ft2"` // of the row's ground, where something may be applied
	Warnings     string  `json:"warnings"`    // codes of what is doubtful about the site, joined by +, in every row
}

// FeedRows returns the rows of a site: one a zone, then one a cover.
func (p *Plat) FeedRows(m Measurement, software string) []FeedRow {
	doubts := m.warningCodes()
	row := func(areaM2, sigmaM2 float64) FeedRow {
		area := geo.Area(areaM2)
		return FeedRow{
			SiteID: m.ID, AreaM2: areaM2, AreaFt2: area.SquareFeet(), AreaQuoteFt2: quoted(area.SquareFeet()), AreaAcre: area.Acres(),
			SigmaM2: sigmaM2, CI95Ft2: geo.Area(interval95 * sigmaM2).SquareFeet(),
			Revision: m.Revision, InputSHA256: m.InputSHA256, Software: software, Schema: FeedSchema,
			BedAreaFt2: m.Covers[Bed].AreaFt2, Warnings: doubts,
		}
	}
	var rows []FeedRow
	var treated float64
	for _, z := range m.Zones {
		r := row(z.AreaM2, z.SigmaM2)
		r.ZoneID, r.Class, r.Name, r.Species, r.Exposure = z.ID, string(Turf), z.Name, z.Species, z.Exposure
		r.PerimeterM, r.EdgingM, r.Method = z.PerimeterM, z.EdgingM, p.method(Turf)
		if r.Apply = z.Apply; z.Apply {
			r.TreatedFt2 = r.AreaFt2
			treated += r.AreaFt2
		}
		rows = append(rows, r)
	}
	for _, k := range CoverKinds {
		c, there := m.Covers[k]
		if !there {
			continue
		}
		r := row(c.AreaM2, c.SigmaM2)
		r.Class, r.PerimeterM, r.Method = string(k), c.PerimeterM, p.method(k)
		if k == Turf {
			r.EdgingM = m.Edges.TurfHardscapeM + m.Edges.TurfBedM
			r.Apply, r.TreatedFt2 = treated > 0, treated
		}
		rows = append(rows, r)
	}
	return rows
}

// warningCodes are those of a site's warnings, each once.
func (m Measurement) warningCodes() string {
	var codes []string
	for _, w := range m.Warnings {
		codes = append(codes, w.Code)
	}
	slices.Sort(codes)
	return strings.Join(slices.Compact(codes), "+")
}

// FeedGround returns the ground of each of the rows that FeedRows returns.
func (p *Plat) FeedGround(m Measurement) []geo.Region {
	var ground []geo.Region
	for _, z := range p.Zones {
		ground = append(ground, z.Region)
	}
	for _, k := range CoverKinds {
		if _, there := m.Covers[k]; there {
			ground = append(ground, p.Ground.Cover(k))
		}
	}
	return ground
}

// quoted is an area in ft2 up to the next 100, as quotes have it. What lies
// within rounding of a full hundred is not pushed to the next.
func quoted(ft2 float64) float64 {
	const rounding = 1e-5 // ft2, a hundredth of a square centimetre
	return 100 * max(0, math.Ceil((ft2-rounding)/100))
}

// method names the sources of the edges of a cover; turf found inside the
// outline has those of the outline and of what was taken off it.
func (p *Plat) method(k Kind) string {
	var sources []string
	for _, o := range p.Site.Objects {
		own := o.Cover == k
		if k == Turf && p.Ground.Traced.From == Outline {
			own = o.Kind == Outline || o.Cover != ""
		}
		if own && !slices.Contains(sources, string(o.Source)) {
			sources = append(sources, string(o.Source))
		}
	}
	slices.Sort(sources)
	return strings.Join(sources, "+")
}

// Cells returns the row as text, in the order of FeedColumns; numbers in the
// fewest digits that give them back.
func (r FeedRow) Cells() []string {
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	return []string{
		r.SiteID, r.ZoneID, r.Class, r.Name, r.Species, r.Exposure, number(r.AreaM2), number(r.AreaFt2), number(r.AreaQuoteFt2), number(r.AreaAcre),
		number(r.PerimeterM), number(r.EdgingM), number(r.BedAreaFt2), r.Method, number(r.SigmaM2), number(r.CI95Ft2), strconv.Itoa(r.Revision), r.InputSHA256, r.Software, r.Schema,
		strconv.FormatBool(r.Apply), number(r.TreatedFt2), r.Warnings,
	}
}
