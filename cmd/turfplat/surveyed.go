package main

import (
	"iter"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// A surveyed site is laid out and measured.
type surveyed struct {
	site    *zones.Site
	plat    *zones.Plat // nil if the site was refused
	measure zones.Measurement
}

// survey lays a site out and measures it.
func (o *order) survey(c *ingest.Collection) surveyed {
	s := surveyed{site: zones.NewSite(c, o.reading)}
	if o.units != "" {
		s.site.Units = o.units
	}
	if s.plat = zones.Survey(s.site); s.plat != nil {
		s.measure = s.plat.Measurement()
	}
	tellSite(s.site)
	return s
}

// tellSite puts the id of a site that is a line into what is told of it.
func tellSite(s *zones.Site) {
	for i := range s.Problems {
		if p := &s.Problems[i].Place; p.Line > 0 && (p.Feature >= 0 || p.Label == "") {
			p.Site = s.ID
		}
	}
}

// surveys surveys the sites of all files, in the order read.
func (o *order) surveys() iter.Seq[surveyed] { return inOrder(o.sites(), o.survey) }

// sites yields the sites of all files, with a warning where two have one id.
func (o *order) sites() iter.Seq[*ingest.Collection] { return newSiteIDs().told(o.contents()) }

// contents yields what all files hold.
func (o *order) contents() iter.Seq[*ingest.Collection] {
	return func(yield func(*ingest.Collection) bool) {
		for _, file := range o.files {
			for c := range o.collections(file) {
				if !yield(c) {
					return
				}
			}
		}
	}
}

// each does something with each survey, in order. A site that is refused is
// told and left out, and makes the command end with errRefused; an error of do
// ends it at once.
func (o *order) each(do func(surveyed) error) error {
	return eachMade(o, func(surveyed) struct{} { return struct{}{} }, func(s surveyed, _ struct{}) error { return do(s) })
}

// errSeveral refuses several sites where a document holds one.
var errSeveral = usageErrorf("several sites are written one a line: add --lines")

// one does something with the survey of the site that there is; if there are
// several, that is an error.
func (o *order) one(several error, do func(surveyed) error) error {
	count := 0
	return o.each(func(s surveyed) error {
		if count++; count > 1 {
			return several
		}
		return do(s)
	})
}

// eachMade does something with each survey and with what is made of it, on
// many at a time.
func eachMade[R any](o *order, make func(surveyed) R, do func(surveyed, R) error) error {
	type made struct {
		surveyed
		of R
	}
	roll := o.roll()
	defer roll.progress.hide()
	for s := range inOrder(o.sites(), func(c *ingest.Collection) (m made) {
		if m.surveyed = o.survey(c); m.plat != nil {
			m.of = make(m.surveyed)
		}
		return m
	}) {
		roll.add(s.site.Problems, s.plat == nil)
		if s.plat == nil {
			continue
		}
		if err := do(s.surveyed, s.of); err != nil {
			return err
		}
	}
	return roll.end()
}
