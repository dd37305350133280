package ingest

import "fmt"

// grammar follows the rules of JSON (RFC 8259) byte by byte, so that a stream
// is judged while it comes in and what is stored is known to be well formed.
type grammar struct {
	depth   int // brackets allowed to be open
	state   state
	open    []byte // brackets open, outermost first
	name    bool   // the string being read is a member's name
	literal string // what must still come of true, false or null
	hex     int    // digits that must still come of \u0000
}

type state uint8

const (
	wantValue      state = iota // also the start
	wantValueOrEnd              // after [
	wantNameOrEnd               // after {
	wantName                    // after , in an object
	wantColon
	afterValue
	inString
	inEscape
	inHex
	inLiteral
	afterMinus
	inZero
	inWhole
	afterPoint
	inFraction
	afterE
	afterSign
	inPower
	stateCount
)

// stays tells which bytes leave a state as it is: nearly all there are.
var stays = stayTable()

func stayTable() (t [stateCount][256]bool) {
	for _, s := range []state{wantValue, wantValueOrEnd, wantNameOrEnd, wantName, wantColon, afterValue} {
		for _, c := range " \t\r\n" {
			t[s][c] = true
		}
	}
	for _, s := range []state{inWhole, inFraction, inPower} {
		for c := '0'; c <= '9'; c++ {
			t[s][c] = true
		}
	}
	for c := ' '; c < 256; c++ {
		t[inString][c] = c != '"' && c != '\\'
	}
	return t
}

// feed takes the next bytes. It returns how many of them were right and, if
// that is not all, what is wrong with the next one.
func (g *grammar) feed(b []byte) (int, *fault) {
	stay := &stays[g.state]
	for i := 0; i < len(b); i++ {
		c := b[i]
		if stay[c] {
			continue
		}
		if c == '[' && (g.state == wantValue || g.state == wantValueOrEnd) && len(g.open) < g.depth {
			if end := plainPair(b, i); end > 0 {
				g.state, i = afterValue, end-1
				stay = &stays[g.state]
				continue
			}
		}
		if next := numberSteps[g.state][c]; next != stateCount {
			g.state = next
		} else if f := g.step(c); f != nil {
			return i, f
		}
		stay = &stays[g.state]
	}
	return len(b), nil
}

// numberSteps tells which state follows on a byte that begins or goes on with a
// number, and stateCount for all that step looks at.
var numberSteps = numberTable()

func numberTable() (t [stateCount][256]state) {
	for s := range t {
		for c := range t[s] {
			t[s][c] = stateCount
		}
	}
	for _, s := range []state{wantValue, wantValueOrEnd, afterMinus} {
		t[s]['0'] = inZero
		for c := '1'; c <= '9'; c++ {
			t[s][c] = inWhole
		}
	}
	t[wantValue]['-'], t[wantValueOrEnd]['-'] = afterMinus, afterMinus
	t[inZero]['.'], t[inWhole]['.'] = afterPoint, afterPoint
	for c := '0'; c <= '9'; c++ {
		t[afterPoint][c] = inFraction
	}
	return t
}

// begun reports whether anything but blanks was seen.
func (g *grammar) begun() bool { return g.state != wantValue || len(g.open) > 0 }

// complete reports whether what was seen is one whole value.
func (g *grammar) complete() bool {
	switch g.state {
	case afterValue, inZero, inWhole, inFraction, inPower:
		return len(g.open) == 0
	}
	return false
}

func (g *grammar) step(c byte) *fault {
	switch g.state {
	case wantValue:
		return g.begin(c)
	case wantValueOrEnd:
		if c == ']' {
			return g.close()
		}
		return g.begin(c)
	case wantNameOrEnd, wantName:
		return g.beginName(c)
	case wantColon:
		return g.expect(c, ':', wantValue)
	case afterValue:
		return g.follow(c)
	case inString:
		return g.endString(c)
	case inEscape, inHex:
		return g.escape(c)
	case inLiteral:
		return g.spell(c)
	}
	return g.number(c)
}

// begin takes the first byte of a value.
func (g *grammar) begin(c byte) *fault {
	switch c {
	case '{':
		return g.push(c, wantNameOrEnd)
	case '[':
		return g.push(c, wantValueOrEnd)
	case '"':
		g.state, g.name = inString, false
	case '-':
		g.state = afterMinus
	case '0':
		g.state = inZero
	case 't':
		g.state, g.literal = inLiteral, "rue"
	case 'f':
		g.state, g.literal = inLiteral, "alse"
	case 'n':
		g.state, g.literal = inLiteral, "ull"
	default:
		if c < '1' || c > '9' {
			return unexpected(c, "a value")
		}
		g.state = inWhole
	}
	return nil
}

