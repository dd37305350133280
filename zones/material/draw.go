package material

import (
	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// A Draw is what one job takes of one product on one zone.
type Draw struct {
	Site, Step, Zone string
	Product          string // its name
	Area             geo.Area
	Rate             Rate // of the product
	Amount           Amount
}

// Spread lays a product on zones at the rate that is wanted of it or of what
// is in it, a Draw a zone; zones where nothing may be applied, as keepouts, get
// none. Areas are those on the map, not of a slope's surface. The draws' site
// and step are the caller's to fill in.
func Spread(p Product, wanted Rate, on []zones.ZoneMeasure) ([]Draw, error) {
	r, err := p.Rate(wanted)
	if err != nil {
		return nil, err
	}
	var draws []Draw
	for _, z := range on {
		if !z.Apply {
			continue
		}
		ground := geo.Area(z.AreaM2)
		draws = append(draws, Draw{Zone: z.ID, Product: p.Name, Area: ground, Rate: r, Amount: r.Over(ground)})
	}
	return draws, nil
}

// Nutrients are what fertilizers put down, as grades name it, in kg on a
// square metre.
type Nutrients struct{ N, P2O5, K2O float64 }

// A ZoneFeed is what a zone gets of nutrients over all its steps.
type ZoneFeed struct {
	Site, Zone string
	Area       geo.Area
	Nutrients
}

// Fed sums up the nutrients that draws put on each zone, in the order in which
// zones first appear. Products without a grade put down none.
func Fed(draws []Draw, products []Product) ([]ZoneFeed, error) {
	var feeds []ZoneFeed
	at := make(map[[2]string]int)
	for _, d := range draws {
		p, err := productNamed(products, d.Product)
		if err != nil {
			return nil, err
		}
		key := [2]string{d.Site, d.Zone}
		i, there := at[key]
		if !there {
			i = len(feeds)
			at[key] = i
			feeds = append(feeds, ZoneFeed{Site: d.Site, Zone: d.Zone, Area: d.Area})
		}
		if err := feeds[i].add(p, d.Rate); err != nil {
			return nil, err
		}
	}
	return feeds, nil
}

func (n *Nutrients) add(p Product, r Rate) error {
	if p.Grade == (Grade{}) {
		return nil
	}
	for _, part := range []struct {
		of  Substance
		sum *float64
	}{{Nitrogen, &n.N}, {Phosphate, &n.P2O5}, {Potash, &n.K2O}} {
		rate, err := p.Delivers(part.of, r)
		if err != nil {
			return err
		}
		*part.sum += rate.PerM2
	}
	return nil
}

func productNamed(products []Product, name string) (Product, error) {
	for _, p := range products {
		if p.Name == name {
			return p, nil
		}
	}
	return Product{}, inputErrorf("", "product %s is not described", ingest.Quoted(name))
}
