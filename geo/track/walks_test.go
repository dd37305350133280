package track

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"testing"
)

// tableStream is the stream of the walks in the table: none of the figures was
// chosen with it in sight.
const tableStream = 5003

var (
	walks  = flag.Int("walks", 300, "how many walks to simulate")
	stream = flag.Uint64("stream", tableStream, "which walks: those of tableStream stand in the table, others are for trials")
	update = flag.Bool("update", false, "write the table of simulated walks")
)

// tableFile is where the table of 2,000 walks stands.
var tableFile = filepath.Join("..", "..", "testdata", "track", "simulated.md")

// An outcome is what became of one simulated walk.
type outcome struct {
	walker  walker
	trip    trip
	ring    Ring
	rings   int
	refused bool
}

// randomWalker draws a walk at random: every lawn, receiver and incident.
func randomWalker(rng *rand.Rand) walker {
	return walker{
		lawn: lawns[rng.IntN(len(lawns))],
		laps: 1 + rng.IntN(4),
		receiver: receiver{
			sigma: []float64{0.5, 1, 2, 3}[rng.IntN(4)],
			law:   []law{white, rough(5, 0.3), rough(15, 0.3), rough(40, 0.3), rough(120, 0.3)}[rng.IntN(5)],
			tells: []string{"nothing", "HDOP", "its error"}[rng.IntN(3)],
		},
		leadIn: rng.IntN(2) == 0, pauses: rng.IntN(2) == 0, spikes: rng.IntN(4) == 0, lost: rng.IntN(8) == 0,
	}
}

// simulated walks once, from a seed of its own.
func simulated(seed int) outcome {
	rng := rand.New(rand.NewPCG(*stream, uint64(seed)))
	o := outcome{walker: randomWalker(rng)}
	o.trip = o.walker.trip(rng)
	w, _ := Rings(o.trip.tracks(), Options{Side: OnEdge})
	o.rings, o.refused = len(w.Rings), len(w.Rings) == 0
	for _, g := range w.Rings {
		if g.Area > o.ring.Area {
			o.ring = g
		}
	}
	return o
}

// groups names the groups that a walk is counted in.
func (o outcome) groups() []string {
	w := o.walker
	noise := "noise: white"
	if reach := w.receiver.law.reach(); reach > 0 {
		noise = fmt.Sprintf("noise: correlated over %3.0f s", reach)
	}
	laps := "laps: 1"
	if w.laps > 1 {
		laps = fmt.Sprintf("laps: %d", w.laps)
	}
	names := []string{"all", noise, fmt.Sprintf("sigma: %.1f m", w.receiver.sigma), laps, "receiver tells: " + w.receiver.tells, "lawn: " + w.lawn.name}
	for _, i := range []struct {
		name string
		is   bool
	}{{"way there and away", w.leadIn}, {"pauses", w.pauses}, {"spikes", w.spikes}, {"a minute lost", w.lost}} {
		if i.is {
			names = append(names, "incident: "+i.name)
		}
	}
	if w.laps == 1 {
		return append(names, "one lap, "+noise)
	}
	return append(names, "several laps, "+noise)
}

// A tally sums up a group of walks.
type tally struct {
	name                        string
	walks, refused, covered     int
	bias, bias2                 float64 // of the area less the error to first order, as a share
	width, known, sigma, square float64
	observer, seen              float64 // width of the observer's interval, and how many hold the error of its own area
	width2, observer2, both     float64 // sums of squares of the two widths, and of their product
}

func (t *tally) add(o outcome) {
	t.walks++
	if o.refused {
		t.refused++
		return
	}
	area := o.trip.area
	off := float64(o.ring.Area) - area
	if math.Abs(off) <= float64(o.ring.CI95) {
		t.covered++
	}
	b := (off - o.trip.linear) / area
	t.bias, t.bias2 = t.bias+b, t.bias2+b*b
	w, observer := float64(o.ring.CI95)/area, o.trip.observer/area
	t.width, t.observer = t.width+w, t.observer+observer
	t.width2, t.observer2, t.both = t.width2+w*w, t.observer2+observer*observer, t.both+w*observer
	t.known += normal95 * o.trip.sigma / area
	if math.Abs(o.trip.observed) <= o.trip.observer {
		t.seen++
	}
	t.sigma += float64(o.ring.Sigma) / area
	t.square += off * off / area / area
}

func (t *tally) kept() float64 { return float64(t.walks - t.refused) }

// judged reports whether the group counts as one that is not refused: fewer
// than a third of its walks are, and it is large enough to tell.
func (t *tally) judged() bool { return 3*t.refused < t.walks && t.kept() >= 40 }

func (t *tally) coverage() (share, se float64) {
	share = float64(t.covered) / t.kept()
	return share, math.Sqrt(0.95 * 0.05 / t.kept())
}

func (t *tally) meanBias() (mean, se float64) {
	n := t.kept()
	mean = t.bias / n
	return mean, math.Sqrt(max(0, t.bias2/n-mean*mean) / n)
}

// relativeWidth is the mean width of the intervals against that of the
// observer's.
func (t *tally) relativeWidth() (ratio, se float64) {
	ratio = t.width / t.observer
	return ratio, math.Sqrt(max(0, t.width2-2*ratio*t.both+ratio*ratio*t.observer2)) / t.observer
}

// What is asked of the interval in every group that is judged.
const (
	leastCovered, mostCovered = 0.92, 0.98
	mostBias                  = 0.01
	mostWidth                 = 1.3 // times the observer's
)

// TestSimulatedWalks walks round lawns of known area with receivers of known
// error. With -walks 10000 -update it writes the table.
func TestSimulatedWalks(t *testing.T) {
	order, groups := tallied(walkAll(*walks))
	for _, name := range order {
		g := groups[name]
		if !g.judged() {
			continue
		}
		if share, se := g.coverage(); share+3*se < leastCovered || share-3*se > mostCovered {
			t.Errorf("%s: the 95 %% interval holds %.1f %% of %g areas, want 92 to 98", name, 100*share, g.kept())
		}
		if bias, se := g.meanBias(); math.Abs(bias)-3*se > mostBias {
			t.Errorf("%s: bias %.2f %% +/- %.2f %%, want within 1", name, 100*bias, 100*se)
		}
		if w, se := g.relativeWidth(); w-3*se > mostWidth {
			t.Errorf("%s: intervals are %.2f +/- %.2f times as wide as the observer's, want 1.3 at most", name, w, se)
		}
	}
	if g := groups["all"]; math.Abs(g.seen/g.kept()-0.95) > 0.02+3*math.Sqrt(0.95*0.05/g.kept()) {
		t.Errorf("the observer's interval holds %.1f %% of the errors to first order, want 95", 100*g.seen/g.kept())
	}
	if *update {
		if *stream != tableStream {
			t.Fatalf("the table is of stream %d", tableStream)
		}
		if err := os.WriteFile(tableFile, []byte(table(order, groups)), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// walkAll walks in as many goroutines as there are processors; the outcomes
// are in order.
func walkAll(n int) []outcome {
	outcomes := make([]outcome, n)
	var wait sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for k := range workers {
		wait.Go(func() {
			for i := k; i < n; i += workers {
				outcomes[i] = simulated(i)
			}
		})
	}
	wait.Wait()
	return outcomes
}

func tallied(outcomes []outcome) ([]string, map[string]*tally) {
	groups := make(map[string]*tally)
	for _, o := range outcomes {
		for _, name := range o.groups() {
			if groups[name] == nil {
				groups[name] = &tally{name: name}
			}
			groups[name].add(o)
		}
	}
	return groupOrder(groups), groups
}
