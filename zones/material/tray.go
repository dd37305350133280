package material

import (
	"math"

	"example.org/turfplat/geo"
)

// A TrayRow is the catch of a row of like trays laid across the path of a
// spreader, left to right, summed over passes walked in the same direction.
type TrayRow struct {
	Catch  []float64 // in any one unit, a tray each
	Centre int       // index of the tray on the path
	Pitch  geo.Length
}

// A Swath is how far to each side of the path the catch reaches before it
// falls to a share of the centre's.
type Swath struct{ Left, Right geo.Length }

// Width returns the effective swath, which is how far apart lanes lie.
func (s Swath) Width() geo.Length { return s.Left + s.Right }

// Swath returns how far the catch reaches until it falls to a share of that of
// the centre, TrayShare by practice; between two trays it falls in a straight
// line.
func (t TrayRow) Swath(share Share) (Swath, error) {
	if err := t.check(); err != nil {
		return Swath{}, err
	}
	if !(share > 0 && share < 1) {
		return Swath{}, inputErrorf("", "the swath ends at a part of the centre's catch")
	}
	end := float64(share) * t.Catch[t.Centre]
	left, there := t.reach(-1, end)
	right, thereToo := t.reach(1, end)
	if !there || !thereToo {
		return Swath{}, inputErrorf("lay trays farther out", "the catch does not fall to %s %% of the centre's before the row ends", number(100*float64(share)))
	}
	return Swath{t.Pitch * geo.Length(left), t.Pitch * geo.Length(right)}, nil
}

// reach walks from the centre to one side and returns after how many pitches
// the catch is down to a value.
func (t TrayRow) reach(step int, end float64) (pitches float64, there bool) {
	for i := t.Centre + step; i >= 0 && i < len(t.Catch); i += step {
		if here, before := t.Catch[i], t.Catch[i-step]; here <= end {
			return math.Abs(float64(i-t.Centre)) - (end-here)/(before-here), true
		}
	}
	return 0, false
}

func (t TrayRow) check() error {
	if t.Centre < 0 || t.Centre >= len(t.Catch) || !(t.Pitch > 0) {
		return inputErrorf("state which tray stood on the path and how far apart they were", "the row has no tray on the path, or no pitch")
	}
	for i, c := range t.Catch {
		if !(c >= 0) || math.IsInf(c, 1) {
			return inputErrorf("", "tray %d caught %s", i+1, number(c))
		}
	}
	if t.Catch[t.Centre] == 0 {
		return inputErrorf("run the spreader along the row's centre", "the tray on the path caught nothing")
	}
	return nil
}

// probes are where uniformity is looked at, from one lane to the next but one:
// between two lanes right sides meet, between the next two left sides.
const probes = 400

// Variation returns the coefficient of variation of what lies on the ground
// when lanes are so far apart, walked there and back by turns: the standard
// deviation as a part of the mean. 0 is even; beyond the row nothing falls.
func (t TrayRow) Variation(spacing geo.Length) (float64, error) {
	if err := t.check(); err != nil {
		return 0, err
	}
	lane := float64(spacing / t.Pitch) // pitches
	if !(lane >= 0.01) || math.IsInf(lane, 1) {
		return 0, inputErrorf("state a swath", "there is no such distance between lanes")
	}
	var fallen [probes]float64
	mean := 0.0
	for i := range fallen {
		fallen[i] = t.deposit((float64(i)+0.5)/probes*2*lane, lane)
		mean += fallen[i] / probes
	}
	if mean == 0 {
		return 0, inputErrorf("lay lanes closer", "the catch does not reach from lane to lane")
	}
	squares := 0.0
	for _, f := range fallen {
		squares += (f - mean) * (f - mean) / probes
	}
	return math.Sqrt(squares) / mean, nil
}

// deposit is what falls at a place right of a lane from it and all others, in
// turn walked there and back, which mirrors the pattern.
func (t TrayRow) deposit(x, lane float64) float64 {
	reach := float64(max(t.Centre, len(t.Catch)-1-t.Centre)) + 1
	sum := 0.0
	for k := math.Ceil((x - reach) / lane); k*lane <= x+reach; k++ {
		offset := x - k*lane
		if math.Mod(k, 2) != 0 {
			offset = -offset
		}
		sum += t.at(float64(t.Centre) + offset)
	}
	return sum
}

// at is the catch at a place along the row, in pitches from its first tray.
func (t TrayRow) at(place float64) float64 {
	below := math.Floor(place)
	catch := func(i int) float64 {
		if i < 0 || i >= len(t.Catch) {
			return 0
		}
		return t.Catch[i]
	}
	part := place - below
	return catch(int(below))*(1-part) + catch(int(below)+1)*part
}
