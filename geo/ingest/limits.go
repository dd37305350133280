package ingest

import "cmp"

// Limits bound what one site may ask of the machine. A field left zero means
// that of [DefaultLimits].
type Limits struct {
	Bytes     int // of the text of a site
	Line      int // of the text of a site that is a line among others
	Depth     int // of brackets within brackets
	Features  int // of a site
	Positions int // of a site
	Problems  int // listed for a site; the rest are counted

	// Of a map extract, used by it or not.
	Nodes   int
	Ways    int // and relations
	Members int // nodes of ways and members of relations
	Tags    int
}

// DefaultLimits are far above any property and well below a small computer's
// memory.
var DefaultLimits = Limits{
	Bytes:     256 << 20,
	Line:      64 << 20,
	Depth:     100,
	Features:  1_000_000,
	Positions: 5_000_000,
	Problems:  10_000,

	Nodes:   4_000_000,
	Ways:    500_000,
	Members: 10_000_000,
	Tags:    3_000_000,
}

func (l Limits) filled() Limits {
	return Limits{
		Bytes:     cmp.Or(l.Bytes, DefaultLimits.Bytes),
		Line:      cmp.Or(l.Line, DefaultLimits.Line),
		Depth:     cmp.Or(l.Depth, DefaultLimits.Depth),
		Features:  cmp.Or(l.Features, DefaultLimits.Features),
		Positions: cmp.Or(l.Positions, DefaultLimits.Positions),
		Problems:  cmp.Or(l.Problems, DefaultLimits.Problems),

		Nodes:   cmp.Or(l.Nodes, DefaultLimits.Nodes),
		Ways:    cmp.Or(l.Ways, DefaultLimits.Ways),
		Members: cmp.Or(l.Members, DefaultLimits.Members),
		Tags:    cmp.Or(l.Tags, DefaultLimits.Tags),
	}
}
