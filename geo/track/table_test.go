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

Groups of which a third or more is refused, and those of fewer than 40 walks, are shown in brackets and not judged. One lap
tells the slow part of an error from its fast part only, so that the groups by noise at the end, which no walker can tell
apart beforehand, are covered on the mean and not each: an error that fades within seconds gets an interval too wide, one
that outlasts the lap gets one that is right or a little narrow. A second lap mends that.

| group | walks | refused | covered | bias | rms | told | width |
|---|---|---|---|---|---|---|---|
`

func table(order []string, groups map[string]*tally) string {
	var b strings.Builder
	n := groups["all"].walks
	fmt.Fprintf(&b, preface, n, n)
	for _, name := range order {
		b.WriteString(groups[name].row())
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
