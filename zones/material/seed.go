package material

// A SeedLot is what the tag of a lot of seed says. Coating counts as what is
// not pure, so coated seed needs no other treatment.
type SeedLot struct{ Purity, Germination Share }

// PLS returns the part of the lot that is pure live seed.
func (l SeedLot) PLS() Share { return l.Purity * l.Germination }
