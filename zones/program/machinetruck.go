package program

// VisitSchema names the form of VisitDocument.
const VisitSchema = "turfplat/plans/1"

// A VisitDocument is the plans of several sites, and what one truck takes for
// all that is ready on them, in the units of the first.
type VisitDocument struct {
	Schema string         `json:"schema"`
	Sites  []Document     `json:"sites"`
	Truck  []LoadDocument `json:"truck"`
}

// A LoadDocument is what the truck takes of one material.
type LoadDocument struct {
	Material string             `json:"material"`
	Unit     string             `json:"unit"`
	Packs    []PurchaseDocument `json:"packs"`
	Sites    []DemandDocument   `json:"sites"`
}

// A DemandDocument is what one site needs of a material, without the carry.
type DemandDocument struct {
	Site   string  `json:"site"`
	Needed float64 `json:"needed"`
}

// VisitDocumentOf returns the plans of several sites for machines. An error
// says that the sites take a material in different ways.
func VisitDocumentOf(plans []*Plan) (VisitDocument, error) {
	v := VisitDocument{Schema: VisitSchema, Sites: []Document{}, Truck: []LoadDocument{}}
	for _, p := range plans {
		v.Sites = append(v.Sites, p.Document())
	}
	loads, err := Load(plans)
	if err != nil {
		return v, err
	}
	for _, b := range loads {
		_, unit := amountIn(b.Needed, plans[0].Property.Units)
		load := LoadDocument{Material: b.Product, Unit: unit.String(), Packs: plans[0].purchaseDocuments(b), Sites: []DemandDocument{}}
		for _, s := range b.Sites {
			needed, _ := s.Needed.In(unit) // measured like their sum
			load.Sites = append(load.Sites, DemandDocument{s.Site, needed})
		}
		v.Truck = append(v.Truck, load)
	}
	return v, nil
}
