package zones

import (
	"encoding/json"
	"fmt"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// siteMember is the foreign member "site" of a site file.
type siteMember struct {
	ID       string `json:"id"`
	Name     string `json:"name"`
	Units    Units  `json:"units"`
	Revision int    `json:"revision"`
	Notes    string `json:"notes"`
}

// readHeader takes what a file says of the site as a whole.
func (s *Site) readHeader() {
	c := s.collection
	place := s.place()
	var m siteMember
	if raw, ok := c.Member("site"); ok {
		if err := json.Unmarshal(raw, &m); err != nil {
			s.problem(ingest.Warning, "site_member", place, "member \"site\" cannot be read, left aside: "+err.Error(), "")
			m = siteMember{}
		}
	}
	s.ID, s.Name, s.Units, s.Revision, s.Notes = m.ID, m.Name, m.Units, m.Revision, m.Notes
	if s.ID == "" {
		s.ID = idFromFile(c.Source)
		if c.Line > 0 {
			s.ID = fmt.Sprintf("%s-%d", s.ID, c.Line)
		}
	}
	if s.Name == "" {
		s.Name = s.ID
	}
	if s.Units != US && s.Units != Metric {
		if s.Units != "" {
			s.problem(ingest.Warning, "site_units", place, fmt.Sprintf("site units %q are neither us nor metric, us taken", m.Units), "")
		}
		s.Units = US
	}
	s.readAttribution()
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
	for _, o := range s.Objects {
		if strings.HasPrefix(o.ID, "osm:") {
			s.Attribution = osmAttribution
			return
		}
	}
}
