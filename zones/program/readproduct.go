package program

import "example.org/turfplat/zones/material"

func (d *document) productKeys(p *Product) []key {
	return []key{
		value(d, "grade", &p.Grade, material.ParseGrade),
		values(d, "pack", &p.Packs, asPack),
		value(d, "covers", &p.Covers, quantity(material.Quantity.Area)),
		value(d, "density", &p.Density, quantity(p.densityOf)),
		value(d, "ai", &p.Strength, quantity(material.Quantity.Strength)),
		value(d, "active", &p.Active, asText),
		value(d, "purity", &p.Seed.Purity, quantity(material.Quantity.Share)),
		value(d, "germination", &p.Seed.Germination, quantity(material.Quantity.Share)),
		value(d, "slow", &p.Slow, quantity(material.Quantity.Share)),
	}
}

// densityOf takes a density; one of a gallon or litre says that the product is
// a liquid.
func (p *Product) densityOf(q material.Quantity) (material.Density, error) {
	p.Liquid = q.InLiquid()
	return q.Density()
}

func asPack(text string) (material.Pack, error) {
	a, err := quantity(material.Quantity.Amount)(text)
	if err == nil && !(a.Size > 0) {
		err = &material.InputError{Text: "a pack of nothing", Hint: "write what it holds, such as 50 lb"}
	}
	return material.Pack{Size: a}, err
}
