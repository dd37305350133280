package render

import (
	"sync"

	"github.com/tdewolff/canvas/text"
)

// shaper chooses glyphs for letters, and keeps the lines it has laid out: a
// layout asks for the same ones again and again. A font may be shaped with by
// one at a time only.
var shaper = struct {
	sync.Mutex
	fonts [len(cuts)]*text.Shaper
	lines map[unshaped]shapedLine
}{lines: make(map[unshaped]shapedLine)}

// An unshaped line is one that is to be laid out.
type unshaped struct {
	face Face
	text string
}

// mostLines are kept, about a megabyte.
const mostLines = 500

// shaped returns a text laid out in a line.
func (f Face) shaped(text string) shapedLine {
	shaper.Lock()
	defer shaper.Unlock()
	key := unshaped{f, text}
	line, known := shaper.lines[key]
	if !known {
		if len(shaper.lines) >= mostLines {
			clear(shaper.lines)
		}
		line = f.lineOf(text)
		shaper.lines[key] = line
	}
	return line
}

// shape is called with the shaper locked.
func (f Face) shape(letters string, direction text.Direction) []text.Glyph {
	if shaper.fonts[f] == nil {
		loaded, err := text.NewShaper(cuts[f].file, 0)
		if err != nil {
			panic("render: built-in font " + f.String() + ": " + err.Error())
		}
		shaper.fonts[f] = &loaded
	}
	const sizeless = 0 // hints are of no use on paper
	return shaper.fonts[f].Shape(letters, sizeless, direction, text.ScriptInvalid, "", "", "")
}
