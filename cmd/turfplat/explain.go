package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/turfplat/geo/track"
	"example.org/turfplat/zones"
)

// stepAccount is the machine form of a step. A step that was about no fixes
// has none before.
type stepAccount struct {
	Ring    int    `json:"ring"` // 0 = the walk as a whole
	Name    string `json:"name"`
	Before  int    `json:"before"`
	Kept    int    `json:"kept"`
	Dropped int    `json:"dropped"`
	Text    string `json:"text"`
}

func steps(t zones.Trail) []stepAccount {
	var all []stepAccount
	for _, s := range t.Walk.Steps {
		all = append(all, stepAccount{s.Ring, s.Name, s.Before, s.Kept, s.Dropped(), s.Text})
	}
	return all
}

// ruleAccount is the machine form of a figure that steps go by.
type ruleAccount struct {
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`
	Text   string  `json:"text"`
	Source string  `json:"source"`
}

func rules() []ruleAccount {
	var all []ruleAccount
	for _, r := range track.Rules() {
		all = append(all, ruleAccount{r.Value, r.Unit, r.Text, r.Source})
	}
	return all
}

// explain tells every step of the walks, whether they were refused or not:
// where the account goes, which is never where a site file goes.
func (s *surveyor) explain() error {
	if !s.walks.explain || s.json && s.output != "" {
		return nil // the machine form has the steps
	}
	var b strings.Builder
	for _, t := range s.walks.trails {
		fmt.Fprintf(&b, "\n%s: %s, %s\n", t.Source, t.Format, plural(t.Fixes, "fix"))
		b.WriteString(stepTable(t))
	}
	if len(s.walks.trails) > 0 {
		b.WriteString("\nfigures these go by\n")
		b.WriteString(ruleTable())
	}
	if s.output == "" {
		s.tell("hint", strings.Trim(b.String(), "\n"))
		return nil
	}
	_, err := io.WriteString(s.out, b.String())
	return err
}

// stepTable has a row a step: fixes before and dropped, and what was done.
func stepTable(t zones.Trail) string {
	table := newTable("llrrl")
	table.row("step", "", "fixes", "dropped", "")
	for _, s := range t.Walk.Steps {
		ring, before, dropped := "", "", ""
		if s.Ring > 0 {
			ring = fmt.Sprintf("ring %d", s.Ring)
		}
		if s.Before > 0 {
			before, dropped = strconv.Itoa(s.Before), strconv.Itoa(s.Dropped())
		}
		table.row(s.Name, ring, before, dropped, s.Text)
	}
	return table.text()
}

func ruleTable() string {
	table := newTable("lll")
	for _, r := range track.Rules() {
		value := strings.TrimSpace(strconv.FormatFloat(r.Value, 'g', -1, 64) + " " + r.Unit)
		table.row(value, r.Text, r.Source)
	}
	return table.text()
}
