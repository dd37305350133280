package main

import (
	"fmt"
	"strings"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// told are problems as people are told them: of those whose cause is the whole
// file's the first, and which features have it likewise.
func told(problems []ingest.Problem) []ingest.Problem {
	var all []ingest.Problem
	likewise := make(map[string]*likes)
	var met []*likes
	for _, p := range problems {
		if !p.OfWholeFile() {
			all = append(all, p)
			continue
		}
		key := fmt.Sprint(p.Code, p.Place.Source, p.Place.Line)
		if l := likewise[key]; l != nil {
			l.features = append(l.features, p.Place.Feature)
			continue
		}
		all = append(all, p)
		l := &likes{first: p, at: len(all)}
		likewise[key], met = l, append(met, l)
	}
	for i := len(met) - 1; i >= 0; i-- {
		if l := met[i]; len(l.features) > 0 {
			all = append(all[:l.at], append([]ingest.Problem{l.problem()}, all[l.at:]...)...)
		}
	}
	return all
}

// likes are features that have the problem of a first one.
type likes struct {
	first    ingest.Problem
	at       int // where they are told, after the first
	features []int
}

func (l *likes) problem() ingest.Problem {
	place := l.first.Place
	place.Feature, place.Label, place.Near = -1, "", nil
	return ingest.Problem{
		Severity: l.first.Severity, Code: l.first.Code, Place: place,
		Text: fmt.Sprintf("%s likewise: features[%s]", plural(len(l.features), "more feature"), spans(l.features)),
	}
}

// spans writes numbers of features in rising order; of many runs the first ones.
func spans(numbers []int) string {
	const most = 12
	runs, more := zones.Runs(numbers, most)
	text := strings.Join(runs, ", ")
	if more {
		text += " and more"
	}
	return text
}
