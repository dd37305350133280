package main

import (
	"fmt"
	"iter"

	"example.org/turfplat/geo/ingest"
)

// A find is what one site of a file holds.
type find struct {
	objects *ingest.Collection
	err     error // ends the survey
}

// finds yields the objects of one site after the other. Without an outline, that
// all are named after, a site is warned of that has the id of an earlier one.
func (s *surveyor) finds() iter.Seq[find] {
	return func(yield func(find) bool) {
		ids := newSiteIDs()
		for _, file := range s.files {
			for c, err := range s.objects(file) {
				if err == nil && s.outline == nil {
					ids.look(c)
				}
				if !yield(find{c, err}) || err != nil {
					return
				}
			}
		}
		if err := s.refuseIdleOffset(); err != nil {
			yield(find{err: err})
		}
	}
}

// together reads all files as parts of one site.
func (s *surveyor) together() (*ingest.Collection, error) {
	var parts []*ingest.Collection
	named := false
	for _, file := range s.files {
		sites := 0
		for c, err := range s.objects(file) {
			if err != nil {
				return nil, err
			}
			_, header := c.Member("site")
			if sites++; sites > 1 || named && header {
				return nil, errSeveral
			}
			named = named || header
			parts = append(parts, c)
		}
	}
	if err := s.refuseIdleOffset(); err != nil {
		return nil, err
	}
	return ingest.Join(parts...), nil
}

// objects reads what a file holds, be it sites or walks.
func (s *surveyor) objects(file string) iter.Seq2[*ingest.Collection, error] {
	return func(yield func(*ingest.Collection, error) bool) {
		if s.isTrack(file) {
			yield(s.walked(file))
			return
		}
		for c := range s.collections(file) {
			if !yield(c, nil) {
				return
			}
		}
	}
}

// isTrack reports whether a file holds tracks. One that cannot be opened may:
// what is wrong with it is told when it is read.
func (s *surveyor) isTrack(file string) bool {
	r, err := s.open(file)
	if err != nil {
		return true
	}
	defer r.close()
	return r.looksWalked(file)
}

// mayBeWalked reports whether a file does not begin as map extracts and
// GeoJSON do: it holds tracks, or what is wrong with it is told when it is read.
func (s *surveyor) mayBeWalked(file string) bool {
	r, err := s.open(file)
	if err != nil {
		return true
	}
	defer r.close()
	return !ingest.IsSite(ingest.Beginning(r.Reader))
}

// walked makes objects of a file of tracks.
func (s *surveyor) walked(file string) (*ingest.Collection, error) {
	r, err := s.open(file)
	if err != nil {
		return unreadable(file, err), nil
	}
	defer r.close()
	tracks := ingest.ReadTracks(r.Reader, r.name, ingest.DefaultLimits)
	if s.walks.Kind == "" && !tracks.Refused() {
		return nil, usageHint(fmt.Errorf("%s %s", r.name, contents(tracks)), kindsHint())
	}
	t := s.walks.Follow(tracks)
	if q := s.question(t); q != nil {
		t.Objects.Problems = append(t.Objects.Problems, *q)
	}
	s.walks.trails = append(s.walks.trails, t)
	return t.Objects, nil
}

// contents says what a file of tracks holds.
func contents(t *ingest.Tracks) string {
	switch drawn := len(t.Tracks) - t.Walked(); {
	case drawn == 0:
		return "is a walked track"
	case t.Walked() == 0:
		return "holds " + plural(drawn, "drawn ring")
	default:
		return fmt.Sprintf("holds %s and %s", plural(t.Walked(), "walk"), plural(drawn, "drawn ring"))
	}
}

// refuseIdleOffset refuses flags about walks where nothing was walked.
func (s *surveyor) refuseIdleOffset() error {
	walked, drawn := 0, 0
	for _, t := range s.walks.trails {
		walked += t.Walks
		drawn += t.Drawn
	}
	if walked > 0 || drawn == 0 {
		return nil
	}
	return refuseIdle(s.flags, "all rings were drawn, none was walked", "offset", "side", "sigma")
}
