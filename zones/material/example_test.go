package material_test

import (
	"fmt"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
)

// A lawn of two zones and a keepout is fed at a rate of nitrogen, out of bags
// of two sizes. The property is invented.
func ExampleBuy() {
	wanted, _ := material.Parse("0.75 lb N / 1000 ft2")
	rate, _ := wanted.Rate()
	grade, _ := material.ParseGrade("25-0-10")
	feed := material.Product{Name: "spring feed", Grade: grade}
	for _, size := range []string{"50 lb", "18 lb"} {
		q, _ := material.Parse(size)
		pack, _ := q.Amount()
		feed.Packs = append(feed.Packs, material.Pack{Size: pack})
	}
	lawn := []zones.ZoneMeasure{
		{ID: "zone/front", Apply: true, AreaM2: 186},
		{ID: "zone/back", Apply: true, AreaM2: 394},
		{ID: "zone/pond-edge", Apply: false, AreaM2: 40},
	}

	people := material.Figures{Units: zones.US}
	draws, _ := material.Spread(feed, rate, lawn)
	for _, d := range draws {
		fmt.Printf("%s: %s at %s\n", d.Zone, people.Amount(d.Amount), people.Rate(d.Rate))
	}
	bought, _ := material.Buy(draws, []material.Product{feed}, material.Carry.Share())
	for _, p := range bought {
		fmt.Printf("%s: load %s\n", p.Product, people.Amount(p.ToLoad))
		for _, c := range p.Packs {
			fmt.Printf("%d x %s\n", c.Count, people.Amount(c.Size))
		}
		fmt.Println("left over:", people.Amount(p.LeftOver))
	}
	// Output:
	// zone/front: 6.0 lb at 3.00 lb / 1000 ft2
	// zone/back: 12.7 lb at 3.00 lb / 1000 ft2
	// spring feed: load 19.7 lb
	// 2 x 18.0 lb
	// left over: 16.3 lb
}

// A liquid goes out of a tank of 4 gal: full fills, then the last one, mixed
// for just the ground that is left.
func ExampleSpray_Fills() {
	read := func(text string) material.Quantity {
		q, err := material.Parse(text)
		if err != nil {
			panic(err)
		}
		return q
	}
	var s material.Spray
	s.Product, _ = read("3 fl oz / 1000 ft2").Rate()
	s.Carrier, _ = read("1.5 gal / 1000 ft2").Rate()
	s.Tank, _ = read("4 gal").Volume()
	ground, _ := read("6240 ft2").Area()
	fills, _ := s.Fills(ground)

	people := material.Figures{Units: zones.US}
	fmt.Printf("%d full fills of %s with %s\n", fills.Count, people.Mix(fills.Full.Mix), people.Amount(fills.Full.Product))
	fmt.Printf("last fill of %s with %s\n", people.Mix(fills.Last.Mix), people.Amount(fills.Last.Product))
	// Output:
	// 2 full fills of 4.0 gal with 8.0 fl oz
	// last fill of 1.4 gal with 2.7 fl oz
}
