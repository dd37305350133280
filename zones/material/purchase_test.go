package material

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

func zone(id string, ft2 float64, apply bool) zones.ZoneMeasure {
	return zones.ZoneMeasure{ID: id, AreaM2: float64(feet2(ft2)), Apply: apply}
}

var (
	feed  = Product{Name: "feed", Grade: Grade{0.25, 0, 0.10}, Packs: packs("50 lb")}
	humic = Product{Name: "humic", Packs: packs("1 gal", "2.5 gal")}
	loose = Product{Name: "compost"}
	sold  = []Product{feed, humic, loose}
)

func at(site, step string, draws []Draw) []Draw {
	for i := range draws {
		draws[i].Site, draws[i].Step = site, step
	}
	return draws
}

func spread(p Product, r Rate, on []zones.ZoneMeasure) []Draw { return must(Spread(p, r, on)) }

func TestKeepoutsGetNothing(t *testing.T) {
	draws := spread(feed, rate("3 lb / M"), []zones.ZoneMeasure{zone("front", 2000, true), zone("wet", 500, false), zone("back", 4240, true)})
	got := ""
	for _, d := range draws {
		got += fmt.Sprintf("%s %.6g lb; ", d.Zone, must(d.Amount.In(unit("lb"))))
	}
	if got != "front 6 lb; back 12.72 lb; " {
		t.Errorf("draws %s", got)
	}
}

// Worked by hand: 25-0-10 at 0.75 lb N on 6,240 ft2 takes 18.72 lb, 19.656 lb
// with the carry, a bag of 50 lb, and leaves 30.344 lb.
func TestBuy(t *testing.T) {
	lawn := []zones.ZoneMeasure{zone("front", 2000, true), zone("wet", 500, false), zone("back", 4240, true)}
	draws := at("home", "spring", spread(feed, rate("0.75 lb N / M"), lawn))
	draws = append(draws, at("home", "humic", spread(humic, rate("6 fl oz / M"), lawn))...)
	draws = append(draws, at("home", "dress", spread(loose, rate("1/4 in"), lawn))...)
	bought := must(Buy(draws, sold, Carry.Share()))
	for i, want := range []struct {
		product, in                    string
		needed, toLoad, bought, leftOf float64
		packs                          string
	}{
		{"feed", "lb", 18.72, 19.656, 50, 30.344, "1 x 50"},
		{"humic", "fl oz", 37.44, 39.312, 128, 88.688, "1 x 128"},
		{"compost", "yd3", 6240 * 0.25 / 324, 1.05 * 6240 * 0.25 / 324, 1.05 * 6240 * 0.25 / 324, 0, ""},
	} {
		p := bought[i]
		for _, f := range []struct {
			what string
			got  Amount
			want float64
		}{{"needed", p.Needed, want.needed}, {"to load", p.ToLoad, want.toLoad}, {"bought", p.Bought, want.bought}, {"left over", p.LeftOver, want.leftOf}} {
			near(t, want.product+" "+f.what, must(f.got.In(unit(want.in))), f.want, 1e-9)
		}
		if got := listed(p.Packs, want.in); p.Product != want.product || got != want.packs {
			t.Errorf("%s in %s, want %s in %s", p.Product, got, want.product, want.packs)
		}
	}
}

// Packs are counted for the day, not for each stop: three lawns of 30 lb with
// the carry take two bags of 50 lb, not three.
func TestTruckLoad(t *testing.T) {
	var draws []Draw
	for _, site := range []string{"ash", "birch", "ash", "cedar"} {
		ft2 := 9000.0
		if site == "ash" {
			ft2 = 4500
		}
		draws = append(draws, at(site, "feed", spread(feed, rate("3 lb / M"), []zones.ZoneMeasure{zone("turf", ft2, true)}))...)
	}
	load := must(Buy(draws, sold, Carry.Share()))
	got := listed(load[0].Packs, "lb")
	for _, s := range load[0].Sites {
		got += fmt.Sprintf("; %s %.6g", s.Site, must(s.Needed.In(unit("lb"))))
	}
	if len(load) != 1 || got != "2 x 50; ash 27; birch 27; cedar 27" {
		t.Errorf("load %s", got)
	}
}

func TestBuyRefused(t *testing.T) {
	lawn := []zones.ZoneMeasure{zone("front", 2000, true)}
	_, err := Buy(spread(Product{Name: "lime"}, rate("3 lb / M"), lawn), sold, 0)
	checkError(t, "not described", err, `product "lime" is not described`)
	_, err = Fed(spread(Product{Name: "lime"}, rate("3 lb / M"), lawn), sold)
	checkError(t, "not described", err, `product "lime" is not described`)
	_, err = Spread(humic, rate("3 oz / M"), lawn)
	checkError(t, "ounces", err, `"humic": weights and volumes of one product cannot be mixed without its density (oz is a weight and fl oz a volume; use one kind throughout, or state the density, such as 9 lb / gal or 1200 lb / yd3)`)
	_, err = Buy([]Draw{{Product: "humic", Amount: amount("3 oz")}}, sold, 0)
	checkError(t, "ounces", err, `"humic": weights and volumes of one product cannot be mixed without its density (oz is a weight and fl oz a volume; use one kind throughout, or state the density, such as 9 lb / gal or 1200 lb / yd3)`)
	mixed := Product{Name: "mixed", Packs: packs("50 lb", "1 gal")}
	_, err = Buy(spread(mixed, rate("3 lb / M"), lawn), []Product{mixed}, 0)
	checkError(t, "packs", err, `"mixed": a pack holds nothing, or is measured in another way (state all packs alike, as weights or as volumes)`)
}

