package render

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/turfplat/zones/lanes"
)

// numbers sets the numbers of lanes on them, near where they start, and
// returns them by the index of the lane. Every lane of a block is numbered if
// there is room for it beside the lanes next to it; else each fifth, tenth and
// so on, the first and the last, these outside their ground if need be.
func (l laneLayer) numbers(others laneSegments, v view) map[int][]Element {
	set, all := make(map[int][]Element), others.all
	for _, block := range blocksOf(all) {
		taken := slices.Clone(l.labels.taken)
		for _, every := range numberSteps {
			placed, left := l.numberBlock(block, every, others, v)
			if left == 0 || every == numberSteps[len(numberSteps)-1] {
				maps.Copy(set, placed)
				break
			}
			l.labels.taken = slices.Clone(taken)
		}
	}
	return set
}

// numberBlock numbers each so many of a block of lanes, its first and its last,
// and tells for how many there was no room. A few lanes may have their numbers
// on others if these are broken there; many so, and nobody sees lanes.
func (l laneLayer) numberBlock(block []int, every int, others laneSegments, v view) (placed map[int][]Element, left int) {
	const few = 5 // one in so many
	placed = make(map[int][]Element)
	var crowded []int
	for k, i := range block {
		outer := k == 0 || k == len(block)-1
		if !outer && others.all[i].N%every != 0 {
			continue
		}
		if drawn := l.number(i, others, outer, v); drawn != nil {
			placed[i] = drawn
		} else {
			crowded = append(crowded, i)
		}
	}
	if every == 1 && few*len(crowded) > len(block) {
		return placed, len(crowded)
	}
	for _, i := range crowded {
		if drawn := l.numberOver(i, others, v); drawn != nil {
			placed[i] = drawn
		} else {
			left++
		}
	}
	return placed, left
}

var numberSteps = []int{1, 5, 10, 20, 50, 100}

// blocksOf returns the indices of lanes that spread, those of fill lanes that
// lie side by side together. A lap that is walked again has the number of the
// first time beside its own, and is left out.
func blocksOf(all []laneLine) [][]int {
	var blocks [][]int
	for i, lane := range all {
		if !lane.Spreading || len(lane.lines) == 0 {
			continue
		}
		if walkedBefore(all, i) {
			continue
		}
		if n := len(blocks); n > 0 && lane.Pass == lanes.Fill {
			block := blocks[n-1]
			if before := all[block[len(block)-1]]; before.Pass == lanes.Fill && sideBySide(before, lane) {
				blocks[n-1] = append(block, i)
				continue
			}
		}
		blocks = append(blocks, []int{i})
	}
	return blocks
}

// again returns the index of the lane at which the line of another is walked
// again, right after it.
func again(all []laneLine, i int) (int, bool) {
	for k := i + 1; k < len(all); k++ {
		if all[k].Spreading {
			return k, slices.Equal(all[k].Line, all[i].Line)
		}
	}
	return 0, false
}

// walkedBefore reports whether a lane is the one before it, walked again.
func walkedBefore(all []laneLine, i int) bool {
	for k := i - 1; k >= 0; k-- {
		if all[k].Spreading {
			return slices.Equal(all[k].Line, all[i].Line)
		}
	}
	return false
}

// sideBySide reports whether two straight lanes run alike, to and fro.
func sideBySide(a, b laneLine) bool {
	const most = 0.1 // radians
	p, q := a.lines[0].Points, b.lines[0].Points
	u, w := unit(p[0], p[len(p)-1]), unit(q[0], q[len(q)-1])
	return math.Abs(u.X*w.Y-u.Y*w.X) < most
}

// numeral is the number of a lane, or of the times it is walked; figures have
// no tails, so its plate is low.
func numeral(times ...int) form {
	var numbers []string
	for _, n := range times {
		numbers = append(numbers, strconv.Itoa(n))
	}
	t := Text{String: strings.Join(numbers, ", "), Face: Bold, Size: mapSize, Ink: black}
	f := stacked(t)
	f.height = t.Face.capHeight(t.Size)
	return f
}

// timesOf are the numbers of a lane and of its line when it is walked again.
func timesOf(all []laneLine, i int) []int {
	times := []int{all[i].N}
	for k, same := again(all, i); same; k, same = again(all, k) {
		times = append(times, all[k].N)
	}
	return times
}

