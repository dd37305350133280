package ingest

import (
	"strconv"

	"github.com/paulmach/orb"
)

// coordinates reads the coordinates of one geometry: well-formed JSON of any
// shape. What it repairs it also repairs in the text, so that heights and the
// spelling of numbers live on.
type coordinates struct {
	findings *findings
	left     int // positions the site may still have

	text  []byte
	at    int
	shape string // what the text should be
	index []int  // of the element at hand, outermost first

	row     trace // the ring or line at hand
	wrapped bool  // a position of the row lost a turn
	broken  bool  // a position of the row cannot be used

	repaired []byte // the text up to copied, repaired
	copied   int
}

func (c *coordinates) start(text []byte, shape string) {
	c.text, c.at, c.shape, c.index = text, 0, shape, c.index[:0]
	c.repaired, c.copied = nil, 0
}

func (c *coordinates) startRow() {
	c.row.clear()
	c.wrapped, c.broken = false, false
}

// list reads an array whose elements are read by one.
func list[T any](c *coordinates, one func() T) (all []T) {
	c.array(func() { all = append(all, one()) })
	return all
}

// array calls one at each element of an array; one must step over it.
func (c *coordinates) array(one func()) {
	if !c.nested() {
		return
	}
	depth := len(c.index)
	c.index = append(c.index, 0)
	for c.at = skipBlanks(c.text, c.at+1); c.text[c.at] != ']'; c.at = nextItem(c.text, c.at) {
		one()
		c.index[depth]++
	}
	c.index = c.index[:depth]
	c.at++
}

// nested reports whether an array stands here, and otherwise steps over what
// does.
func (c *coordinates) nested() bool {
	if c.text[c.at] == '[' {
		return true
	}
	c.misshapen()
	c.at = valueEnd(c.text, c.at)
	return false
}

// position reads one position into the row.
func (c *coordinates) position() {
	if !c.plainPosition() {
		c.oddPosition()
	}
}

// oddPosition reads a position however it is written.
func (c *coordinates) oddPosition() {
	from := c.at
	if !c.nested() {
		return
	}
	var p orb.Point
	numbers, lonEnd, sound := 0, 0, true
	for c.at = skipBlanks(c.text, c.at+1); c.text[c.at] != ']'; c.at = nextItem(c.text, c.at) {
		v, ok := c.number()
		sound = sound && ok
		if numbers < len(p) {
			p[numbers] = v
		}
		if numbers++; numbers == 1 {
			lonEnd = c.at
		}
	}
	c.at++
	if sound && numbers < len(p) {
		c.misread("position_short", shortPosition(numbers), "positions")
		sound = false
	}
	if c.left--; sound && c.left >= 0 {
		c.place(p, from, lonEnd)
	} else {
		c.broken = true
	}
}

func shortPosition(numbers int) string {
	if numbers == 0 {
		return "position has no numbers, needs longitude and latitude"
	}
	return "position has one number, needs longitude and latitude"
}

// place adds a position to the row, if it is on the globe. Its text begins at
// from, and its longitude ends at lonEnd.
func (c *coordinates) place(p orb.Point, from, lonEnd int) {
	text := c.text[from:c.at]
	if rule := checkDegrees(p); rule != nil {
		if !c.findings.again(rule.code, 1) {
			c.findings.add(rule.finding(p))
		}
		if rule.severity == Refusal {
			c.broken = true
			return
		}
		c.wrapped = true
		p[0] = rounded(wrap(p[0]))
		text = appendDegrees([]byte{'['}, p[0], decimals)
		text = append(text, c.text[lonEnd:c.at]...)
	}
	c.row.add(p, text)
}

// number reads one number of a position.
func (c *coordinates) number() (v float64, ok bool) {
	from := c.at
	c.at = valueEnd(c.text, c.at)
	text := c.text[from:c.at]
	switch first := text[0]; {
	case first == '[':
		c.misshapen()
		return 0, false
	case first != '-' && (first < '0' || first > '9'):
		c.misread("position_text", "position holds "+describe(text)+" in place of a number", "places")
		return 0, false
	}
	if v, ok = parseNumber(text); !ok {
		c.misread("number_range", "number "+shortened(string(text))+" is too large", "places")
	}
	return v, ok
}

func (c *coordinates) misshapen() {
	c.misread("coordinates_shape", "coordinates are nested wrongly ("+c.shape+")", "places")
}

// misread refuses the element at hand.
func (c *coordinates) misread(code, text, plural string) {
	c.broken = true
	if !c.findings.again(code, 1) {
		c.findings.add(finding{
			severity: Refusal, code: code, plural: plural,
			text: text + " at coordinates" + c.path(),
		})
	}
}

// path is the place of the element at hand within the coordinates.
func (c *coordinates) path() string {
	var path []byte
	for _, i := range c.index {
		path = append(path, '[')
		path = strconv.AppendInt(path, int64(i), 10)
		path = append(path, ']')
	}
	return string(path)
}

// found notes something about the row, placed at its first position.
func (c *coordinates) found(s Severity, code, text, plural string) {
	near := c.row.points[0]
	c.findings.add(finding{severity: s, code: code, text: text, near: &near, plural: plural})
}

// replaceRow puts the row in place of what stands between from and here.
func (c *coordinates) replaceRow(from int) {
	c.replace(from, appendArray(nil, c.row.texts, appendText))
}

// replace puts text in place of what stands between from and here.
func (c *coordinates) replace(from int, text []byte) {
	c.repaired = append(c.repaired, c.text[c.copied:from]...)
	c.repaired = append(c.repaired, text...)
	c.copied = c.at
}

// repairedText is the text with its replacements, nil without any.
func (c *coordinates) repairedText() []byte {
	if c.copied == 0 {
		return nil
	}
	return append(c.repaired, c.text[c.copied:]...)
}
