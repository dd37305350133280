package program

import (
	"time"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/material"
)

// Schema names the form of Document.
const Schema = "turfplat/plan/1"

// A Document is a plan in the form in which machines read it. Amounts are full
// precision, in the units of the site and in SI.
type Document struct {
	Schema    string             `json:"schema"`
	Site      string             `json:"site"`
	Program   string             `json:"program"`
	Steps     []StepDocument     `json:"steps"`
	Purchases []PurchaseDocument `json:"purchases"`
	Nutrients []FeedDocument     `json:"nutrients"`
}

// A StepDocument is one step of a Document.
type StepDocument struct {
	ID      string           `json:"id"`
	Does    Job              `json:"does"`
	Status  Status           `json:"status"`
	Visits  int              `json:"visits"` // in the season; amounts are of all of them
	Done    []string         `json:"done"`   // the days of those that were done
	Passes  int              `json:"passes"` // of a visit; amounts are of all of them
	Window  WindowDocument   `json:"window"`
	Zones   []ZoneDocument   `json:"zones"`
	Totals  []AmountDocument `json:"totals"`
	Reasons []ReasonDocument `json:"reasons"`
}

// A WindowDocument is when a step can be done; from and to are days, both
// inside, or "". Why tells the status in words and what the dates rest on.
type WindowDocument struct {
	From string `json:"from"`
	To   string `json:"to"`
	Why  string `json:"why"`
}

// A ZoneDocument is what a step puts on one zone.
type ZoneDocument struct {
	Zone       string           `json:"zone"`
	AreaM2     float64          `json:"area_m2"`
	Quantities []AmountDocument `json:"quantities"`
}

// An AmountDocument is an amount of a material, in two units.
type AmountDocument struct {
	Material string  `json:"material"`
	Amount   float64 `json:"amount"`
	Unit     string  `json:"unit"`
	AmountSI float64 `json:"amount_si"`
	UnitSI   string  `json:"unit_si"`
}

// A ReasonDocument is what a rule says of a step.
type ReasonDocument struct {
	Rule     string   `json:"rule"`
	Severity Severity `json:"severity"`
	Text     string   `json:"text"`
	Until    string   `json:"until"`
	Source   string   `json:"source"`
}

// A PurchaseDocument is packs of one size that are bought of a material. Of a
// material in packs of several sizes the first one bears needed, to_load and
// left_over, those that follow have 0, so that columns can be summed.
type PurchaseDocument struct {
	Material string  `json:"material"`
	Needed   float64 `json:"needed"`
	ToLoad   float64 `json:"to_load"`
	Unit     string  `json:"unit"`
	Pack     float64 `json:"pack"`  // 0 = sold loose
	Packs    int     `json:"packs"` // of that size
	LeftOver float64 `json:"left_over"`
}

// A FeedDocument is what a zone gets of nutrients in the season; limit is the
// most nitrogen a year for its grass, 0 if that is not known.
type FeedDocument struct {
	Zone       string   `json:"zone"`
	N          float64  `json:"n_lb_per_1000ft2"`
	P2O5       float64  `json:"p2o5_lb_per_1000ft2"`
	K2O        float64  `json:"k2o_lb_per_1000ft2"`
	Limit      float64  `json:"limit"`
	NotCounted []string `json:"not_counted"` // steps that feed the zone by label, without a rate here
}

// Document returns the plan for machines.
func (p *Plan) Document() Document {
	d := Document{Schema: Schema, Site: p.Property.ID, Program: p.Program.Name,
		Steps: []StepDocument{}, Purchases: []PurchaseDocument{}, Nutrients: []FeedDocument{}}
	for i := range p.Steps {
		d.Steps = append(d.Steps, p.stepDocument(&p.Steps[i]))
	}
	for _, b := range p.Purchases {
		d.Purchases = append(d.Purchases, p.purchaseDocuments(b)...)
	}
	for _, f := range p.Feeds {
		perM := func(kgPerM2 float64) float64 {
			v, _ := material.Rate{By: material.Weight, PerM2: kgPerM2}.In(poundPer1000) // both are of a weight on an area
			return v
		}
		d.Nutrients = append(d.Nutrients, FeedDocument{f.ID, perM(f.N), perM(f.P2O5), perM(f.K2O), perM(f.Limit), idsOf(f.ByLabel)})
	}
	return d
}

func idsOf(steps []*Step) []string {
	ids := []string{}
	for _, s := range steps {
		ids = append(ids, s.ID)
	}
	return ids
}

func (p *Plan) stepDocument(s *StepPlan) StepDocument {
	d := StepDocument{ID: s.Step.ID, Does: s.Step.Does, Status: s.Status,
		Visits: s.visits(), Done: isoDays(s.Step.Done), Passes: s.Step.Passes,
		Window: WindowDocument{isoDay(s.From), isoDay(s.To), joinNonempty("; ", s.Why, s.Dates)},
		Zones:  []ZoneDocument{}, Totals: []AmountDocument{}, Reasons: []ReasonDocument{}}
	for _, z := range s.Zones {
		zone := ZoneDocument{z.ID, z.AreaM2, []AmountDocument{}}
		if z.Draw != nil {
			zone.Quantities = append(zone.Quantities, p.amountDocument(z.Draw.Product, z.Draw.Amount))
		}
		d.Zones = append(d.Zones, zone)
	}
	for _, t := range s.Totals {
		d.Totals = append(d.Totals, p.amountDocument(t.Material, t.Amount))
	}
	for _, v := range s.Reasons {
		d.Reasons = append(d.Reasons, ReasonDocument{v.Rule, v.Severity, v.WithZones(s), isoDay(v.Until), v.Source})
	}
	return d
}

func isoDays(days []time.Time) []string {
	texts := []string{}
	for _, day := range days {
		texts = append(texts, isoDay(day))
	}
	return texts
}

// amountIn is an amount in the unit that people of the site's units use for
// that much of it.
func amountIn(a material.Amount, units zones.Units) (float64, material.Unit) {
	unit := material.Figures{Units: units}.Amount(a).Unit
	v, _ := a.In(unit) // the unit is one of the amount's kind
	return v, unit
}

func (p *Plan) amountDocument(name string, a material.Amount) AmountDocument {
	v, unit := amountIn(a, p.Property.Units)
	si, unitSI := a.SI()
	return AmountDocument{name, v, unit.String(), si, unitSI}
}

func (p *Plan) purchaseDocuments(b material.Purchase) []PurchaseDocument {
	needed, unit := amountIn(b.Needed, p.Property.Units)
	in := func(a material.Amount) float64 {
		v, _ := a.In(unit) // all of them are measured alike
		return v
	}
	first := PurchaseDocument{Material: b.Product, Needed: needed, ToLoad: in(b.ToLoad), Unit: unit.String(), LeftOver: in(b.LeftOver)}
	if len(b.Packs) == 0 {
		return []PurchaseDocument{first}
	}
	var list []PurchaseDocument
	for _, c := range b.Packs {
		d := PurchaseDocument{Material: b.Product, Unit: unit.String()}
		if len(list) == 0 {
			d = first
		}
		d.Pack, d.Packs = in(c.Size), c.Count
		list = append(list, d)
	}
	return list
}
