// Command turfplat measures turf, divides it into zones and draws it to
// scale. Run it without arguments for its help.
package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"example.org/turfplat/zones/spelling"
	"github.com/urfave/cli/v2"
)

// Exit codes: 0 done, warnings included; 1 the input or the data is at fault, and
// nothing was written but the good ones of sites that are lines; 2 the command
// line is at fault.
const (
	exitData  = 1
	exitUsage = 2
)

func main() {
	d := newDesk(os.Stdin, os.Stdout, os.Stderr)
	d.heed()
	os.Exit(d.run(os.Args))
}

func (d *desk) run(args []string) int {
	app := newApp(d)
	args, err := flagsFirst(app, args)
	if err == nil {
		err = app.Run(args)
	}
	return d.exitCode(err)
}

func newApp(d *desk) *cli.App {
	return &cli.App{
		Name:                      "turfplat",
		Writer:                    d.out,
		ErrWriter:                 d.messages,
		CustomAppHelpTemplate:     appHelp,
		Commands:                  []*cli.Command{surveyCommand(d), checkCommand(d), measureCommand(d), zoneCommand(d), planCommand(d), lanesCommand(d), mapCommand(d), feedCommand(d), demoCommand(d), versionCommand(d)},
		DisableSliceFlagSeparator: true,
		HideVersion:               true,
		OnUsageError:              onUsageError,
		ExitErrHandler:            func(*cli.Context, error) {}, // run says how it ends
		Action: func(c *cli.Context) error {
			if name := c.Args().First(); name != "" {
				return usageErrorf("there is no command %q: %s turfplat help lists them", name, cli.SuggestCommand(c.App.Commands, name))
			}
			return cli.ShowAppHelp(c)
		},
	}
}

// A usageError is the command line's fault; the hint says what to do.
type usageError struct {
	error
	hint string
}

func (e usageError) Unwrap() error { return e.error }

// onUsageError puts what the parser says of a flag into words of our own.
func onUsageError(c *cli.Context, err error, isCommand bool) error {
	name, unknown := strings.CutPrefix(err.Error(), "flag provided but not defined: -")
	switch {
	case !unknown:
		return usageError{error: err}
	case !isCommand:
		return usageErrorf("there is no flag --%s: turfplat help lists the commands", name)
	}
	near := cli.SuggestFlag(c.Command.Flags, name, true)
	if slips := spelling.Slips(name, strings.TrimLeft(near, "-")); slips > len(name)/3 {
		return usageErrorf("there is no flag --%s: turfplat %s --help lists those that there are", name, c.Command.Name)
	}
	return usageErrorf("there is no flag --%s: did you mean %s? turfplat %s --help lists them", name, near, c.Command.Name)
}

func usageErrorf(format string, v ...any) error { return usageError{error: fmt.Errorf(format, v...)} }

func usageHint(err error, hint string) error { return usageError{err, hint} }

// errRefused says that the input is at fault and that all about it was told.
var errRefused = errors.New("refused")

// exitCode tells an error that was not told yet.
func (d *desk) exitCode(err error) int {
	var usage usageError
	var topic cli.ExitCoder
	switch {
	case err == nil:
		return 0
	case errors.Is(err, errRefused):
		return exitData
	case errors.As(err, &usage):
		d.tell("error", err.Error())
		if usage.hint != "" {
			d.tell("hint", usage.hint)
		}
		return exitUsage
	case errors.As(err, &topic): // the parser's own, of help for what is no command
		d.tell("error", "there is no help for that: turfplat help lists the commands")
		return exitUsage
	}
	d.tell("error", err.Error())
	return exitData
}
