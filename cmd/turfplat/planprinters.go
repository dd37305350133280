package main

import (
	"encoding/csv"
	"io"

	"example.org/turfplat/zones/program"
)

// A planPrinter writes plans in one format.
type planPrinter func(io.Writer, []*program.Plan) error

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
		return printTasks, nil
	case "ics":
		return printCalendar, nil
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

// printCalendar writes the days of all sites in one calendar.
func printCalendar(w io.Writer, plans []*program.Plan) error {
	return program.CalendarOf(plans, software()).Write(w)
}

// printTasks writes the task list of all sites as RFC 4180 has it.
func printTasks(w io.Writer, plans []*program.Plan) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	c.Write(program.TaskColumns) // an error stays with the writer until it is flushed
	for _, p := range plans {
		for _, row := range p.Tasks() {
			c.Write(plainCells(row))
		}
	}
	c.Flush()
	return c.Error()
}
