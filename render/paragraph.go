package render

import (
	"sort"
	"strings"
	"unicode"
)

// block is something that is set into a column of text: a paragraph or a
// table. Set returns its elements, placed under a point at the column's
// upper left corner, and the height they take, in millimetres.
type block interface {
	set(corner Point, width float64) (elements []Element, height float64)
}

// stack sets blocks one under the other, gap millimetres apart.
func stack(corner Point, width, gap float64, blocks ...block) (elements []Element, height float64) {
	for i, b := range blocks {
		if i > 0 {
			height += gap
		}
		set, h := b.set(corner.plus(0, -height), width)
		elements = append(elements, set...)
		height += h
	}
	return elements, height
}

// paragraph is text broken into lines. A line feed ends a line.
type paragraph struct {
	text   string
	face   Face
	size   float64 // points
	ink    Ink
	anchor Anchor // Start is flush left, End flush right
}

// set implements block.
func (p paragraph) set(corner Point, width float64) (elements []Element, height float64) {
	lines := wrapped(p.text, p.face, p.size, width)
	for i, line := range lines {
		elements = append(elements, Text{
			At:     Point{corner.X + width*p.anchor.share(), baseLine(corner.Y, i, p.face, p.size)},
			String: line, Face: p.face, Size: p.size, Ink: p.ink, Anchor: p.anchor,
		})
	}
	return elements, float64(len(lines)) * lineHeight(p.size)
}

// lineHeight is the distance of base lines in millimetres at a size in points.
func lineHeight(size float64) float64 { return 1.3 * size * mmPerPoint }

// baseLine is where the letters of a line stand, so that capitals are in the
// middle of the line's height.
func baseLine(top float64, line int, face Face, size float64) float64 {
	return top - lineHeight(size)*(float64(line)+0.5) - face.capHeight(size)/2
}

// wrapped breaks text into lines no longer than width; words longer than that
// are broken within.
func wrapped(text string, face Face, size, width float64) []string {
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		line := ""
		for _, word := range strings.FieldsFunc(paragraph, breaks) {
			longer := strings.TrimLeft(line+" "+word, " ")
			if face.width(longer, size) <= width {
				line = longer
				continue
			}
			if line != "" {
				lines = append(lines, line)
			}
			pieces := piecesOf(word, face, size, width)
			lines = append(lines, pieces[:len(pieces)-1]...)
			line = pieces[len(pieces)-1]
		}
		lines = append(lines, line)
	}
	return balanced(lines)
}

// breaks reports whether a line may be broken at a letter.
func breaks(r rune) bool { return unicode.IsSpace(r) && r != noBreak }

// noBreak is a space that keeps a number and its unit on one line.
const noBreak = '\u00a0'

// piecesOf cuts a word into pieces no longer than width, of one letter at
// least.
func piecesOf(word string, face Face, size, width float64) []string {
	var pieces []string
	piece := ""
	for letters := []rune(word); len(letters) > 0; {
		end := clusterEnd(letters, 0)
		cluster := string(letters[:end])
		if piece != "" && face.width(piece+cluster, size) > width {
			pieces = append(pieces, piece)
			piece = ""
		}
		piece += cluster
		letters = letters[end:]
	}
	return append(pieces, piece)
}

// shortened cuts text to a width and ends it with an ellipsis if it had to.
func shortened(text string, face Face, size, width float64) string {
	const ellipsis = "…"
	if face.width(text, size) <= width {
		return text
	}
	letters := []rune(text)
	ends := []int{0}
	for end := 0; end < len(letters); {
		end = clusterEnd(letters, end)
		ends = append(ends, end)
	}
	tooLong := 1 + sort.Search(len(ends)-1, func(i int) bool {
		return face.width(string(letters[:ends[i+1]])+ellipsis, size) > width
	})
	kept := strings.TrimRight(string(letters[:ends[tooLong-1]]), " ")
	return balanced([]string{kept + ellipsis})[0]
}
