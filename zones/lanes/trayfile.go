package lanes

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/turfplat/geo"
)

// mostTrays is more than any tray test has.
const mostTrays = 500

// ReadTrays reads a tray test as CSV: a column offset_ft or offset_m, negative
// to the left of the lane's centre line, and a column catch, in any unit. Other
// columns are left aside.
func ReadTrays(r io.Reader) ([]Tray, error) {
	table := csv.NewReader(io.LimitReader(r, 1<<20))
	table.TrimLeadingSpace = true
	head, err := table.Read()
	if err != nil {
		return nil, fmt.Errorf("tray test has no head: write a row offset_ft,catch: %w", err)
	}
	columns := make(map[string]int)
	for i, name := range head {
		columns[strings.ToLower(strings.TrimSpace(strings.TrimPrefix(name, "\ufeff")))] = i
	}
	offset, unit := column(columns, "offset_m"), 1.0
	if offset < 0 {
		offset, unit = column(columns, "offset_ft"), geo.FootM
	}
	catch := column(columns, "catch")
	if offset < 0 || catch < 0 {
		return nil, errors.New("tray test lacks a column: it takes offset_ft or offset_m, and catch")
	}
	var trays []Tray
	for {
		row, err := table.Read()
		if errors.Is(err, io.EOF) {
			return trays, nil
		}
		if err != nil {
			return nil, fmt.Errorf("tray test: %w", err)
		}
		line, _ := table.FieldPos(0)
		x, err1 := strconv.ParseFloat(row[offset], 64)
		c, err2 := strconv.ParseFloat(row[catch], 64)
		if err := errors.Join(err1, err2); err != nil {
			return nil, fmt.Errorf("tray test: line %d: %w", line, err)
		}
		if trays = append(trays, Tray{x * unit, c}); len(trays) > mostTrays {
			return nil, fmt.Errorf("tray test has more than %d trays", mostTrays)
		}
	}
}

func column(columns map[string]int, name string) int {
	if i, ok := columns[name]; ok {
		return i
	}
	return -1
}
