package main

import (
	"fmt"

	"example.org/turfplat/geo/ingest"
)

// alike is how many warnings of one sort are told in full.
const alike = 4

// A sparing teller tells errors all, but what to do about one sort of them only
// a few times; of warnings and hints of one sort the first few, and at the end
// the number of the others.
type sparing struct {
	*desk
	sorts []string // codes in the order met
	count map[string]int
	hints map[string]int // told with errors, by code
	first map[string]ingest.Place
}

func (d *desk) sparing() *sparing {
	return &sparing{desk: d, count: make(map[string]int), hints: make(map[string]int), first: make(map[string]ingest.Place)}
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
			s.first[p.Code] = p.Place
		}
		if s.count[p.Code] <= alike {
			s.tellProblem(p)
		}
	}
}

// sum tells how many were not told, and how to see them.
func (s *sparing) sum(how string) {
	for _, code := range s.sorts {
		if more := s.count[code] - alike; more > 0 {
			s.desk.tell("warning", fmt.Sprintf("%s: %d more like it%s (%s)", s.first[code].Source, more, how, code))
		}
	}
}
