package turf

import "example.org/turfplat/geo"

// Exact factors to SI (NIST Handbook 44, appendix C; from memory).
const (
	inchM          = geo.FootM / 12
	millimetreM    = 0.001
	poundKG        = 0.45359237
	poundPer1000KG = poundKG / (1000 * geo.FootM * geo.FootM) // lb/1000 ft2 to kg/m2
	gramKG         = 0.001
)
