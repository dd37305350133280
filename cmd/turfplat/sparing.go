package main

import (
	"fmt"

	"example.org/turfplat/geo/ingest"
)

// alike is how many warnings of one sort are told in full.
const alike = 4

// checkLists says how to see what is wrong with sites and was not told.
const checkLists = ": turfplat check lists them all"

// A sparing teller tells errors all, but what to do about one sort of them only
// a few times; of warnings and hints of one sort the first few, and at the end
// the number of the others.
type sparing struct {
	*desk
	sorts []string // codes in the order met
	count map[string]int
	hints map[string]int      // told with errors, by code
	mute  map[string][]string // the sources of what was not told, by code, in the order met
}

func (d *desk) sparing() *sparing {
	return &sparing{desk: d, count: make(map[string]int), hints: make(map[string]int), mute: make(map[string][]string)}
}

func (s *sparing) tell(problems []ingest.Problem) {
	for _, p := range told(problems) {
		if p.Severity == ingest.Refusal {
			if s.hints[p.Code]++; s.hints[p.Code] > alike {
				p.Hint = ""
			}
			s.tellProblem(p)
			continue
		}
		if s.count[p.Code]++; s.count[p.Code] == 1 {
			s.sorts = append(s.sorts, p.Code)
		}
		if s.count[p.Code] <= alike {
			s.tellProblem(p)
			continue
		}
		if mute := s.mute[p.Code]; len(mute) == 0 || mute[len(mute)-1] != p.Place.Source {
			s.mute[p.Code] = append(mute, p.Place.Source)
		}
	}
}

// sum tells how many were not told, and how to see them.
func (s *sparing) sum(how string) {
	for _, code := range s.sorts {
		if more := s.count[code] - alike; more > 0 {
			s.desk.tell("warning", fmt.Sprintf("%s: %d more like it%s (%s)", s.where(code), more, how, code))
		}
	}
}

// where is the file or site of what was not told, or the first and the last of
// several.
func (s *sparing) where(code string) string {
	first, last := s.mute[code][0], s.mute[code][len(s.mute[code])-1]
	if first == last {
		return first
	}
	return first + " to " + last
}
