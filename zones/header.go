package zones

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// readHeader takes what a file says of the site as a whole, in its foreign
// member "site".
func (s *Site) readHeader() {
	header := s.headerMembers()
	s.ID, s.Name, s.Notes = s.headerID(header), s.headerText(header, "name"), s.headerText(header, "notes")
	s.Species = strings.TrimSpace(s.headerText(header, "species"))
	s.Units, s.Revision = Units(s.headerText(header, "units")), s.headerRevision(header)
	s.readAccess(header)
	s.tellHeaderSlips("site", header, headerKeys)
	if s.Name == "" {
		s.Name = s.ID
	}
	if s.Units != US && s.Units != Metric {
		if s.Units != "" {
			s.problem(ingest.Warning, "site_units", s.place(), fmt.Sprintf("site units %q are neither us nor metric, us taken", s.Units), "")
		}
		s.Units = US
	}
	if s.region == "" {
		s.takeRegion(s.headerText(header, "region"))
	}
	s.readAttribution()
}

// IDOf is the id of the site that a collection makes: its own, else the name
// of its file and, where sites are lines, the number of the line.
func IDOf(c *ingest.Collection) string {
	s := &Site{collection: c}
	return s.headerID(s.headerMembers())
}

func (s *Site) headerMembers() ingest.Properties {
	header, ok := s.collection.Within("site")
	if !ok {
		s.problem(ingest.Warning, "site_member", s.place(), `member "site" is not an object, left aside`, "")
	}
	return header
}

func (s *Site) headerID(header ingest.Properties) string {
	if id := s.headerText(header, "id"); id != "" {
		return id
	}
	id := idFromFile(s.collection.Source)
	if line := s.collection.Line; line > 0 {
		id = fmt.Sprintf("%s-%d", id, line)
	}
	return id
}

// toldIn are the figures in which problems of a collection tell of areas.
func toldIn(c *ingest.Collection, asked Units) Figures {
	if asked == "" {
		header, _ := c.Within("site")
		units, _ := header.Text("units")
		asked = Units(units)
	}
	if asked != Metric {
		asked = US
	}
	return Figures{asked}
}

// takeRegion takes the region whose rules hold.
func (s *Site) takeRegion(name string) {
	var known bool
	if s.region, known = FindRegion(name); known || name == "" {
		return
	}
	hint := "of " + strings.Join(Regions(), ", ") + " some are; elsewhere look them up, state setback_m on objects and keep to the law of fertilizers yourself"
	if meant := nearRegion(name); meant != "" {
		hint = "did you mean " + meant + "?"
	}
	s.problem(ingest.Warning, "region_unknown", s.place(), fmt.Sprintf("neither setback rules nor a law of fertilizers of region %q are known here: the proposed setbacks are taken, and no law is held against programs", name), hint)
}

// headerText returns a text of the header, or a number as it was written.
func (s *Site) headerText(header ingest.Properties, name string) string {
	raw, ok := header.Raw(name)
	if !ok || raw[0] == 'n' {
		return ""
	}
	if c := raw[0]; c != '{' && c != '[' && c != 't' && c != 'f' {
		text, _ := header.Text(name)
		return text
	}
	s.problem(ingest.Warning, "site_member", s.place(), fmt.Sprintf("site %s is neither a text nor a number, left aside", name), "")
	return ""
}

func (s *Site) headerRevision(header ingest.Properties) int {
	var revision int
	if raw, ok := header.Raw("revision"); ok && json.Unmarshal(raw, &revision) != nil {
		s.problem(ingest.Warning, "site_member", s.place(), "site revision is not a whole number, left aside", "")
		return 0
	}
	return revision
}

// osmAttribution is what the licence of OpenStreetMap data asks to be shown
// (ODbL 1.0 section 4.3; osm.org/copyright).
const osmAttribution = "Map data © OpenStreetMap contributors, ODbL 1.0"

func (s *Site) readAttribution() {
	raw, ok := s.collection.Member("attribution")
	if ok && json.Unmarshal(raw, &s.Attribution) == nil && strings.TrimSpace(s.Attribution) != "" {
		return
	}
	s.Attribution = ""
	for _, o := range slices.Concat(s.Objects, s.Beyond) {
		if strings.HasPrefix(o.ID, "osm:") {
			s.Attribution = osmAttribution
			return
		}
	}
}
