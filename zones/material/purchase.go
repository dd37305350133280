package material

// A Purchase is what is bought of a product for a number of draws.
type Purchase struct {
	Product  string
	Needed   Amount      // the rates times the areas
	ToLoad   Amount      // Needed and the carry
	Packs    []PackCount // that hold ToLoad, largest first; none of what is sold loose
	Bought   Amount      // in the packs, or ToLoad
	LeftOver Amount      // of Bought when all of ToLoad is used
	Sites    []SiteLoad  // what each site needs, in the order of the draws
}

// A SiteLoad is what one site needs of a product.
type SiteLoad struct {
	Site   string
	Needed Amount
}

// Buy sums draws up by product, over steps, zones and sites, then adds the
// carry, then chooses packs: for a visit, a season, or the day's load of a
// truck, as its draws are. Rates are never touched by the carry. Purchases
// come in the order in which products first appear; they never hold less than
// is needed, and dividing a zone changes none.
func Buy(draws []Draw, products []Product, carry Share) ([]Purchase, error) {
	b := basket{products: products, at: make(map[string]int), siteAt: make(map[[2]string]int)}
	for _, d := range draws {
		if err := b.add(d); err != nil {
			return nil, err
		}
	}
	for i := range b.bought {
		p, _ := productNamed(products, b.bought[i].Product) // found before
		if err := b.bought[i].pack(p.Packs, carry); err != nil {
			return nil, p.named(err)
		}
	}
	return b.bought, nil
}

// A basket is purchases being summed up.
type basket struct {
	products []Product
	bought   []Purchase
	at       map[string]int    // in bought, by product
	siteAt   map[[2]string]int // in the purchase's Sites, by product and site
}

func (b *basket) add(d Draw) error {
	p, err := productNamed(b.products, d.Product)
	if err != nil {
		return err
	}
	i, there := b.at[d.Product]
	if !there {
		i = len(b.bought)
		b.at[d.Product] = i
		b.bought = append(b.bought, Purchase{Product: p.Name, Needed: Amount{By: p.soldBy(d.Amount.By)}})
	}
	bought := &b.bought[i]
	a, err := d.Amount.As(bought.Needed.By, p.Density)
	if err != nil {
		return p.named(err)
	}
	bought.Needed.Size += a.Size
	key := [2]string{d.Product, d.Site}
	if j, there := b.siteAt[key]; there {
		bought.Sites[j].Needed.Size += a.Size
		return nil
	}
	b.siteAt[key] = len(bought.Sites)
	bought.Sites = append(bought.Sites, SiteLoad{d.Site, a})
	return nil
}

// soldBy is how the product's packs are measured.
func (p Product) soldBy(otherwise Measure) Measure {
	if len(p.Packs) > 0 {
		return p.Packs[0].Size.By
	}
	return otherwise
}

func (p *Purchase) pack(packs []Pack, carry Share) error {
	p.ToLoad = p.Needed.Times(1 + float64(carry))
	p.Bought = p.ToLoad
	p.LeftOver = Amount{By: p.Needed.By}
	if len(packs) == 0 {
		return nil
	}
	var err error
	if p.Packs, err = BestPacks(p.ToLoad, packs); err != nil {
		return err
	}
	p.Bought.Size = 0
	for _, c := range p.Packs {
		p.Bought.Size += float64(c.Count) * c.Size.Size
	}
	p.LeftOver.Size = max(0, p.Bought.Size-p.ToLoad.Size)
	return nil
}
