package ingest

import (
	"bufio"
	"bytes"
)

// firstLines is how many lines are looked at to tell a document that runs over
// many lines from a line that broke off.
const firstLines = 8

// A stretch is a line as it stands in the input.
type stretch struct {
	text         []byte
	line, offset int
}

// firstBroken reads on after a first line that is the beginning of a value. It
// begins a document, which comes back as a whole, unless one of the next lines
// is a collection by itself, which stands in no document: then the first line
// broke off, and those read so far come back.
func (g *geoJSON) firstBroken(first record) (document record, lines []record) {
	var read []stretch
	for len(read) < firstLines && !g.ended && first.fault == nil {
		s := g.stretch(&first)
		read = append(read, s)
		if g.isCollection(s.text) {
			lines = append(lines, first)
			for _, s := range read {
				if rec := g.recordOf(s); rec.fault != nil || rec.grammar.begun() {
					lines = append(lines, rec)
				}
			}
			return first, lines
		}
	}
	for _, s := range read {
		if first.fault == nil {
			first.add(s.text, g.limits.Bytes)
		}
	}
	g.rest(&first)
	return first, nil
}

// stretch takes the next line; what goes wrong on the way is a fault of first.
func (g *geoJSON) stretch(first *record) stretch {
	s := stretch{line: g.line, offset: g.offset}
	for {
		chunk, err := g.r.ReadSlice(g.separator)
		g.take(chunk)
		s.text = append(s.text, chunk...)
		switch {
		case err == bufio.ErrBufferFull && len(s.text) <= g.limits.Bytes:
		case err == bufio.ErrBufferFull:
			g.ended = true
			first.fail(tooLong(g.limits.Bytes), -1)
			return s
		case err != nil:
			g.end(first, err)
			return s
		default:
			return s
		}
	}
}

func (g *geoJSON) recordOf(s stretch) record {
	rec := record{line: s.line, offset: s.offset, grammar: grammar{depth: g.limits.Depth}, at: -1}
	rec.add(s.text, g.limits.Bytes)
	return rec
}

// isCollection reports whether a line is a whole FeatureCollection.
func (g *geoJSON) isCollection(text []byte) bool {
	if !bytes.HasPrefix(trimBlanks(text), []byte{'{'}) || !bytes.Contains(text, []byte(`"FeatureCollection"`)) {
		return false
	}
	rec := g.recordOf(stretch{text: text})
	kind, _, ok := rec.open()
	return ok && kind == "FeatureCollection"
}
