package material

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// unitNames are the units of the table but for temperatures, sorted.
var unitNames = func() []string {
	var names []string
	for _, u := range unitsByName {
		if u.dimension != temperatureDimension {
			names = append(names, u.name)
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}()

// A number of up to 15 digits, turned into any other unit and back, is the
// same number; and a quantity is read as it is written.
func TestUnitsThereAndBack(t *testing.T) {
	check(t, 2000, func(t *rapid.T) {
		q := Quantity{Number: drawDecimal(t), Unit: drawUnit(t)}
		other := drawUnit(t)
		if q.Unit.Dimension() != other.Dimension() {
			other = q.Unit
		}
		if back := q.Unit.fromSI(q.SI()); back != q.Number {
			t.Errorf("%s comes back from SI as %v", q, back)
		}
		there := Quantity{Number: must(q.In(other)), Unit: other}
		near(t, q.String()+" there and back", must(there.In(q.Unit)), q.Number, 4e-15)
		if again := mustParse(q.String()); again != q {
			t.Errorf("%s is read as %s", q, again)
		}
	})
}

// drawDecimal draws a number as people write them, of up to 15 digits.
func drawDecimal(t *rapid.T) float64 {
	digits := rapid.Int64Range(1, 999_999_999_999_999).Draw(t, "digits")
	places := rapid.IntRange(0, 9).Draw(t, "places")
	return must(strconv.ParseFloat(strconv.FormatInt(digits, 10)+"e-"+strconv.Itoa(places), 64))
}

func drawUnit(t *rapid.T) Unit {
	name := rapid.SampledFrom(unitNames).Draw(t, "unit")
	if rapid.Bool().Draw(t, "rate") {
		name += rapid.SampledFrom([]string{" / 1000 ft2", " / acre", " / m2", " / gal", " / h"}).Draw(t, "under")
	}
	return unit(name)
}

// Temperatures to a hundredth of a degree come back as they were.
func TestTemperaturesThereAndBack(t *testing.T) {
	f, c := unit("F"), unit("C")
	for hundredths := -40000; hundredths <= 40000; hundredths += 7 {
		v := float64(hundredths) / 100
		for _, way := range [][2]Unit{{f, c}, {c, f}} {
			q := Quantity{Number: v, Unit: way[0]}
			there := Quantity{Number: must(q.In(way[1])), Unit: way[1]}
			if back := must(there.In(way[0])); math.Abs(back-v) > 1e-12 {
				t.Fatalf("%s comes back as %v", q, back)
			}
			if back := way[0].fromSI(q.SI()); back != v {
				t.Fatalf("%s comes back from SI as %v", q, back)
			}
		}
	}
}

// What is on two areas is on both together, and twice the area takes twice as
// much.
func TestAmountsAddUp(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		r := Rate{PerM2: rapid.Float64Range(1e-9, 10).Draw(t, "rate")}
		a, b := feet2(rapid.Float64Range(0.01, 1e6).Draw(t, "a")), feet2(rapid.Float64Range(0.01, 1e6).Draw(t, "b"))
		near(t, "together", r.Over(a+b).Size, r.Over(a).Size+r.Over(b).Size, 1e-14)
		near(t, "twice", r.Over(2*a).Size, r.Over(a).Times(2).Size, 0)
		near(t, "in parts", r.Times(1.0/3).Over(a).Times(3).Size, r.Over(a).Size, 1e-14)
	})
}

// A product's rate for what is in it delivers just that.
func TestRatesThereAndBack(t *testing.T) {
	check(t, 300, func(t *rapid.T) {
		share := func(what string) Share { return Share(rapid.Float64Range(0.01, 1).Draw(t, what)) }
		p := Product{
			Grade: Grade{share("N") / 3, share("P2O5") / 3, share("K2O") / 3}, Seed: SeedLot{share("purity"), share("germination")},
			Strength: Strength{Share: share("ai")}, Density: Density(rapid.Float64Range(100, 2000).Draw(t, "density")),
			Packs: []Pack{{Size: rapid.SampledFrom([]Amount{{Weight, 1}, {Liquid, 1}, {Bulk, 1}}).Draw(t, "pack")}},
		}
		if rapid.Bool().Draw(t, "liquid") {
			p.Strength = Strength{Density: Density(rapid.Float64Range(10, 900).Draw(t, "strength"))}
		}
		wanted := Rate{Weight, rapid.Float64Range(1e-9, 1).Draw(t, "rate"), rapid.SampledFrom(substances).Draw(t, "of")}
		r := must(p.Rate(wanted))
		if r.By != p.Packs[0].Size.By || r.Of != Itself {
			t.Errorf("rate %+v of what is sold by %s", r, p.Packs[0].Size.By)
		}
		back := must(p.Delivers(wanted.Of, r))
		near(t, "delivered", back.PerM2, wanted.PerM2, 1e-12)
		if back.By != Weight || back.Of != wanted.Of {
			t.Errorf("%+v delivered for %+v", back, wanted)
		}
	})
}
