package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/lanes"
)

func checkCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "check",
		CustomHelpTemplate: checkHelp,
		OnUsageError:       onUsageError,
		Flags:              streamFlags(grassFlag()),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
			}
			if err := o.refuseResume(o.json, "add --json"); err != nil {
				return err
			}
			if o.json && o.lines {
				return o.checkLines().do(o)
			}
			return o.check()
		},
	}
}

// A finding is one problem in the form machines read.
type finding struct {
	Severity string    `json:"severity"`
	Code     string    `json:"code"`
	Source   string    `json:"source"`
	Line     int       `json:"line"`
	Feature  int       `json:"feature_index"`
	Label    string    `json:"feature"`
	Near     []float64 `json:"near"`
	Text     string    `json:"text"`
	Hint     string    `json:"hint"`
}

type checkedSite struct {
	ID       string    `json:"id"`
	Name     string    `json:"name"`
	Usable   bool      `json:"usable"`
	Problems []finding `json:"problems"`
}

const checkSchema = "turfplat/check/1"

type checkDocument struct {
	Schema string        `json:"schema"`
	Sites  []checkedSite `json:"sites"`
}

// check writes its findings whether they block or not: they are its result.
func (o *order) check() error {
	blocked := false
	err := o.write(func(w io.Writer) error {
		var all []checkedSite
		progress := o.progress()
		defer progress.hide()
		for s := range o.surveys() {
			site := checked(s)
			blocked = blocked || !site.Usable
			progress.step()
			if o.json {
				all = append(all, site)
				continue
			}
			progress.hide()
			o.tellAll(s.site.Problems)
			fmt.Fprintln(w, verdict(site))
		}
		if o.json {
			return writeJSON(w, checkDocument{checkSchema, all}, " ")
		}
		return nil
	})
	if err == nil && blocked {
		return errRefused
	}
	return err
}

// checkLines is the route that checks sites, a document each, of those as well
// that are refused.
func (o *order) checkLines() route[*ingest.Collection] {
	r := o.surveying(nil)
	r.make = func(c *ingest.Collection) product {
		site := checked(o.survey(c))
		text, err := jsonLine(checkDocument{checkSchema, []checkedSite{site}})
		return product{text: text, refused: !site.Usable, err: err}
	}
	r.mark = documentLine
	return r
}

// checked is a site with its problems, and with what its slopes ask of those who
// work on it: commands that lay lanes or plan steps tell that of the work.
func checked(s surveyed) checkedSite {
	if s.plat != nil {
		lanes.TellSlopes(s.plat, lanes.CommonPractice())
		tellSite(s.site)
	}
	return checkedSite{ID: s.site.ID, Name: s.site.Name, Usable: s.plat != nil, Problems: findings(s.site.Problems)}
}

// findings are problems in the form machines read.
func findings(problems []ingest.Problem) []finding {
	all := []finding{}
	for _, p := range problems {
		f := finding{Severity: p.Severity.String(), Code: p.Code, Source: p.Place.Source, Line: p.Place.Line, Feature: p.Place.Feature, Label: p.Place.Label, Text: p.Text, Hint: p.Hint}
		if p.Place.Near != nil {
			f.Near = p.Place.Near[:]
		}
		all = append(all, f)
	}
	return all
}

// verdict sums a site up in a line.
func verdict(s checkedSite) string {
	count := make(map[string]int)
	for _, p := range s.Problems {
		count[p.Severity]++
	}
	var parts []string
	for _, kind := range []ingest.Severity{ingest.Refusal, ingest.Warning, ingest.Note} {
		if n := count[kind.String()]; n > 0 {
			parts = append(parts, plural(n, kind.String()))
		}
	}
	word := "can be measured"
	if !s.Usable {
		word = "cannot be measured"
	}
	if len(parts) == 0 {
		return s.ID + ": " + word
	}
	return s.ID + ": " + word + " (" + strings.Join(parts, ", ") + ")"
}

const checkHelp = `turfplat check says what is wrong with site files, and where.

Usage:
    turfplat check [flags] [FILE ...]

Every problem is told, on standard error, with its file, feature and place:
errors keep the site from being measured, warnings tell of repairs, of doubts
and of slopes on which machines are not to be ridden, or not to be used.
The verdict on each site goes to standard output. Exit status 1 if any site
cannot be measured.

Flags:
` + grassHelp + readingHelp + linesHelp + textOutHelp + `
Example:
    $ turfplat check yard.geojson
`
