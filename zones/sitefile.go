package zones

import (
	"fmt"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo/ingest"
)

// SiteFile returns the site's collection with its zones written into it as
// features of kind zone, derived true, in place of those that an earlier
// division wrote, and with the region whose rules it keeps. Read again it gives
// the same zones with the same areas to 1e-6. The collection is the one the site
// was made from, changed in place.
func (p *Plat) SiteFile() *ingest.Collection {
	c := p.Site.collection
	c.Features = slices.DeleteFunc(c.Features, isDerived)
	ids := make(map[string]bool)
	for _, f := range c.Features {
		ids[f.ID] = true
	}
	if p.Site.region != "" {
		c.SetWithin("site", "region", p.Site.region)
	}
	for _, z := range p.Zones {
		c.Features = append(c.Features, p.zoneFeature(z, ids))
	}
	return c
}

// zoneFeature is a zone as a feature, with what was said of the object it was
// traced as. A traced zone of the same id stays in
// the file, so a zone that would share its id is told apart.
func (p *Plat) zoneFeature(z Zone, ids map[string]bool) *ingest.Feature {
	props := z.properties.Clone()
	props.Set("id", fresh(z.ID, ids))
	props.Set("name", z.Name)
	props.Set("kind", ZoneKind)
	props.Set("derived", true)
	props.Delete(fixesKey) // they stay with the object that was walked
	if z.Exposure != "" {
		props.Set("exposure", z.Exposure)
	}
	if z.Species != "" {
		props.Set("species", z.Species)
	}
	if z.Slope != 0 {
		props.Set("slope_percent", z.Slope)
	}
	props.Set("apply", z.Apply)
	z.Sun.write(&props)
	props.Set("area_m2", math.Round(float64(p.Site.Frame.Area(z.Region))*1e4)/1e4)

	m := p.Site.Frame.MultiPolygon(z.Region)
	if len(m) == 1 {
		return ingest.NewFeature(props, m[0])
	}
	return ingest.NewFeature(props, orb.Geometry(m))
}

func fresh(id string, ids map[string]bool) string {
	candidate := id
	for n := 2; ids[candidate]; n++ {
		candidate = fmt.Sprintf("%s-%d", id, n)
	}
	ids[candidate] = true
	return candidate
}
