package ingest

import (
	"bufio"
	"io"
	"iter"
	"math"
)

// EachFeature reads the same texts as [GeoJSON], but yields every feature as a
// collection of its own, with its problems, as soon as it is read: a file of
// any length takes the memory of one feature or of one line, each of which may
// have [Limits.Bytes]. Features are numbered through the whole input. The
// collections have no digest.
//
// What is wrong with the text around the features comes as a collection
// without any. It ends the reading if it is refused, but in a newline-delimited
// input the lines after a bad one are read. What a document says after its
// features, such as a coordinate system or that it is no collection, is judged
// after them.
func EachFeature(r io.Reader, source string, limits Limits) iter.Seq[*Collection] {
	return func(yield func(*Collection) bool) {
		e := &featureReader{input: newInput(r, limits.filled()), source: source, yield: yield}
		e.read()
	}
}

// featureReader hands out the features of one input.
type featureReader struct {
	*input
	source  string
	yield   func(*Collection) bool
	stopped bool // no more are wanted, or can be had
	count   int  // features met
}

// read cuts the first value up while it streams in. If it stands on one line,
// more may follow, a value a line.
func (e *featureReader) read() {
	if f := sniff(e.peek(512)); f != nil {
		e.record(record{fault: f, at: -1}, 0)
		return
	}
	if e.separator == recordSeparator {
		e.records()
		return
	}
	c := &cutter{grammar: grammar{depth: e.limits.Depth}, most: e.limits.Bytes, offset: e.offset, head: e.judgeHead, item: e.item}
	e.stream(c)
	second, more := e.second(c)
	if !more {
		e.record(c.record(0), 0)
		return
	}
	e.record(c.record(c.line), c.line)
	e.record(second, second.line)
	e.records()
}

// stream feeds c to the end of the input, or to that of the line on which the
// whole of its value stands.
func (e *featureReader) stream(c *cutter) {
	for !e.ended && !e.stopped && c.fault == nil {
		chunk, err := e.r.ReadSlice('\n')
		line := e.line
		c.feed(chunk, line)
		e.take(chunk)
		switch {
		case err == bufio.ErrBufferFull:
		case err == io.EOF:
			e.ended = true
		case err != nil:
			e.ended = true
			c.fault = unreadOn(err)
		case c.grammar.complete() && c.line == line:
			return
		}
	}
}

// second reads the record after a value that stands on one line, or has its
// fault there. After a fault it is only taken if it is a whole object: one line
// of a broken document seldom is.
func (e *featureReader) second(c *cutter) (rec record, more bool) {
	if e.ended || e.stopped || c.fault != nil && c.line != c.at {
		return rec, false
	}
	if c.fault != nil && !c.lineEnded {
		e.passLine(c.fault)
	}
	rec, more = e.next()
	return rec, more && (c.fault == nil || rec.object())
}

// passLine passes over the rest of a line with a fault, unless it goes on and
// on.
func (e *featureReader) passLine(f *fault) {
	for passed := 0; !e.ended; {
		chunk, err := e.r.ReadSlice('\n')
		e.take(chunk)
		passed += len(chunk)
		if err == nil {
			return
		}
		e.ended = err != bufio.ErrBufferFull || e.hopeless(f, passed)
	}
}

func (e *featureReader) records() {
	for !e.stopped {
		rec, ok := e.next()
		if !ok {
			return
		}
		e.record(rec, rec.line)
	}
}

// record hands out what a record holds that stands on a line, or on 0 if it is
// the whole input.
func (e *featureReader) record(rec record, line int) {
	s := e.site(line)
	kind, value, ok := rec.open()
	switch {
	case e.stopped:
	case !ok:
		s.report(rec.problem(s.file()))
		e.give(s)
	case kind == "FeatureCollection":
		e.collection(s, value)
	default:
		e.count++
		s.top(kind, value, line)
		e.give(s)
	}
}

// collection hands out the features that a collection still has.
func (e *featureReader) collection(s *site, object []byte) {
	features := s.envelope(object)
	if len(s.Problems) > 0 {
		e.give(s)
	}
	if s.Refused() {
		return
	}
	for text := range elements(features) {
		e.feature(text, s.Line)
	}
}

// judgeHead looks at a collection when its features begin, and reports whether
// they are to be cut out. In a coordinate system that is not known there is
// nothing to be had.
func (e *featureReader) judgeHead(object []byte) bool {
	if kind, f := topKind(object); f == nil && kind != "FeatureCollection" {
		return false
	}
	s := e.site(0)
	s.envelope(object)
	if s.Refused() {
		e.give(s)
		e.stopped = true
	}
	return true
}

// item hands out a feature that was cut out of the first value, at an offset
// of the input.
func (e *featureReader) item(text []byte, offset int) {
	if _, f := notUTF8(text, offset); f != nil {
		s := e.site(0)
		place := s.file()
		place.Feature = e.count
		e.count++
		s.report(Problem{Severity: Refusal, Code: f.code, Place: place, Text: f.text, Hint: f.hint})
		e.give(s)
		return
	}
	e.feature(text, 0)
}

func (e *featureReader) feature(text []byte, line int) {
	s := e.site(line)
	e.count++
	s.feature(text, line)
	e.give(s)
}

// site is one for the next feature.
func (e *featureReader) site(line int) *site {
	s := newSite(e.source, line, e.limits)
	s.limits.Features = math.MaxInt // each is let go before the next
	s.count = e.count
	return s
}

func (e *featureReader) give(s *site) {
	if !e.stopped {
		e.stopped = !e.yield(s.done())
	}
}