func TestFed(t *testing.T) {
	front, back := zone("front", 2000, true), zone("back", 4000, true)
	draws := at("home", "spring", spread(feed, rate("3 lb / M"), []zones.ZoneMeasure{front, back}))
	draws = append(draws, at("home", "humic", spread(humic, rate("6 fl oz / M"), []zones.ZoneMeasure{front}))...)
	draws = append(draws, at("home", "fall", spread(feed, rate("4 lb / M"), []zones.ZoneMeasure{back}))...)
	fed := must(Fed(draws, sold))
	if len(fed) != 2 || fed[0].Zone != "front" || fed[1].Zone != "back" {
		t.Fatalf("fed %+v", fed)
	}
	perM := unit("lb / M")
	near(t, "N on the front", perM.fromSI(fed[0].N), 0.75, 1e-12)
	near(t, "K2O on the front", perM.fromSI(fed[0].K2O), 0.3, 1e-12)
	near(t, "N on the back", perM.fromSI(fed[1].N), 1.75, 1e-12)
	near(t, "P2O5 on the back", fed[1].P2O5, 0, 0)
	_, err := Fed([]Draw{{Product: "feed", Rate: rate("3 fl oz / M")}}, sold)
	checkError(t, "by volume", err, `"feed": weights and volumes of one product cannot be mixed without its density (oz is a weight and fl oz a volume; use one kind throughout, or state the density, such as 9 lb / gal or 1200 lb / yd3)`)
}

// Amounts add up over zones and grow with the area; what is bought is enough,
// and dividing a zone in two changes neither what is needed nor what is
// bought.
func TestPurchaseLaws(t *testing.T) {
	check(t, 200, func(t *rapid.T) {
		r := rate("1 lb / M").Times(rapid.Float64Range(0.01, 20).Draw(t, "rate"))
		whole := rapid.SliceOfN(rapid.Custom(drawZone), 1, 6).Draw(t, "zones")
		cut := rapid.Float64Range(0.01, 0.99).Draw(t, "cut")
		var parts []zones.ZoneMeasure
		applied := 0.0
		for _, z := range whole {
			one, other := z, z
			one.AreaM2 = z.AreaM2 * cut
			other.AreaM2 = z.AreaM2 - one.AreaM2
			parts = append(parts, one, other)
			if z.Apply {
				applied += z.AreaM2
			}
		}
		product := Product{Name: "feed", Packs: packs("50 lb", "20 lb")}
		buy := func(zs []zones.ZoneMeasure) []Purchase {
			return must(Buy(spread(feed, r, zs), []Product{product}, Carry.Share()))
		}
		a, b := buy(whole), buy(parts)
		if len(a) == 0 {
			if applied != 0 || len(b) != 0 {
				t.Errorf("nothing bought for %g m2", applied)
			}
			return
		}
		near(t, "needed", a[0].Needed.Size, r.Over(geo.Area(applied)).Size, 1e-12)
		near(t, "needed of the parts", b[0].Needed.Size, a[0].Needed.Size, 1e-12)
		if got, want := listed(b[0].Packs, "lb"), listed(a[0].Packs, "lb"); got != want {
			t.Errorf("packs of the parts %s, of the whole %s", got, want)
		}
		if a[0].Bought.Size < a[0].ToLoad.Size*(1-1e-12) || a[0].ToLoad.Size < a[0].Needed.Size {
			t.Errorf("bought %g of %g for %g", a[0].Bought.Size, a[0].ToLoad.Size, a[0].Needed.Size)
		}
	})
}

func drawZone(t *rapid.T) zones.ZoneMeasure {
	return zone("z", rapid.Float64Range(1, 50000).Draw(t, "ft2"), rapid.IntRange(0, 3).Draw(t, "apply") > 0)
}

// All tanks together hold the product and the mix of the whole area.
func TestFillsAddUp(t *testing.T) {
	check(t, 200, func(t *rapid.T) {
		s := Spray{
			Product: rate("1 fl oz / M").Times(rapid.Float64Range(0.1, 8).Draw(t, "fl oz / M")),
			Carrier: rate("1 gal / M").Times(rapid.Float64Range(0.2, 4).Draw(t, "gal / M")),
			Tank:    Volume(rapid.Float64Range(0.003, 0.5).Draw(t, "tank")),
		}
		ground := feet2(rapid.Float64Range(1, 50000).Draw(t, "ft2"))
		f := must(s.Fills(ground))
		n := float64(f.Count)
		near(t, "ground", n*float64(f.Full.Area)+float64(f.Last.Area), float64(ground), 1e-8)
		near(t, "product", n*f.Full.Product.Size+f.Last.Product.Size, s.Product.Over(ground).Size, 1e-8)
		near(t, "mix", n*float64(f.Full.Mix)+float64(f.Last.Mix), s.Carrier.Over(ground).Size, 1e-8)
		if f.Last.Mix > s.Tank {
			t.Errorf("the last fill of %g m3 does not go into %g m3", float64(f.Last.Mix), float64(s.Tank))
		}
	})
}