func (g *grammar) push(c byte, next state) *fault {
	if len(g.open) == g.depth {
		return &fault{
			code:  "limit_depth",
			limit: true,
			text:  fmt.Sprintf("brackets are nested more than %d deep, the limit", g.depth),
		}
	}
	g.open = append(g.open, c)
	g.state = next
	return nil
}

func (g *grammar) beginName(c byte) *fault {
	switch {
	case c == '"':
		g.state, g.name = inString, true
		return nil
	case c == '}' && g.state == wantNameOrEnd:
		return g.close()
	}
	return unexpected(c, "a name in double quotes")
}

// follow takes the byte after a whole value.
func (g *grammar) follow(c byte) *fault {
	if len(g.open) == 0 {
		return unexpected(c, "nothing more")
	}
	object := g.open[len(g.open)-1] == '{'
	switch {
	case c == ',' && object:
		g.state = wantName
	case c == ',':
		g.state = wantValue
	case c == '}' && object, c == ']' && !object:
		return g.close()
	case object:
		return unexpected(c, "a comma or }")
	default:
		return unexpected(c, "a comma or ]")
	}
	return nil
}

// close takes the bracket that ends the innermost open one.
func (g *grammar) close() *fault {
	g.open = g.open[:len(g.open)-1]
	g.state = afterValue
	return nil
}

func (g *grammar) endString(c byte) *fault {
	switch {
	case c == '\\':
		g.state = inEscape
	case c < ' ':
		return unexpected(c, "the end of the string")
	case g.name:
		g.state = wantColon
	default:
		g.state = afterValue
	}
	return nil
}

func (g *grammar) escape(c byte) *fault {
	switch {
	case g.state == inHex:
		if !isHex(c) {
			return unexpected(c, "four hexadecimal digits")
		}
		if g.hex--; g.hex == 0 {
			g.state = inString
		}
	case c == 'u':
		g.state, g.hex = inHex, 4
	case isEscape(c):
		g.state = inString
	default:
		return unexpected(c, `one of "\/bfnrtu after a backslash`)
	}
	return nil
}

func (g *grammar) spell(c byte) *fault {
	if c != g.literal[0] {
		return unexpected(c, "true, false or null")
	}
	if g.literal = g.literal[1:]; g.literal == "" {
		g.state = afterValue
	}
	return nil
}

// number takes a byte that does not simply continue a run of digits.
func (g *grammar) number(c byte) *fault {
	digit := c >= '0' && c <= '9'
	switch {
	case g.state == afterMinus && c == '0':
		g.state = inZero
	case g.state == afterMinus && digit:
		g.state = inWhole
	case g.state == afterPoint && digit:
		g.state = inFraction
	case g.state == afterE && (c == '+' || c == '-'):
		g.state = afterSign
	case (g.state == afterE || g.state == afterSign) && digit:
		g.state = inPower
	case g.state == afterMinus, g.state == afterPoint, g.state == afterE, g.state == afterSign:
		return unexpected(c, "a digit")
	default:
		return g.afterDigits(c)
	}
	return nil
}

// afterDigits takes the byte after a number that could end here.
func (g *grammar) afterDigits(c byte) *fault {
	switch {
	case c == '.' && (g.state == inZero || g.state == inWhole):
		g.state = afterPoint
	case (c == 'e' || c == 'E') && g.state != inPower:
		g.state = afterE
	default:
		g.state = afterValue
		if !stays[afterValue][c] {
			return g.follow(c)
		}
	}
	return nil
}

func (g *grammar) expect(c, want byte, next state) *fault {
	if c != want {
		return unexpected(c, "a "+string(want))
	}
	g.state = next
	return nil
}

func isHex(c byte) bool {
	return '0' <= c && c <= '9' || 'a' <= c && c <= 'f' || 'A' <= c && c <= 'F'
}

func isEscape(c byte) bool {
	switch c {
	case '"', '\\', '/', 'b', 'f', 'n', 'r', 't':
		return true
	}
	return false
}

// wellFormed returns text if it is one whole JSON value, without the blanks
// around it, and nil otherwise.
func wellFormed(text []byte) []byte {
	g := grammar{depth: DefaultLimits.Depth}
	if _, f := g.feed(text); f != nil || !g.complete() {
		return nil
	}
	return trimBlanks(text)
}
