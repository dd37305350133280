package render

import (
	"slices"
	"strings"
	"unicode"

	"github.com/tdewolff/canvas/text"
)

// A shapedLine is a line of letters of several faces or directions, laid out as
// it is drawn. Lengths are in ems.
type shapedLine struct {
	runs  []run // in the order in which they are read
	width float64
}

// A run is a stretch of a line in one face, one script and one direction.
type run struct {
	face     Face
	text     string // in the order in which it is read
	script   text.Script
	pointed  bool // is punctuation
	level    int  // of embedding (Unicode Standard Annex 9), odd where letters run leftward
	x, width float64
	glyphs   []glyph // from left to right
}

// A glyph stands for some letters of its run: for one, for two that are tied,
// or for a mark on a letter.
type glyph struct {
	id      uint16
	letters string
	from    int     // where in the run's text they begin
	x, y    float64 // from the start of the run
	mark    bool    // it takes no room, or is shifted from where it would stand
}

// lineOf lays out a text in a line that runs from left to right; stretches of
// it that run the other way should be isolated.
func (f Face) lineOf(text string) shapedLine {
	line := shapedLine{runs: f.runsOf([]rune(text))}
	for _, r := range fromTheLeft(line.runs) {
		r.shape()
		r.x = line.width
		line.width += r.width
	}
	return line
}

// runsOf divides a text into runs, which are not shaped yet. Punctuation is a run
// of its own, since readers of PDF turn round what stands between letters only.
func (f Face) runsOf(letters []rune) []run {
	const leftToRight = '\u200e'
	levels := text.EmbeddingLevels(append([]rune{leftToRight}, letters...))[1:]
	var runs []run
	var last run // as the one before, as far as is known
	for from := 0; from < len(letters); {
		to := clusterEnd(letters, from)
		cluster, level := letters[from:to], levels[from]
		from = to
		if isolates(cluster[0]) {
			continue
		}
		next := run{face: f.faceOf(cluster), level: level, script: text.LookupScript(cluster[0]), pointed: unicode.IsPunct(cluster[0])}
		if len(runs) > 0 && next.goesOn(last) {
			runs[len(runs)-1].text += string(cluster)
			if next.ofAnyScript() {
				next.script = last.script
			}
		} else {
			next.text = string(cluster)
			runs = append(runs, next)
		}
		last = next
	}
	return runs
}

// goesOn reports whether letters may stand in one run with those before them.
func (r run) goesOn(last run) bool {
	return r.face == last.face && r.level == last.level && r.pointed == last.pointed &&
		(r.script == last.script || r.ofAnyScript() || last.ofAnyScript())
}

func (r run) ofAnyScript() bool {
	return r.script == text.ScriptCommon || r.script == text.ScriptInherited
}

// clusterEnd is where the letter ends that begins at a place: after its marks.
func clusterEnd(letters []rune, from int) int {
	to := from + 1
	for to < len(letters) && (unicode.Is(unicode.M, letters[to]) || isJoiner(letters[to])) {
		to++
	}
	return to
}

// faceOf is the face that has a letter with all its marks: the face itself if it
// can be.
func (f Face) faceOf(cluster []rune) Face {
	lacksAny := func(face Face) bool {
		return slices.ContainsFunc(cluster, func(r rune) bool { return face.font().GlyphIndex(r) == 0 })
	}
	if !lacksAny(f) || lacksAny(f.second()) {
		return f
	}
	return f.second()
}

// fromTheLeft returns runs in the order in which they stand (Unicode Standard
// Annex 9, rule L2).
func fromTheLeft(runs []run) []*run {
	order := make([]*run, len(runs))
	highest := 0
	for i := range runs {
		order[i] = &runs[i]
		highest = max(highest, runs[i].level)
	}
	for level := highest; level > 0; level-- {
		for from := 0; from < len(order); from++ {
			to := from
			for to < len(order) && order[to].level >= level {
				to++
			}
			slices.Reverse(order[from:to])
			from = max(from, to-1)
		}
	}
	return order
}

// shape chooses the glyphs of the run and places them.
func (r *run) shape() {
	em := float64(r.face.font().Head.UnitsPerEm)
	shaped := r.face.shape(r.text, r.direction())
	pen := 0
	for i, g := range shaped {
		r.glyphs = append(r.glyphs, glyph{
			id: g.ID, from: int(g.Cluster), letters: r.text[g.Cluster:clusterAfter(shaped, i, len(r.text))],
			x: float64(pen+int(g.XOffset)) / em, y: float64(g.YOffset) / em,
			mark: g.XOffset != 0 || g.YOffset != 0 || r.face.font().GlyphAdvance(g.ID) == 0,
		})
		pen += int(g.XAdvance)
	}
	r.width = float64(pen) / em
}

// clusterAfter is where the letters end that a glyph stands for.
func clusterAfter(shaped []text.Glyph, i, end int) int {
	for _, g := range shaped {
		if c := int(g.Cluster); c > int(shaped[i].Cluster) && c < end {
			end = c
		}
	}
	return end
}

func (r *run) direction() text.Direction {
	if r.level%2 == 1 {
		return text.RightToLeft
	}
	return text.LeftToRight
}

// marks are the glyphs of the run that stand on others.
func (r *run) marks() []glyph {
	return slices.DeleteFunc(slices.Clone(r.glyphs), func(g glyph) bool { return !g.mark })
}

// without is the text of the run without some marks.
func (r *run) without(marks []glyph) string {
	var letters strings.Builder
	for i, letter := range r.text {
		left := unicode.Is(unicode.M, letter) && slices.ContainsFunc(marks, func(g glyph) bool { return i >= g.from && i < g.from+len(g.letters) })
		if !left {
			letters.WriteRune(letter)
		}
	}
	return letters.String()
}
