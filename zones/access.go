package zones

import (
	"regexp"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// AccessNotes are what a crew must know to get in and to work, as the site file
// says it; "" is not said. The gate code is a secret of the owner: it is printed
// only where a person asks for it.
type AccessNotes struct {
	Gate, Parking, Dog, Water, Power, Contact string
	GateCode                                  string
}

const gateCode = "gate_code"

// readAccess takes the member "access" of the site's header.
func (s *Site) readAccess(header ingest.Properties) {
	access, ok := header.Within("access")
	if !ok {
		s.problem(ingest.Warning, "site_member", s.place(), "site access is not an object, left aside", `write "access": {"gate": "east side"}`)
		return
	}
	s.tellHeaderSlips("site access", access, accessKeys)
	text := func(name string) string { return strings.TrimSpace(s.headerText(access, name)) }
	s.Access = AccessNotes{
		Gate: text("gate"), Parking: text("parking"), Dog: text("dog"), Water: text("water"), Power: text("power"), Contact: text("contact"),
		GateCode: text(gateCode),
	}
	for _, said := range []string{s.Access.Gate, s.Access.Parking, s.Access.Dog, s.Access.Water, s.Access.Power, s.Access.Contact} {
		if tellsCode.MatchString(said) {
			s.problem(ingest.Warning, "access_code", s.place(), "site access seems to tell a code in a note that is printed",
				"write codes as gate_code, which sheets leave out unless they are asked for it")
			return
		}
	}
}

// tellsCode finds a note that gives a code away.
var tellsCode = regexp.MustCompile(`(?i)\b(code|pin|combination|keypad)\b\D{0,12}\d{3,}`)
