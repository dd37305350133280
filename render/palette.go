package render

// Inks that people of every colour vision tell apart: Okabe and Ito 2008, as
// in Wong 2011, Nature Methods 8:441, doi 10.1038/nmeth.1618. Only blue is dark
// enough for text; see [Ink.ReadableOn].
var (
	Black         = RGB(0x000000)
	Orange        = RGB(0xE69F00)
	SkyBlue       = RGB(0x56B4E9)
	BluishGreen   = RGB(0x009E73)
	Yellow        = RGB(0xF0E442)
	Blue          = RGB(0x0072B2)
	Vermillion    = RGB(0xD55E00)
	ReddishPurple = RGB(0xCC79A7)

	White = RGB(0xFFFFFF)
	Grey  = RGB(0x595959) // 7:1 on white
)

// Weights of lines in millimetres: the series of ISO 128-2, each wider than
// the one before by the square root of two (from memory). The thinnest pen
// still survives a photocopier.
const (
	HairLine   = 0.18
	ThinLine   = 0.25
	MediumLine = 0.35
	HeavyLine  = 0.5
	BroadLine  = 0.7
)
