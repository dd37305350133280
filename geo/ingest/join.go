package ingest

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"github.com/paulmach/orb"
)

// Join makes one site of collections that are parts of it, such as several
// walks and a map extract. A single part is returned as it is.
//
// An object that stands in two parts alike, as where extracts overlap, counts
// once, which a note tells; one that only shares an id gets another and a
// warning. Members come from the first part that has them, but attributions
// from all. Features keep the places they were read from. Beside the problems
// of the parts there are, by [Problem.Code]: the note objects_repeated and the
// warning id_repeated.
func Join(parts ...*Collection) *Collection {
	if len(parts) == 1 {
		return parts[0]
	}
	j := joint{whole: &Collection{}, ids: make(map[string]joined)}
	digests := sha256.New()
	for i, part := range parts {
		if i == 0 {
			j.whole.Source, j.whole.Line = part.Source, part.Line
		}
		digests.Write(part.Digest[:])
		j.add(part, i)
	}
	digests.Sum(j.whole.Digest[:0])
	if len(j.credits) > 0 {
		j.whole.SetMember("attribution", strings.Join(j.credits, "; "))
	}
	return j.whole
}

// A joint is a site while its parts are put together.
type joint struct {
	whole   *Collection
	ids     map[string]joined
	credits []string // attributions
}

// joined is a feature with the number of the part that it came with.
type joined struct {
	*Feature
	part int
}

func (j *joint) add(part *Collection, number int) {
	j.whole.Problems = append(j.whole.Problems, part.Problems...)
	for _, m := range part.Members {
		if _, there := j.whole.Member(m.Name); !there {
			j.whole.Members = append(j.whole.Members, m)
		}
	}
	j.credit(part)
	repeated := 0
	for _, f := range part.Features {
		f.source = part.Source
		switch earlier, there := j.ids[f.ID]; {
		case f.ID == "" || !there || earlier.part == number:
		case orb.Equal(earlier.Geometry, f.Geometry):
			repeated++
			continue
		default:
			j.tellApart(part, f)
		}
		j.ids[f.ID] = joined{f, number}
		j.whole.Features = append(j.whole.Features, f)
	}
	if repeated > 0 {
		j.whole.Problems = append(j.whole.Problems, Problem{
			Severity: Note, Code: "objects_repeated", Place: Place{Source: part.Source, Line: part.Line, Feature: -1}, Count: repeated,
			Text: fmt.Sprintf("objects that stand in another file as well count once (%d)", repeated),
		})
	}
}

// credit keeps the attribution of a part.
func (j *joint) credit(part *Collection) {
	var text string
	raw, ok := part.Member("attribution")
	if ok && json.Unmarshal(raw, &text) == nil && text != "" && !slices.Contains(j.credits, text) {
		j.credits = append(j.credits, text)
	}
}

// tellApart gives a feature an id that no other has.
func (j *joint) tellApart(part *Collection, f *Feature) {
	place, id := part.Place(f), f.ID
	for n := 2; j.ids[f.ID].Feature != nil; n++ {
		f.ID = fmt.Sprintf("%s-%d", id, n)
	}
	f.Properties.Set("id", f.ID)
	j.whole.Problems = append(j.whole.Problems, Problem{
		Severity: Warning, Code: "id_repeated", Place: place,
		Text: fmt.Sprintf("has the id of an object of another file, is %s now", Quoted(f.ID)),
	})
}
