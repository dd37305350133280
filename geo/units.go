package geo

// FootM is the length of the international foot in metres, exact since 1 July
// 1959 (NIST and NOAA, 85 FR 62698, 5 October 2020).
const FootM = 0.3048

const (
	squareFootM2 = FootM * FootM
	squareFeet   = 43560 // in an acre (NIST Handbook 44, appendix C; from memory)
)

// Length is a length in metres.
type Length float64

// Feet returns l in international feet.
func (l Length) Feet() float64 { return float64(l) / FootM }

// Area is an area in square metres.
type Area float64

// SquareFeet returns a in square feet (international).
func (a Area) SquareFeet() float64 { return float64(a) / squareFootM2 }

// Acres returns a in acres of 43,560 international square feet.
func (a Area) Acres() float64 { return a.SquareFeet() / squareFeet }
