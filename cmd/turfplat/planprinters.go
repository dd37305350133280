package main

import (
	"encoding/csv"
	"io"

	"example.org/turfplat/zones/program"
)

// A planPrinter writes plans in one format.
type planPrinter func(io.Writer, []*program.Plan) error

// alone prints a plan in a format that holds one.
func alone(print func(io.Writer, *program.Plan) error) planPrinter {
	return func(w io.Writer, plans []*program.Plan) error {
		if len(plans) > 1 {
			return usageErrorf("several sites are planned as text or json: plan them one by one")
		}
		for _, p := range plans {
			if err := print(w, p); err != nil {
				return err
			}
		}
		return nil
	}
}

// planPrinterOf settles the format; --json is short for --format json.
func planPrinterOf(format string, json bool) (planPrinter, error) {
	if format == "" && json {
		format = "json"
	}
	switch format {
	case "", "text":
		return printPlans, nil
	case "json":
		return printDocuments, nil
	case "csv":
		return alone(printTasks), nil
	case "ics":
		return alone(func(w io.Writer, p *program.Plan) error { return p.Calendar(software()).Write(w) }), nil
	}
	return nil, usageErrorf("--format is text, json, csv or ics, not %q", format)
}

// printDocuments writes the plan of one site, or those of several with what
// one truck takes to them.
func printDocuments(w io.Writer, plans []*program.Plan) error {
	if len(plans) == 1 {
		return writeJSON(w, plans[0].Document(), " ")
	}
	v, err := program.VisitDocumentOf(plans)
	if err != nil {
		return err
	}
	return writeJSON(w, v, " ")
}

// printTasks writes the task list as RFC 4180 has it.
func printTasks(w io.Writer, p *program.Plan) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	c.Write(program.TaskColumns) // an error stays with the writer until it is flushed
	return c.WriteAll(p.Tasks())
}
