package main

import (
	"encoding/csv"
	"io"

	"example.org/turfplat/zones/program"
)

// A planPrinter writes a plan in one format.
type planPrinter func(io.Writer, *program.Plan) error

// planPrinterOf settles the format; --json is short for --format json.
func planPrinterOf(format string, json bool) (planPrinter, error) {
	if format == "" && json {
		format = "json"
	}
	switch format {
	case "", "text":
		return printPlan, nil
	case "json":
		return func(w io.Writer, p *program.Plan) error { return writeJSON(w, p.Document(), " ") }, nil
	case "csv":
		return printTasks, nil
	case "ics":
		return func(w io.Writer, p *program.Plan) error { return p.Calendar(software()).Write(w) }, nil
	}
	return nil, usageErrorf("--format is text, json, csv or ics, not %q", format)
}

// printTasks writes the task list as RFC 4180 has it.
func printTasks(w io.Writer, p *program.Plan) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	c.Write(program.TaskColumns) // an error stays with the writer until it is flushed
	return c.WriteAll(p.Tasks())
}