// number places the number of a lane near its start, level or along it, on no
// other lane, and on no way if it can be. That of a lane which it would hide,
// or for which there is no room though it must be told, stands beside it. It
// returns nil if there is no room.
func (l laneLayer) number(i int, others laneSegments, must bool, v view) []Element {
	const shown = 3.0 // mm of a lane that its number leaves
	if others.all[i].lines[0].length() < numeral(timesOf(others.all, i)...).width+shown {
		if drawn := l.numberBeside(i, others, v); drawn != nil {
			return drawn
		}
	}
	for _, ways := range []bool{true, false} {
		if drawn := l.numberOn(i, others.all, v, func(p plate) bool { return !others.cross(p, i, ways) }); drawn != nil {
			return drawn
		}
	}
	if must {
		return l.numberBeside(i, others, v)
	}
	return nil
}

// numberOver places the number of a lane on it, though others be broken there.
func (l laneLayer) numberOver(i int, others laneSegments, v view) []Element {
	return l.numberOn(i, others.all, v, func(plate) bool { return true })
}

// numberOn places the number of a lane on it, as near its start as it fits.
func (l laneLayer) numberOn(i int, all []laneLine, v view, fits func(plate) bool) []Element {
	const first, step = 2.2, 1.5 // mm
	f, line := numeral(timesOf(all, i)...), all[i].lines[0]
	frame, whole := v.window.inset(windowInset), line.length()
	for way := min(first+f.width/2, whole/2); way <= max(whole/2, whole-f.width/2); way += step {
		at := line.at(way)
		for _, turn := range []float64{0, line.uprightAt(way, f.width/2)} {
			if box := f.plate(at, turn); box.within(frame) && l.labels.free(box) && fits(box) {
				return l.put(f, at, turn, white)
			}
		}
	}
	return nil
}

// numberBeside places the number of a lane that has no room for it close by, on
// no lane if it can be, with a line that leads to where the lane starts.
func (l laneLayer) numberBeside(i int, others laneSegments, v view) []Element {
	const (
		reach  = 20.0 // mm; a longer line leads nobody
		onLane = 10.0 // mm that a number rather goes further
	)
	f, target := numeral(timesOf(others.all, i)...), others.all[i].lines[0].Points[0]
	at, found := l.placeNear(f, target, v, reach, func(box plate) float64 {
		if others.cross(box, i, false) {
			return onLane
		}
		return 0
	})
	if !found {
		return nil
	}
	from := f.plate(at, 0).nearest(target)
	l.labels.take(strokePlate(from, target, leaderRoom))
	leader := Group{ID: "leader", Elements: []Element{
		Path{Lines: []Line{{Points: []Point{from, target}}}, Stroke: grey, Weight: hairLine},
		Path{Lines: disc(target, targetDot).lines(), Fill: grey},
	}}
	return append([]Element{leader}, l.put(f, at, 0, white)...)
}

// uprightAt is how a line runs about a way along it, in degrees, so that text
// along it is upright.
func (line Line) uprightAt(way, reach float64) float64 {
	a, b := line.at(way-reach), line.at(way+reach)
	return upright(math.Atan2(b.Y-a.Y, b.X-a.X) * 180 / math.Pi)
}

// laneSegments are the straight parts of all lanes, to be asked which of them
// a label would lie on.
type laneSegments struct {
	all   []laneLine
	parts []laneSegment
}

type laneSegment struct {
	lane int
	box  rect
	ends plate
}

func newLaneSegments(all []laneLine) laneSegments {
	s := laneSegments{all: all}
	for i, lane := range all {
		for _, line := range lane.lines {
			for k := 1; k < len(line.Points); k++ {
				a, b := line.Points[k-1], line.Points[k]
				s.parts = append(s.parts, laneSegment{i, boundsOf(a, b), plate{a, b, b, a}})
			}
		}
	}
	return s
}

// cross reports whether a plate lies on a lane other than one of an index, or
// on a way if these count. A lap walked twice is one line.
func (s laneSegments) cross(p plate, own int, ways bool) bool {
	around := boundsOf(p[:]...)
	for _, part := range s.parts {
		if part.lane == own || !part.box.meets(around) {
			continue
		}
		other := s.all[part.lane]
		if !other.Spreading && !ways || other.Spreading && slices.Equal(other.Line, s.all[own].Line) {
			continue
		}
		if p.meets(part.ends) {
			return true
		}
	}
	return false
}
