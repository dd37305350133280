package render

// Inks that people of every colour vision tell apart: Okabe and Ito 2008, as
// in Wong 2011, Nature Methods 8:441, doi 10.1038/nmeth.1618. Only blue is dark
// enough for text; see [Ink.ReadableOn].
var (
	black         = RGB(0x000000)
	orange        = RGB(0xE69F00)
	skyBlue       = RGB(0x56B4E9)
	bluishGreen   = RGB(0x009E73)
	yellow        = RGB(0xF0E442)
	blue          = RGB(0x0072B2)
	vermillion    = RGB(0xD55E00)
	reddishPurple = RGB(0xCC79A7)

	white = RGB(0xFFFFFF)
	grey  = RGB(0x595959) // 7:1 on white
)

// Weights of lines in millimetres: the series of ISO 128-2, each wider than
// the one before by the square root of two (from memory). The thinnest pen
// still survives a photocopier.
const (
	hairLine   = 0.18
	thinLine   = 0.25
	mediumLine = 0.35
	heavyLine  = 0.5
	broadLine  = 0.7
)
