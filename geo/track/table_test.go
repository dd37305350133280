package track

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// groupOrder sorts groups by their heading, in the order of the table, then by
// name; lawns by size.
func groupOrder(groups map[string]*tally) []string {
	headings := []string{"all", "noise", "sigma", "laps", "receiver", "incident", "lawn", "one lap", "several"}
	rank := func(name string) int {
		h := slices.IndexFunc(headings, func(h string) bool { return strings.HasPrefix(name, h) })
		l := slices.IndexFunc(lawns, func(l lawn) bool { return name == "lawn: "+l.name })
		return 100*h + l
	}
	var order []string
	for name := range groups {
		order = append(order, name)
	}
	slices.SortFunc(order, func(a, b string) int {
		if d := rank(a) - rank(b); d != 0 {
			return d
		}
		return strings.Compare(a, b)
	})
	return order
}

const preface = `# Simulated walks

%d walks round lawns of known area, one fix a second at 0.9 to 1.4 m/s, with receivers of known error: white
noise, or an error that fades at first order with a reach of 5 to 120 s, of 0.5 to 3 m (1 sigma) on each axis. Lawns,
receivers, one to four laps, and incidents are drawn evenly; the seeds are fixed. Written by

` + "```sh" + `
go test ./geo/track -run TestSimulatedWalks -walks %d -update
` + "```" + `

- **refused**: walks for which no area was given: too narrow for the receiver, or lost for a minute where no other lap helps.
- **covered**: how many of the others have the true area in their 95 %% interval, with the sampling error of that share.
- **bias**: mean of the area's error less its part to first order, which is known here and has a mean of zero.
- **rms**: root mean square of the area's error, as a share of the area; **told**: the 1-sigma error that was told, on the mean.
- **width**: mean width of the interval against that of one who knows the receiver's law and sigma (1.96 of the true standard
  deviation to first order, without closing error, smoothing, lost minutes, and the walker's own deviations).

Groups of which a third or more is refused, and those of fewer than 40 walks, stand in brackets and are not judged. Asked for
is 92 to 98 %% covered, a bias within 1 %% and a width of 1.3 at most. The intervals were not widened to meet that; what
misses it:

%s
Why: before the fixes are looked at, a receiver that states nothing is taken to err by about 1.4 m, so that a better one gets too
wide an interval and a worse one too narrow. One lap shows the slow part of an error through its fast part only. A walk that
lost a minute has fewer laps than the one it is compared with. Where a narrow ring is refused by its estimated error, those
that came out too large stay. Laws of filtered errors are weighed as well, which these receivers do not follow but real ones
do; without them the interval held the area in far fewer than 95 in 100 walks made with the errors of real receivers.

| group | walks | refused | covered | bias | rms | told | width |
|---|---|---|---|---|---|---|---|
`

func table(order []string, groups map[string]*tally) string {
	var b strings.Builder
	n := groups["all"].walks
	fmt.Fprintf(&b, preface, n, n, misses(order, groups))
	for _, name := range order {
		b.WriteString(groups[name].row())
	}
	return b.String()
}

// misses lists the judged groups that are not as asked.
func misses(order []string, groups map[string]*tally) string {
	var b strings.Builder
	for _, name := range order {
		g := groups[name]
		if !g.judged() {
			continue
		}
		share, shareError := g.coverage()
		bias, biasError := g.meanBias()
		var what []string
		if share < 0.92 || share > 0.98 {
			what = append(what, fmt.Sprintf("covered %.1f +/- %.1f %%", 100*share, 100*shareError))
		}
		if math.Abs(bias) > 0.01 {
			what = append(what, fmt.Sprintf("bias %+.2f +/- %.2f %%", 100*bias, 100*biasError))
		}
		if w := g.width / g.known; w > 1.3 {
			what = append(what, fmt.Sprintf("width %.2f", w))
		}
		if len(what) > 0 {
			fmt.Fprintf(&b, "- %s: %s\n", name, strings.Join(what, ", "))
		}
	}
	return b.String()
}

func (t *tally) row() string {
	name := t.name
	if !t.judged() {
		name = "(" + name + ")"
	}
	n := t.kept()
	if n == 0 {
		return fmt.Sprintf("| %s | %d | %d | | | | | |\n", name, t.walks, t.refused)
	}
	share, shareError := t.coverage()
	bias, biasError := t.meanBias()
	return fmt.Sprintf("| %s | %d | %d | %.1f +/- %.1f %% | %+.2f +/- %.2f %% | %.1f %% | %.1f %% | %.2f |\n", name, t.walks, t.refused,
		100*share, 100*shareError, 100*bias, 100*biasError, 100*math.Sqrt(t.square/n), 100*t.sigma/n, t.width/t.known)
}
