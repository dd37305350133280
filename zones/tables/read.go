package tables

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
)

const mostBytes = 1 << 20 // of a table

// Read reads a table of a user, of at most 1 MiB. What it is of stands in the
// error of a larger one. The columns come first, then each row, of as many cells.
// All that is wrong with rows is told, each with its line; a table with wrong
// columns, or of which the rest cannot be told apart, is read no further.
func Read(r io.Reader, of string, columns func(names []string) error, row func(cells []string) (bad []error)) error {
	text, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	if err != nil {
		return err
	}
	if len(text) > mostBytes {
		return fmt.Errorf("is larger than 1 MiB, which no table of %s is: is it the right file?", of)
	}
	table := csv.NewReader(bytes.NewReader(text))
	table.FieldsPerRecord = -1
	head, err := table.Read()
	if err != nil && err != io.EOF {
		return err
	}
	if len(head) > 0 {
		head[0] = strings.TrimPrefix(head[0], "\ufeff") // spreadsheets mark UTF-8 so
	}
	if err := columns(head); err != nil {
		return fmt.Errorf("line 1: %w", err)
	}
	return readRows(table, len(head), row)
}

func readRows(table *csv.Reader, columns int, row func(cells []string) []error) error {
	var all []error
	for {
		cells, err := table.Read()
		if err == io.EOF {
			return errors.Join(all...)
		}
		if err != nil {
			return errors.Join(append(all, err)...) // names its line
		}
		bad := []error{fmt.Errorf("there are %d columns, not %d", len(cells), columns)}
		if len(cells) == columns {
			bad = row(cells)
		}
		line, _ := table.FieldPos(0)
		for _, err := range bad {
			all = append(all, fmt.Errorf("line %d: %w", line, err))
		}
	}
}
