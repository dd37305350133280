package lanes

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// Work is what is to be spread, and how.
type Work struct {
	Pattern  Pattern
	Mode     Mode
	Shield   Side        // the side of the spreader that has the deflector; Right if not set
	Filling  float64     // m2 that one filling of the hopper serves; 0 = the hopper holds all
	Load     *Load       // nil = nothing is known of it
	Units    zones.Units // in which amounts of the load are told; "" = us
	Practice Practice
}

// A Side is a side of a lane, as its walker sees it.
type Side string

// The sides.
const (
	Neither Side = ""
	Left    Side = "left"
	Right   Side = "right"
	Both    Side = "both"
)

// Pass is the part of the work that a lane belongs to.
type Pass string

// The passes.
const (
	Header Pass = "header"
	Fill   Pass = "fill"
)

// A Lane is a line as it is walked, spreading or on the way to where the next
// one starts.
type Lane struct {
	Pass      Pass
	N         int       // counts the lanes that spread; a way there has the number of the lane it leads to
	Zone      string    // in which the most of it lies; of a way, that of the lane it leads to
	Stretches []Stretch // the zones through which it runs; none for a way
	Line      geo.Line  // closed for a lap
	Spreading bool
	Spacing   float64      // m, to the lanes beside it
	Deflector Side         // the sides on which a hard edge lies within the throw
	Beside    []zones.Kind // what lies there, the longest first; "" = beyond all that is known
	Ground    float64      // m2 that its output serves: times the rate, what it puts out
	Left      float64      // m2 that what is left in the hopper after it serves; nothing after the last one
	Refill    bool         // a way by way of a refill
	PassNo    int          // the pass of the load that it belongs to, from 1
	Again     Again        // why it repeats the pass before and does not lie across it
}

// A Plan is lanes in walking order.
type Plan struct {
	Work   Work
	Zones  []string // ids of the zones that are treated
	Lanes  []Lane
	Walked []geo.Region // the ground that lanes serve, a region a plot
	Hand   []geo.Region // what is too narrow or too steep for them
	Turns  int          // times that spreading stops for another lane
	Cut    []int        // lanes to which there is no way but across a bed or through a building
	Fills  []Filling    // of the hopper, in the order of lanes; none if it holds all
}

// farthest is more than anybody walks for one property, in metres.
const farthest = 1e6

// Lay lays lanes over a yard: header laps inside each edge, then rows within
// them, at the heading that takes the least walking, in an order that keeps
// the ways between them short. Where the load is for several passes, every other
// one has its rows across those of the one before.
func Lay(y Yard, w Work) (Plan, error) {
	if !(w.Pattern.Swath() > 0) {
		return Plan{}, errors.New("a pattern without a swath lays no lanes")
	}
	plan := Plan{Work: w}
	passes := make([][]task, w.Load.passes())
	for i, p := range y.Plots {
		for _, z := range p.Zones {
			plan.Zones = append(plan.Zones, z.ID)
		}
		walked, hand, err := y.ground(p, w.Practice)
		if err != nil {
			return Plan{}, err
		}
		served, rest := []geo.Region(nil), []geo.Region{hand}
		for _, piece := range walked.Pieces() {
			along, across, err := w.tasks(piece, y, i)
			if err != nil {
				return Plan{}, err
			}
			if len(along) == 0 { // a patch too small for any lane
				rest = append(rest, piece)
				continue
			}
			served = append(served, piece)
			for n := range passes {
				more := along
				if n%2 == 1 {
					more = across
				}
				passes[n] = append(passes[n], grouped(more, len(passes[n]))...)
			}
		}
		if err := plan.share(served, rest); err != nil {
			return Plan{}, err
		}
	}
	if far := areaOf(plan.Walked) * float64(len(passes)) / w.Mode.Spacing(w.Pattern.Swath()); far > farthest {
		return Plan{}, fmt.Errorf("its %.0f km of lanes are too many to lay: the limit is %.0f km", far/1000, farthest/1000)
	}
	if times := areaOf(plan.Walked) * float64(len(passes)) / w.Filling; w.Filling > 0 && times > mostFillings {
		return Plan{}, fmt.Errorf("a filling that serves %.3g m2 is too little: it would be filled %.0f times, and the limit is %d", w.Filling, times, mostFillings)
	}
	y.order(&plan, passes)
	plan.tellDeflectors(y)
	return plan, nil
}

