package render

import (
	"fmt"

	"example.org/turfplat/zones"
)

// MapOptions says how a site map is drawn; the zero value is what most sites
// want.
type MapOptions struct {
	Paper Paper       // none: letter, or A4 for metric units
	Scale Scale       // zero: the largest of the series of the units at which the site fits
	Units zones.Units // none: those of the site
	Mono  bool        // black, white and grey only
	Fixes bool        // the fixes from which walked edges were found
}

// SiteMap draws the map of a property with its tables on one sheet, true
// to scale, every cover with a pattern of its own, every zone with its letter
// and area. North is up unless a long site is larger when turned. Figures are
// rounded to what their error bears.
//
// [Sheet.Missing] tells which letters of names were replaced. A site that does
// not fit the paper at the wanted scale is an error.
func SiteMap(p *zones.Plat, m zones.Measurement, o MapOptions) (*Sheet, error) {
	d, err := siteDraft(p, m, o)
	if err != nil {
		return nil, err
	}
	return d.sheet()
}

// SiteMaps draws the map of a property as SiteMap does, but on as many sheets as
// it takes to be legible, or to have the scale that is asked for: a key map with
// the tables, then the parts with match lines. They are to be [Bound].
func SiteMaps(p *zones.Plat, m zones.Measurement, o MapOptions) ([]*Sheet, error) {
	d, err := siteDraft(p, m, o)
	if err != nil {
		return nil, err
	}
	return d.sheets()
}

// siteMap is the subject of the first sheet: the ground and what divides it.
type siteMap struct {
	*draft
	key legend
}

func siteDraft(p *zones.Plat, m zones.Measurement, o MapOptions) (*draft, error) {
	d, err := newDraft(p, m, o)
	if err != nil {
		return nil, err
	}
	d.subject = siteMap{d, d.legend()}
	return d, nil
}

func (s siteMap) name() (id, title string) { return "site-map", "Site map" }

// blocks are the tables and the key, in the order in which they are read.
func (s siteMap) blocks(level detail) []block {
	blocks := []block{s.turfTable(level.objects)}
	if len(s.plat.Zones) > 0 {
		blocks = append(blocks, s.zoneTable(level))
	}
	return append(blocks, s.edgeTable(), s.key)
}

func (s siteMap) objectRows() int { return s.tally.objectRows() }

// inWords describes the map to people who cannot see it.
func (s siteMap) inWords() string {
	words := fmt.Sprintf("Map of %s, %s: net turf %s", s.letters.of(s.measured.Name), s.lie.northInWords(),
		s.figures.areaInWords(s.tally.net.AreaM2, s.tally.net.CI95M2))
	if n := len(s.plat.Zones); n > 1 {
		words += fmt.Sprintf(" in %d zones", n)
	}
	return words + "."
}
