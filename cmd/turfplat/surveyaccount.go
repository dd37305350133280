package main

import (
	"fmt"

	"example.org/turfplat/zones"
)

// surveyAccount is the machine form of what a survey took.
type surveyAccount struct {
	Schema  string          `json:"schema"`
	Took    []string        `json:"took"` // the account in words
	Taken   []zones.Taken   `json:"taken"`
	Ignored []zones.Omitted `json:"ignored"`
	LeftOut []zones.Omitted `json:"left_out"`
	Walks   []walkAccount   `json:"walks"`
	Found   []finding       `json:"problems"`
}

// account is what a survey took, with walks in the units given.
func (s *surveyor) account(made zones.Compilation, units zones.Units) surveyAccount {
	f := figuresIn(units)
	account := surveyAccount{
		Schema: "turfplat/survey/1", Took: made.Account(),
		Taken: made.Taken(), Ignored: made.Ignored(), LeftOut: made.LeftOut(),
		Walks: []walkAccount{}, Found: findings(made.Site.Problems),
	}
	for _, t := range s.walks.trails {
		account.Took = append(account.Took, s.walks.lines(f, t)...)
		account.Walks = append(account.Walks, s.walks.account(t))
	}
	return account
}

// tellAccount tells on standard output what a site file is made of.
func (s *surveyor) tellAccount(made zones.Compilation) error {
	account := s.account(made, s.units)
	if s.json {
		return writeJSON(s.out, account, " ")
	}
	for _, line := range account.Took {
		if _, err := fmt.Fprintln(s.out, line); err != nil {
			return err
		}
	}
	return nil
}
