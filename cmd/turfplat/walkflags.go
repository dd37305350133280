package main

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo/track"
	"example.org/turfplat/zones"
)

// Lengths beyond these are slips of the pen.
const (
	farthestOffset = 10  // m from the edge
	worstFix       = 100 // m, 1 sigma
)

// walks are what a survey is told of walked tracks, and what it finds of them.
type walks struct {
	zones.Walking      // its kind is "" if none is stated
	explain       bool // tell every step
	trails        []zones.Trail
}

func walkFlags() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "as"}, &cli.StringFlag{Name: "offset"}, &cli.StringFlag{Name: "side"}, &cli.StringFlag{Name: "sigma"},
		&cli.BoolFlag{Name: "explain"},
	}
}

// readWalkFlags reads the flags that tell of walks.
func readWalkFlags(c *cli.Context) (w walks, err error) {
	w.explain = c.Bool("explain")
	if c.IsSet("as") {
		if w.Kind, err = zones.WalkedKind(c.String("as")); err != nil {
			return w, usageHint(fmt.Errorf("--as: %w", err), kindsHint())
		}
	}
	if w.Sigma, err = lengthFlag(c, "sigma", worstFix); err != nil {
		return w, err
	}
	if w.Offset, err = lengthFlag(c, "offset", farthestOffset); err != nil {
		return w, err
	}
	return w, w.readSide(c)
}

// readSide reads on which side of the edge somebody walked.
func (w *walks) readSide(c *cli.Context) error {
	sides := map[string]track.Side{"inside": track.Inside, "outside": track.Outside, "edge": track.OnEdge}
	word := c.String("side")
	var known bool
	w.Side, known = sides[word]
	switch {
	case !c.IsSet("side") && w.Offset > 0:
		return usageHint(fmt.Errorf("--offset %s: on which side of the edge?", c.String("offset")), "add --side inside if you walked on the ground that is measured, --side outside if beside it")
	case !c.IsSet("side"):
		return nil
	case !known:
		return usageErrorf("--side is inside, outside or edge, not %q", word)
	case w.Side == track.OnEdge && w.Offset > 0:
		return usageErrorf("--side edge leaves no --offset: whoever walks on the edge keeps no distance from it")
	case w.Side != track.OnEdge && w.Offset == 0:
		return usageHint(fmt.Errorf("--side %s: how far from the edge?", word), "add the distance, such as --offset 0.3m or --offset 1ft")
	}
	return nil
}

// kindsHint lists what somebody may have walked round.
func kindsHint() string {
	var words []string
	for _, k := range zones.WalkedKinds() {
		words = append(words, string(k))
	}
	return "say what it goes round, such as --as turf; or one of " + strings.Join(words[1:], ", ")
}
