package program

import (
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
)

// load works out what each step takes, what is bought, and what each zone is
// fed. Steps that will not come in this season take nothing; those that are
// done feed the zones, but nothing is bought for them.
func (pl *planner) load() error {
	var bought, laid []material.Draw
	var products []material.Product
	for i := range pl.Steps {
		s := &pl.Steps[i]
		draws, err := pl.draw(s)
		if err != nil {
			return err
		}
		before, err := pl.drawnBefore(s)
		if err != nil {
			return err
		}
		laid = append(laid, before...)
		if len(draws)+len(before) == 0 {
			continue
		}
		products = withProduct(products, s.Step.Product.Product)
		laid = append(laid, draws...)
		if !s.done() && s.Step.Does != Water {
			share := 1 / float64(s.visits())
			bought = append(bought, scaled(draws, share*float64(pl.visitsLeft(s)))...)
			if s.Status == Ready {
				pl.plan.Visit = append(pl.plan.Visit, scaled(onZones(draws, pl.Now(s)), share)...)
			}
		}
	}
	pl.plan.Products = products
	var err error
	if pl.plan.Purchases, err = material.Buy(bought, products, pl.Program.Carry); err != nil {
		return err
	}
	return pl.feed(laid, products)
}

// onZones are the draws on some zones.
func onZones(draws []material.Draw, on []ZonePlan) []material.Draw {
	return slices.DeleteFunc(slices.Clone(draws), func(d material.Draw) bool {
		return !slices.ContainsFunc(on, func(z ZonePlan) bool { return z.ID == d.Zone })
	})
}

// scaled are draws of a part of all visits.
func scaled(draws []material.Draw, share float64) []material.Draw {
	part := slices.Clone(draws)
	for i := range part {
		part[i].Amount = part[i].Amount.Times(share)
	}
	return part
}

// Load sums up what the steps that are ready take on one visit, over several
// sites that are worked on one day, and chooses packs for the whole truck.
func Load(plans []*Plan) ([]material.Purchase, error) {
	var draws []material.Draw
	var products []material.Product
	carry := material.Carry.Share()
	for _, p := range plans {
		draws = append(draws, p.Visit...)
		for _, product := range p.Products {
			products = withProduct(products, product)
		}
		carry = p.Program.Carry
	}
	return material.Buy(draws, products, carry)
}

// withProduct adds a product that is not there yet. Of two steps with one
// material packs and density are taken from the first that states them.
func withProduct(list []material.Product, p material.Product) []material.Product {
	for i := range list {
		if list[i].Name != p.Name {
			continue
		}
		if len(list[i].Packs) == 0 {
			list[i].Packs = p.Packs
		}
		if list[i].Density == 0 {
			list[i].Density = p.Density
		}
		return list
	}
	return append(list, p)
}

// draw lays a step's material on its zones, for all visits.
func (pl *planner) draw(s *StepPlan) ([]material.Draw, error) {
	if s.Step.Rate == nil || s.Status == Skipped && !s.done() {
		return nil, nil
	}
	var all []material.Draw
	rate := s.Step.Rate.Times(float64(s.Step.Passes * s.visits()))
	for i := range s.Zones {
		z := &s.Zones[i]
		if z.closed && !s.done() {
			continue
		}
		draws, err := material.Spread(s.Step.Product.Product, rate, []zones.ZoneMeasure{z.ZoneMeasure})
		if err != nil {
			return nil, err
		}
		for _, d := range draws {
			d.Site, d.Step = pl.Property.ID, s.Step.ID
			z.Draw = &d
			all = append(all, d)
		}
	}
	s.total(all)
	return all, nil
}

// drawnBefore is what the visits of a series that were done laid on zones which are
// closed to those that were to come.
func (pl *planner) drawnBefore(s *StepPlan) ([]material.Draw, error) {
	if s.Step.Rate == nil || s.done() || s.timing.before == 0 {
		return nil, nil
	}
	var closed []zones.ZoneMeasure
	for _, z := range s.Zones {
		if z.closed {
			closed = append(closed, z.ZoneMeasure)
		}
	}
	return material.Spread(s.Step.Product.Product, s.Step.Rate.Times(float64(s.Step.Passes*s.timing.before)), closed)
}

func (s *StepPlan) total(draws []material.Draw) {
	if len(draws) == 0 {
		return
	}
	t := Total{draws[0].Product, material.Amount{By: draws[0].Amount.By}}
	for _, d := range draws {
		t.Amount.Size += d.Amount.Size // of one product, so measured alike
	}
	s.Totals = append(s.Totals, t)
}

// feed sums up the nutrients of each zone that anything may be applied on.
func (pl *planner) feed(laid []material.Draw, products []material.Product) error {
	fed, err := material.Fed(laid, products)
	if err != nil {
		return err
	}
	for _, g := range pl.Grounds {
		if !g.Apply {
			continue
		}
		f := Feed{Ground: g, ByLabel: pl.byLabelOn(g.ID)}
		f.Limit, f.Source = g.yearN()
		for _, z := range fed {
			if z.Zone == g.ID {
				f.Nutrients = z.Nutrients
			}
		}
		pl.plan.Feeds = append(pl.plan.Feeds, f)
	}
	return nil
}

// treated is the ground on which a step puts something down, when it is ready.
func (s *StepPlan) treated() geo.Area {
	sum := 0.0
	for _, z := range s.Zones {
		if z.Apply && !z.closed && !z.spared {
			sum += z.AreaM2
		}
	}
	return geo.Area(sum)
}