// grouped are tasks with the number of their group.
func grouped(tasks []task, group int) []task {
	tasks = slices.Clone(tasks)
	for i := range tasks {
		tasks[i].group = group
	}
	return tasks
}

// share adds a plot's ground to that which lanes serve and that which they
// leave.
func (p *Plan) share(served, rest []geo.Region) error {
	walked, err := geo.Union(served...)
	if err != nil {
		return err
	}
	hand, err := geo.Union(rest...)
	if err != nil {
		return err
	}
	p.Walked, p.Hand = append(p.Walked, walked), append(p.Hand, hand)
	return nil
}

// tasks returns the stints that serve one piece of ground, and, where the load is
// for several passes, those that serve it across these.
func (w Work) tasks(piece geo.Region, y Yard, plot int) (along, across []task, err error) {
	swath := w.Pattern.Swath()
	b, err := beltOf(piece, swath, w.Practice.HandWidth)
	if err != nil {
		return nil, nil, err
	}
	room, err := y.room(b.core, w.Pattern)
	if err != nil {
		return nil, nil, err
	}
	f := filler{spacing: w.Mode.spacing(swath), turnWay: w.Practice.turnWay(), along: y.Plots[plot].Contour, crossed: w.Mode == Cross, room: room}
	inner, err := f.fill(b.rest, 0)
	if err != nil {
		return nil, nil, err
	}
	header := b.stints(swath, w.Mode.Rounds())
	along = y.tasksOf(header, inner.stints, plot, piece)
	if w.Load.passes() == 1 || f.crossed { // whose sets lie across each other
		return along, along, nil
	}
	f.across = leastAcross * swath
	if inner, err = f.fill(b.rest, 0); err != nil {
		return nil, nil, err
	}
	return along, y.tasksOf(saidAgain(header, inner.stints), inner.stints, plot, piece), nil
}

// tasksOf makes tasks of the header and the fill of a piece of ground, led round
// posts.
func (y Yard) tasksOf(header, fill []stint, plot int, piece geo.Region) []task {
	var tasks []task
	for i, s := range slices.Concat(header, fill) {
		t := task{stint: s, plot: plot, pass: Fill}
		if i < len(header) {
			t.pass = Header
		}
		if t.clear(y.Posts, piece); len(t.rows) > 0 {
			tasks = append(tasks, t)
		}
	}
	return tasks
}

// repeated returns lines that are walked several times.
func repeated(rows []geo.Line, rounds int) []geo.Line {
	var again []geo.Line
	for range rounds {
		again = append(again, rows...)
	}
	return again
}

// clear leads the rows of a task round posts.
func (t *task) clear(posts []Post, ground geo.Region) {
	var led []geo.Line
	for _, r := range t.rows {
		if t.lap {
			r = startedClear(r, posts)
		}
		if r = bent(r, posts, ground.Contains); len(r) > 1 {
			led = append(led, r)
		}
	}
	t.rows = led
}

// startedClear returns a closed line started at a position outside all posts'
// rings, if it has one.
func startedClear(l geo.Line, posts []Post) geo.Line {
	for i := range l {
		clear := true
		for _, p := range posts {
			clear = clear && !p.holds(l[i])
		}
		if clear {
			return startedAt(l, i)
		}
	}
	return l
}

// startedAt returns a closed line started at another of its positions.
func startedAt(l geo.Line, i int) geo.Line {
	if i == 0 || i == len(l)-1 {
		return l
	}
	started := append(append(geo.Line(nil), l[i:]...), l[1:i]...)
	return append(started, l[i])
}

// longestSide returns the index of the position at which a line's longest side
// starts.
func longestSide(l geo.Line) int {
	best, at := -1.0, 0
	for i := 1; i < len(l); i++ {
		if d := math.Round(l[i-1].Distance(l[i]) * 1e4); d > best {
			best, at = d, i-1
		}
	}
	return at
}
