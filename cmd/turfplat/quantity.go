package main

import (
	"errors"
	"fmt"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones/material"
)

// lengthFlag reads a flag that takes a length with its unit, above nothing and
// up to a limit; 0 if it is not given.
func lengthFlag(c *cli.Context, name string, most geo.Length) (geo.Length, error) {
	if !c.IsSet(name) {
		return 0, nil
	}
	text := c.String(name)
	quantity, err := material.Parse(text)
	var length geo.Length
	if err == nil {
		length, err = quantity.Length()
	}
	var wrong *material.InputError
	switch {
	case errors.As(err, &wrong):
		return 0, usageHint(fmt.Errorf("--%s: %s", name, wrong.Text), "write a length with its unit: m, cm, ft, in or yd, such as 0.3m or 1ft")
	case err != nil:
		return 0, err
	case !(length > 0 && length <= most): // so that NaN fails too
		return 0, usageErrorf("--%s %s: must be more than 0 and at most %g m", name, text, float64(most))
	}
	return length, nil
}
