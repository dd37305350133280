package material

// A Dimension is what a quantity measures, in powers of the kilogram, the
// metre, the second and the degree Celsius. The zero Dimension is a share.
type Dimension struct{ Kg, M, S, C int8 }

// The dimensions of simple units.
var (
	shareDimension       = Dimension{}
	weightDimension      = Dimension{Kg: 1}
	lengthDimension      = Dimension{M: 1}
	areaDimension        = Dimension{M: 2}
	volumeDimension      = Dimension{M: 3}
	timeDimension        = Dimension{S: 1}
	temperatureDimension = Dimension{C: 1}
)

// The dimensions of one unit over another. Volume on an area is a depth, a
// length.
var (
	weightRateDimension = Dimension{Kg: 1, M: -2}
	densityDimension    = Dimension{Kg: 1, M: -3}
	speedDimension      = Dimension{M: 1, S: -1}
	flowDimension       = Dimension{M: 3, S: -1}
)

func (d Dimension) over(e Dimension) Dimension {
	return Dimension{d.Kg - e.Kg, d.M - e.M, d.S - e.S, d.C - e.C}
}

var dimensionNames = map[Dimension]string{
	shareDimension:       "a share",
	weightDimension:      "a weight",
	lengthDimension:      "a length",
	areaDimension:        "an area",
	volumeDimension:      "a volume",
	timeDimension:        "a time",
	temperatureDimension: "a temperature",
	weightRateDimension:  "a weight on an area",
	densityDimension:     "a weight in a volume",
	speedDimension:       "a depth in a time",
	flowDimension:        "a volume in a time",
}

// String names the dimension with its article, as in "a weight".
func (d Dimension) String() string {
	if name, known := dimensionNames[d]; known {
		return name
	}
	return "nothing that is used here"
}
