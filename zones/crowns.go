package zones

import (
	_ "embed"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// Foliage is how much light passes a crown, and in what shape it grows. The
// zero value is opaque.
type Foliage struct {
	Leaf   Leaf
	Cone   bool    // of a needle tree; else an ellipsoid
	InLeaf float64 // share of direct sun that passes
	Bare   float64 // the same without leaves
}

// Leaf is whether a tree drops its leaves.
type Leaf string

// The leaves of trees.
const (
	Deciduous Leaf = "deciduous"
	Evergreen Leaf = "evergreen"
)

// crownsCSV holds the crowns of trees by their botanical or common names, then
// by their leaves, the first row that fits deciding: the size of a tree of
// which none is known, and the share of direct sun that passes it, each with
// its source.
//
//go:embed crowns.csv
var crownsCSV string

var crownRows = mustReadRows("crowns.csv", crownsCSV, readCrown,
	"names", "leaf_type", "leaf_cycle", "leaf", "shape", "height_m", "crown_m", "in_leaf", "bare", "source")

type crownRow struct {
	names           []string // lower case; none = any
	leafType, cycle string   // that it is for; "" = any
	height, crown   float64  // m
	foliage         Foliage
}

func readCrown(cells []string) (crownRow, bool) {
	row := crownRow{leafType: cells[1], cycle: cells[2], foliage: Foliage{Leaf: Leaf(cells[3]), Cone: cells[4] == "cone"}}
	if cells[0] != "" {
		row.names = strings.Split(cells[0], "|")
	}
	for i, v := range []*float64{&row.height, &row.crown, &row.foliage.InLeaf, &row.foliage.Bare} {
		var err error
		if *v, err = strconv.ParseFloat(cells[5+i], 64); err != nil || !(*v > 0) {
			return row, false
		}
	}
	return row, true
}

// crownRowOf returns the row of a tree: by its species, else by its leaves.
func crownRowOf(p ingest.Properties) crownRow {
	leafType, _ := p.Tag("leaf_type")
	cycle := string(leafOf(p))
	for _, key := range []string{"species", "taxon", "genus"} {
		if species, ok := p.Tag(key); ok {
			if i := slices.IndexFunc(crownRows, func(r crownRow) bool { return r.named(species) }); i >= 0 {
				return crownRows[i]
			}
		}
	}
	i := slices.IndexFunc(crownRows, func(r crownRow) bool {
		return r.names == nil && (r.leafType == "" || r.leafType == leafType) && (r.cycle == "" || r.cycle == cycle)
	})
	return crownRows[i] // the last row is for any
}

// named reports whether a species is one of the row's: "Acer rubrum" is an
// acer, "Norway maple" a maple.
func (r crownRow) named(species string) bool {
	species = " " + strings.ToLower(strings.TrimSpace(species)) + " "
	return slices.ContainsFunc(r.names, func(name string) bool {
		return strings.HasPrefix(species, " "+name+" ") || strings.HasSuffix(species, " "+name+" ")
	})
}

// leafOf is what is stated or tagged of a tree's leaves.
func leafOf(p ingest.Properties) Leaf {
	text, ok := p.Text("leaf")
	if !ok {
		text, _ = p.Tag("leaf_cycle")
	}
	switch strings.ToLower(text) {
	case "deciduous", "semi_deciduous":
		return Deciduous
	case "evergreen", "semi_evergreen":
		return Evergreen
	}
	return ""
}

// foliageOf finds how a tree or shrub grows. What is stated of it wins.
func (s *Site) foliageOf(f *ingest.Feature, place ingest.Place) Foliage {
	foliage := crownRowOf(f.Properties).foliage
	stated := leafOf(f.Properties)
	if text, ok := f.Properties.Text("leaf"); ok && stated == "" {
		s.problem(ingest.Warning, "leaf_unknown", place, fmt.Sprintf("leaf %q is not known, %s taken", text, foliage.Leaf), "write deciduous or evergreen")
	}
	if stated != "" {
		foliage.Leaf = stated
	}
	if foliage.Leaf == Evergreen {
		foliage.Bare = foliage.InLeaf
	}
	return withTransmittance(foliage, f.Properties)
}

// withTransmittance takes the stated share of sun that passes an object: in
// leaf, and at least as much without leaves.
func withTransmittance(foliage Foliage, p ingest.Properties) Foliage {
	share, ok := p.Number("transmittance")
	switch {
	case !ok, share < 0, share > 1:
	case foliage.Leaf == Deciduous:
		foliage.InLeaf, foliage.Bare = share, max(share, foliage.Bare)
	default:
		foliage.InLeaf, foliage.Bare = share, share
	}
	return foliage
}

// crownBase is the height of a crown's underside over the ground: a quarter of
// the tree's, 2 m at least, but of a small tree no more than two thirds;
// common practice, no source.
func crownBase(height float64) float64 {
	const quarter, least, most = 0.25, 2, 2.0 / 3
	return min(max(quarter*height, least), most*height)
}

// broadest is the largest crown that is believed, in metres.
const broadest = 60

// crownOf returns a tree's crown diameter in metres: as stated, else as
// tagged, else 25 trunk diameters (Coombes, Martin & Slater 2019, Urban
// Forestry & Urban Greening 44:126421: 24 to 27 over four species), else the
// default of its row.
func crownOf(p ingest.Properties) float64 {
	if v, ok := lengthOf(p, "crown"); ok && v <= broadest {
		return v
	}
	if text, ok := p.Tag("diameter_crown"); ok {
		if v, ok := parseTagLength(text); ok && v <= broadest {
			return v
		}
	}
	const pi, crownPerTrunk = 3.14159, 25
	if text, ok := p.Tag("circumference"); ok {
		if girth, ok := parseTagLength(text); ok && girth < 15 {
			return crownPerTrunk * girth / pi
		}
	}
	return crownRowOf(p).crown
}
