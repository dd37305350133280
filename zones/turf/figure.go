package turf

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// A Figure is a published range, in SI units. A figure that is one number is
// its own range; a limit begins at 0.
type Figure struct {
	Least, Most float64
	Source      string
}

// Figures are all that was found of one thing, the one that is used first.
type Figures []Figure

// Used returns the figure that is used; false if there is none.
func (f Figures) Used() (Figure, bool) {
	if len(f) == 0 {
		return Figure{}, false
	}
	return f[0], true
}

// parseFigures reads a cell: ranges with their sources, parted by semicolons,
// such as "6-8 Cornell; <=9 Bigelow 2024". Factor turns its unit to SI; most
// is the largest number that is believed, in the cell's unit.
func parseFigures(cell string, factor, most float64) (Figures, error) {
	var figures Figures
	for item := range strings.SplitSeq(cell, ";") {
		item = strings.TrimSpace(item)
		if item == "" {
			continue
		}
		numbers, source, _ := strings.Cut(item, " ")
		least, top, err := parseRange(numbers, most)
		if err != nil {
			return nil, fmt.Errorf("%q: %w", item, err)
		}
		figures = append(figures, Figure{Least: least * factor, Most: top * factor, Source: strings.TrimSpace(source)})
	}
	return figures, nil
}

var errRange = errors.New("write a number, a range such as 6-8, or a limit such as <=9, then the source")

// parseRange reads 3, 6-8 or <=9.
func parseRange(text string, believed float64) (least, most float64, err error) {
	low, high, ranged := strings.Cut(text, "-")
	if limit, ok := strings.CutPrefix(text, "<="); ok {
		low, high, ranged = "0", limit, true
	}
	if !ranged {
		high = low
	}
	if least, err = parseNumber(low); err != nil {
		return 0, 0, errRange
	}
	if most, err = parseNumber(high); err != nil {
		return 0, 0, errRange
	}
	switch {
	case least > most:
		return 0, 0, errors.New("the range runs backwards")
	case most <= 0 || most > believed:
		return 0, 0, fmt.Errorf("is not above 0 and up to %g", believed)
	}
	return least, most, nil
}

// parseNumber reads a plain decimal.
func parseNumber(text string) (float64, error) {
	if text == "" || strings.Trim(text, "0123456789.") != "" {
		return 0, errRange
	}
	return strconv.ParseFloat(text, 64)
}
