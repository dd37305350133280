package main

import (
	"errors"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// extend works what the files hold into the site of another file.
func (s *surveyor) extend(siteFile string) error {
	site, err := s.siteToExtend(siteFile)
	if err != nil {
		return err
	}
	data, err := s.allTogether()
	if err != nil {
		return err
	}
	extended := site.Extend(data, s.reading)
	s.tellProblems(extended.Problems)
	if extended.File == nil {
		return errors.Join(errRefused, s.explain())
	}
	written := extended.File.WriteGeoJSON
	if s.lines {
		written = extended.File.WriteGeoJSONLine
	}
	err = s.write(written)
	if err == nil && s.output != "" && !s.lines {
		err = s.tellChanges(extended, site.Units)
	}
	return errors.Join(err, s.explain())
}

// allTogether reads all files as parts of one site, whatever sites they are
// of.
func (s *surveyor) allTogether() (*ingest.Collection, error) {
	var parts []*ingest.Collection
	for _, file := range s.files {
		for c, err := range s.objects(file) {
			if err != nil {
				return nil, err
			}
			parts = append(parts, c)
		}
	}
	return ingest.Join(parts...), s.refuseIdleOffset()
}

// siteToExtend reads the one site that new data is worked into.
func (o *order) siteToExtend(file string) (*zones.Site, error) {
	if file == "-" {
		return nil, usageErrorf("--into takes the name of a site file, standard input is for what is new")
	}
	var site *zones.Site
	for c := range o.collections(file) {
		if site != nil {
			return nil, usageErrorf("--into %s: there are several sites in it, name a file with one", file)
		}
		site = zones.NewSite(c, o.reading)
	}
	if site == nil {
		return nil, usageErrorf("--into %s: there is nothing in it", file)
	}
	o.tellProblems(site.Problems)
	if site.Refused() {
		return nil, errRefused
	}
	if o.units != "" {
		site.Units = o.units
	}
	return site, nil
}

const intoHelp = `With --into, what is new is added to a site file, and what was surveyed again
takes the place of what stood there: it keeps its id, its name and what else
you said of it. What the files do not mention stays. The site's revision grows
by one if anything changed; with -o, the changes are listed with the measures
before and now.

The same are objects of one id; else of one kind, if they have more than half
of their ground in common, lines and points if they lie within 1 m. Objects
that fell into parts or grew together get new ids, with the old ones as
parents. Left as it stands is
  - an edge whose new survey is no surer, changes the area by less than 2 % and
    lies within the errors of both: that is noise
  - what was traced, walked or taped, against map data
`
