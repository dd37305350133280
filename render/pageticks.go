package render

import (
	"fmt"
	"strings"
)

// A pageTick is a lane to tick off, and before it what is put into the hopper for
// it.
type pageTick struct {
	N     int
	Text  string
	Fills []string
	Pass  int // that it belongs to, of several; 0 if there is only one
}

// ticks lists the lanes that spread, in walking order.
func (l laneLayer) ticks() []pageTick {
	left, unit := l.leftHead(), ""
	if i := strings.LastIndex(left, " "); i >= 0 {
		left, unit = strings.ToLower(left[:i]), left[i:]
	}
	fills := make(map[int][]string)
	for _, f := range l.plan.Fills {
		fills[f.Lane] = append(fills[f.Lane], l.putIn(f))
	}
	var all []pageTick
	for _, lane := range l.spreading() {
		text := fmt.Sprintf("%s, %s, %s; %s %s%s",
			l.zoneWords(lane), wayText(lane, l.plan.Work.Shield), l.figures.lengthText(l.lengthOf(lane)), left, l.leftNumber(lane), unit)
		tick := pageTick{N: lane.N, Text: text, Fills: fills[lane.N]}
		if l.plan.Work.Load.Several() {
			tick.Pass, tick.Text = lane.PassNo, fmt.Sprintf("pass %d, %s", lane.PassNo, text)
		}
		all = append(all, tick)
	}
	return all
}
