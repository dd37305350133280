package track

// A Rule is a figure that cleaning or judging a walk goes by.
type Rule struct {
	Value  float64
	Unit   string
	Text   string
	Source string
}

const (
	practice = "common practice, no source"
	ownTrial = "own simulation: testdata/track/simulated.md"
)

var (
	closestFixes = Rule{0.09, "s", "of fixes that follow faster, the first counts", practice}
	worstHDOP    = Rule{4, "", "fixes of a higher dilution of precision are dropped", practice}
	fairHDOP     = Rule{2, "", "fixes of a higher dilution count less, by its square", practice}
	worstSigma   = Rule{10, "m", "fixes with a greater stated error are dropped", practice}
	fewestSats   = Rule{5, "", "fixes from fewer satellites are dropped", practice}
	settledSpeed = Rule{2, "m/s", "the receiver has settled when five fixes in a row move slower, or than three times the usual", practice}
	settlingTime = Rule{0.1, "", "share of a walk that settling may take at most", practice}
	walkingSpeed = Rule{3, "m/s", "a fix that takes more than this speed to reach may be a spike", practice}
	spikeReach   = Rule{3, "m", "a spike lies at least this far from its neighbours' median", practice}
	spikeRatio   = Rule{5, "", "and so many times as far as fixes do on the median", practice}
	standSpeed   = Rule{0.3, "m/s", "whoever moves slower stands", practice}
	standTime    = Rule{5, "s", "for at least so long", practice}
	standShare   = Rule{0.33, "", "share of the usual walk that errors may look like within the time", ownTrial}
	standSigmas  = Rule{1.5, "", "or, with a receiver that errs much, than so many times what its errors alone look like", ownTrial}
	lostTime     = Rule{10, "s", "without a fix for longer, the edge is unobserved", practice}
	lostWay      = Rule{15, "m", "or farther from the fix before", practice}
	lostTurn     = Rule{25, "deg", "an unobserved edge whose ends point along it within this is taken as straight", practice}
	lostShare    = Rule{0.05, "", "share of a ring that unobserved edges may put at stake", practice}
	smoothSpan   = Rule{4, "s", "a fix is smoothed with those so long before and after", practice}
	closeGate    = Rule{5, "m", "a ring closes where the walk comes back within this", practice}
	farthestGate = Rule{12, "m", "or within three sigmas of the receiver's wandering, up to this", ownTrial}
	closeShare   = Rule{0.12, "", "and within this share of the way round", ownTrial}
	closeTurn    = Rule{45, "deg", "and less askew than this, so that crossing the way there closes nothing", ownTrial}
	cornerTurn   = Rule{120, "deg", "or than this where the walk does not close otherwise: the far side of a strip points the other way", ownTrial}
	endTurn      = Rule{150, "deg", "or than this where the walk ends: who stops at a corner reached aslant has turned into no side", ownTrial}
	shortestRing = Rule{10, "m", "shorter ways round are knots", practice}
	narrowest    = Rule{0.5, "m", "so are rings that are narrower than this or than the receiver's error", practice}
	pieceShare   = Rule{0.6, "", "a loop of which more runs along a larger one is a piece of that", ownTrial}
	sharedGround = Rule{0.5, "", "two that cross and share more than this of what both go round are laps of one ring", practice}
	crossShare   = Rule{0.05, "", "rings cross if more than this share of the smaller lies beyond the other", practice}
	twiceSigmas  = Rule{4, "", "nor are two rings told apart that run within so many times the receiver's error of each other all round", ownTrial}
	leftShare    = Rule{0.5, "", "a ring is refused if more than this share of what was walked along it is in no lap", ownTrial}
	lapLength    = Rule{0.8, "", "or a lap of it, if it is longer than this share of it", ownTrial}
	lapShare     = Rule{0.6, "", "share of a ring from which an unfinished lap counts, completed from another", practice}
	stillWithin  = Rule{5, "m", "a walk that keeps within this has stood still", practice}
	pace         = Rule{1.2, "m/s", "walking speed where a file gives no times", practice}
	sharpestTurn = Rule{20, "deg", "an edge that turns less goes on straight", ownTrial}
	quietJitter  = Rule{0.03, "m", "a receiver that jitters less is quiet", ownTrial}
	quietTime    = Rule{2, "s", "fixes of a quiet receiver tell of its error only so far apart", ownTrial}
	arcTurn      = Rule{60, "deg", "one that turns less from both its neighbours is an arc", ownTrial}
	simplify     = Rule{0.25, "m", "vertices that matter less are left out, the area kept", practice}
	sway         = Rule{0.1, "m", "a walker keeps to the edge within this, 1 sigma", practice}
	swayReach    = Rule{2.5, "m", "and returns to it within this way", practice}
	wheelError   = Rule{0.10, "", "from this 1-sigma error, as a share of the area, a wheel or tape does better", practice}
	worstError   = Rule{0.25, "", "a ring with a greater 1-sigma error, as a share of the area, is refused", practice}
	stripShape   = Rule{8, "", "a ring whose perimeter is more times the root of its area is a strip", practice}
	walkBound    = Rule{0.45, "", "the area error of one lap is at most this times sigma times perimeter", "own simulation of six shapes, correlation 5 to 120 s, 600 walks each"}
)

// Rules returns the figures in the order in which they are used.
func Rules() []Rule {
	return []Rule{
		closestFixes, worstHDOP, fairHDOP, worstSigma, fewestSats, settledSpeed, settlingTime, walkingSpeed, spikeReach,
		spikeRatio, standSpeed, standTime, standShare, standSigmas, lostTime, lostWay, lostTurn, lostShare, smoothSpan, closeGate, farthestGate,
		closeShare, closeTurn, cornerTurn, endTurn, shortestRing, narrowest, pieceShare, sharedGround, crossShare, twiceSigmas, leftShare, lapLength, lapShare, stillWithin, pace, sharpestTurn, quietJitter,
		quietTime, arcTurn,
		simplify, sway, swayReach, wheelError, worstError, stripShape, walkBound,
	}
}
