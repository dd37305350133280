package main

import (
	"fmt"

	"github.com/urfave/cli/v2"
)

// version is raised with every release; the CHANGELOG says what it brought.
const version = "0.1.0"

// software names the program in what it writes.
func software() string { return "turfplat " + version }

func versionCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "version",
		CustomHelpTemplate: versionHelp,
		OnUsageError:       onUsageError,
		Flags:              []cli.Flag{&cli.BoolFlag{Name: "json"}},
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return usageErrorf("version takes no files")
			}
			if c.Bool("json") {
				return writeJSON(d.out, map[string]string{"schema": "turfplat/version/1", "software": "turfplat", "version": version}, "")
			}
			_, err := fmt.Fprintln(d.out, software())
			return err
		},
	}
}

const versionHelp = `turfplat version prints the version.

Usage:
    turfplat version [--json]
`
