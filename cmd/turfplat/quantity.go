package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo"
)

// lengthUnits are those in which a length may be given, in metres.
var lengthUnits = map[string]float64{"m": 1, "cm": 0.01, "ft": geo.FootM, "in": geo.FootM / 12}

// lengthFlag reads a flag that takes a length with its unit, above nothing and
// up to a limit; 0 if it is not given.
func lengthFlag(c *cli.Context, name string, most geo.Length) (geo.Length, error) {
	text := strings.TrimSpace(c.String(name))
	if !c.IsSet(name) {
		return 0, nil
	}
	number := strings.TrimRight(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ'\"")
	unit, known := lengthUnits[text[len(number):]]
	value, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	switch {
	case err == nil && number == text:
		return 0, usageHint(fmt.Errorf("--%s %s: a length needs its unit", name, text), fmt.Sprintf("write --%s %sm or --%s %sft; cm and in will do as well", name, text, name, text))
	case err != nil || !known:
		return 0, usageHint(fmt.Errorf("--%s is a length such as 0.3m, not %q", name, text), "units are m, cm, ft and in")
	}
	length := geo.Length(value * unit)
	if !(length > 0 && length <= most) { // so that NaN fails too
		return 0, usageErrorf("--%s %s: must be more than 0 and at most %g m", name, text, float64(most))
	}
	return length, nil
}
