package render

import (
	"strings"

	"example.org/turfplat/zones/program"
)

// A standing says whether a step may be done, in letters that nobody
// overlooks. It is a block.
type standing struct {
	word, why string
	goAhead   bool
}

var standingWords = map[program.Status]string{
	program.Ready: "READY", program.Waiting: "WAIT", program.Blocked: "BLOCKED", program.Skipped: "LEFT OUT",
}

func (s stepSheet) standing() standing {
	why := s.letters.of(s.step.Why)
	if held := s.heldLetters(); held != "" {
		why = strings.TrimPrefix(why+"; not yet on "+held, "; ")
	}
	if need := s.step.Step.OnlyIf; need != "" {
		why = strings.TrimPrefix(why+"; only if "+s.letters.of(need), "; ")
	}
	return standing{standingWords[s.step.Status], why, s.step.Status == program.Ready}
}

// withheld reports whether the step may not be done: what one would need to do it
// is then left off, so that nobody does it who reads no more than a table.
func (s stepSheet) withheld() bool { return s.step.Status.KeepsOff() }

func (s stepSheet) heldLetters() string {
	var letters []string
	for _, z := range s.measured.Zones {
		if done, there := s.done[z.ID]; there && done.HeldBack() {
			letters = append(letters, z.Letter)
		}
	}
	return strings.Join(letters, ", ")
}

func (b standing) head() string {
	if b.why == "" {
		return b.word
	}
	return b.word + ": " + b.why
}

// set implements block.
func (b standing) set(corner Point, width float64) (elements []Element, height float64) {
	const size, padding = 11.0, 1.6
	ink, ground := white, black
	if b.goAhead {
		ink, ground = black, white
	}
	set, h := paragraph{text: b.head(), face: Bold, size: size, ink: ink}.set(corner.plus(padding, -padding), width-2*padding)
	height = h + 2*padding
	box := rect{corner.plus(0, -height), corner.plus(width, 0)}
	frame := Path{Lines: box.inset(heavyLine / 2).polygon().lines(), Fill: ground, Stroke: black, Weight: heavyLine}
	return []Element{Group{ID: "standing", Title: b.head(), Elements: append([]Element{frame}, set...)}}, height
}
