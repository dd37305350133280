package ingest

import (
	"bytes"
	"fmt"
	"slices"
	"unicode/utf8"
)

// A cutter follows a collection while it streams in, and cuts its features out.
type cutter struct {
	grammar grammar
	most    int                          // bytes of a feature, and of all around them
	head    func(object []byte) bool     // asked when features begin, whether to cut them out
	item    func(text []byte, begin int) // takes each

	text   []byte // of the collection, but for what was cut out
	piece  []byte // of the feature at hand
	within bool   // the brackets of features
	cut    bool   // features were met

	line      int // on which the value begins
	offset    int // in the input, of the chunk at hand
	column    int // characters before it on its line
	lineEnded bool
	fault     *fault
	at        int  // line of the fault
	exact     bool // its column is known too
}

// feed takes the next bytes, which stand on a line. After a fault it is done.
func (c *cutter) feed(chunk []byte, line int) {
	from := 0
	for i, b := range chunk {
		if stays[c.grammar.state][b] {
			continue
		}
		if !c.grammar.begun() {
			c.line = line
		}
		depth := len(c.grammar.open)
		if f := c.grammar.step(b); f != nil {
			c.fail(f, chunk, i, line)
			return
		}
		from = c.turn(chunk, from, i, depth)
	}
	c.hold(chunk[from:])
	c.pass(chunk, line)
}

// turn acts on byte i of a chunk, before which so many brackets were open. What
// stands before from is held already; it returns how far that is now.
func (c *cutter) turn(chunk []byte, from, i, depth int) int {
	switch b := chunk[i]; {
	case c.within && len(c.grammar.open) == 1: // features close
		c.hold(chunk[from:i])
		c.handOut(c.offset + i)
		c.within = false
		return i
	case c.within && depth == 2 && b == ',':
		c.hold(chunk[from:i])
		c.handOut(c.offset + i)
		return i + 1
	case depth == 1 && b == '[':
		c.hold(chunk[from : i+1])
		c.within = c.namesFeatures() && c.head(append(slices.Clone(c.text), "]}"...))
		c.cut = c.cut || c.within
		return i + 1
	}
	return from
}

// hold keeps a stretch until it is known what becomes of it.
func (c *cutter) hold(stretch []byte) {
	if c.within {
		c.piece = append(c.piece, stretch...)
	} else {
		c.text = append(c.text, stretch...)
	}
}

// pass keeps account of where the next chunk begins.
func (c *cutter) pass(chunk []byte, line int) {
	c.offset += len(chunk)
	if c.lineEnded = bytes.HasSuffix(chunk, []byte{'\n'}); c.lineEnded {
		c.column = 0
	} else {
		c.column += characters(chunk)
	}
	if len(c.text) > c.most || len(c.piece) > c.most {
		c.fault, c.at = tooLong(c.most), line
	}
}

// handOut gives away the feature at hand, which ends at an offset of the input.
func (c *cutter) handOut(end int) {
	text := bytes.TrimLeft(c.piece, " \t\r\n")
	begin := end - len(text)
	if text = trimBlanks(text); len(text) > 0 { // else the list is empty
		c.item(slices.Clone(text), begin)
	}
	c.piece = c.piece[:0]
}

// namesFeatures reports whether the array that just began is the member
// features of an object. A name written with escapes is not known.
func (c *cutter) namesFeatures() bool {
	before := bytes.TrimRight(c.text, "[ \t\r\n")
	before, named := bytes.CutSuffix(before, []byte{':'})
	before, ours := bytes.CutSuffix(bytes.TrimRight(before, " \t\r\n"), []byte(`"features"`))
	return named && ours && !bytes.HasSuffix(before, []byte{'\\'})
}

// fail notes what is wrong at byte i of the chunk at hand.
func (c *cutter) fail(f *fault, chunk []byte, i, line int) {
	c.fault, c.at, c.exact = f, line, true
	c.column += characters(chunk[:i]) + 1
	c.lineEnded = bytes.HasSuffix(chunk, []byte{'\n'})
}

// characters counts those that begin in a stretch of UTF-8.
func characters(text []byte) int {
	n := 0
	for _, b := range text {
		if utf8.RuneStart(b) {
			n++
		}
	}
	return n
}

// record is the collection without the features that were cut out. Its fault
// says where it is, seen from a line.
func (c *cutter) record(line int) record {
	rec := record{text: c.text, line: c.line, grammar: c.grammar, fault: c.fault, at: -1}
	switch {
	case c.exact:
		rec.fault = c.placed(line)
	case c.fault == nil && !c.grammar.begun():
		rec.fault = &fault{code: "input_empty", text: "is empty"}
	case c.fault == nil && c.cut && !utf8.Valid(c.text):
		rec.fault = &fault{code: "utf8_invalid", text: "is not UTF-8 before or after its features", hint: "save it with the UTF-8 encoding"}
	}
	return rec
}

func (c *cutter) placed(line int) *fault {
	f := *c.fault
	if line == c.at {
		f.text += fmt.Sprintf(" at column %d", c.column)
	} else {
		f.text += fmt.Sprintf(" at line %d, column %d", c.at, c.column)
	}
	return &f
}
