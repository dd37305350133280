package zones

import (
	_ "embed"
	"fmt"
	"math"
	"strings"
	"unicode"

	"example.org/turfplat/geo/ingest"
)

// shoreWordsCSV holds the words by which people speak of drains and wells, each of
// which may stand in the plural.
//
//go:embed shorewords.csv
var shoreWordsCSV string

var shoreWords = mustReadRows("shorewords.csv", shoreWordsCSV, readShoreWord, "word", "near", "note")

type shoreWord struct{ word, near string }

func readShoreWord(cells []string) (shoreWord, bool) {
	return shoreWord{cells[0], cells[1]}, cells[0] != "" && nearWords[cells[1]] != [2]string{}
}

// spokenOf says whether a text speaks of a drain or a well; "" if it does not.
func spokenOf(text string) string {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
	spoken := " " + strings.Join(words, " ") + " "
	for _, w := range shoreWords {
		if strings.Contains(spoken, " "+w.word+" ") || strings.Contains(spoken, " "+w.word+"s ") {
			return w.near
		}
	}
	return ""
}

// noteNamedShores tells of hazards whose names speak of a drain or a well, and that
// have no setback: only the file's word or a map tag gives them one.
func (s *Site) noteNamedShores() {
	for _, o := range s.Objects {
		if o.Kind != Hazard || nearOf(o.Kind, o.Feature.Properties) != "" {
			continue
		}
		if _, stated := o.statedSetback(); stated {
			continue
		}
		if near := spokenOf(o.Name); near != "" {
			proposal := ruleOf("", near)
			s.problem(ingest.Note, "setback_missing", o.Place, "no setback is kept from it, though its name speaks of "+nearWords[near][1],
				fmt.Sprintf("give it setback_m, such as %.1f (%s), or 0 if there is nothing to keep away from", math.Ceil(10*proposal.setback)/10, proposal.source))
		}
	}
}
