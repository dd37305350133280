package main

import (
	"strings"

	"github.com/urfave/cli/v2"
)

// flagsFirst moves the flags of a command before its files: the parser would
// take a flag that stands after a file for another file, without a word.
func flagsFirst(app *cli.App, args []string) ([]string, error) {
	if len(args) < 2 {
		return args, nil
	}
	command := app.Command(args[1])
	if command == nil {
		return args, nil
	}
	var flags, files []string
	rest := args[2:]
	for i := 0; i < len(rest); i++ {
		arg := rest[i]
		switch {
		case arg == "--":
			files = append(files, rest[i+1:]...)
			i = len(rest)
		case arg == "-" || !strings.HasPrefix(arg, "-"):
			files = append(files, arg)
		default:
			flags = append(flags, arg)
			if takesValue(command, arg) {
				if i++; i == len(rest) {
					return nil, usageErrorf("flag %s needs a value", arg)
				}
				flags = append(flags, rest[i])
			}
		}
	}
	ordered := append([]string{args[0], args[1]}, flags...)
	return append(append(ordered, "--"), files...), nil
}

// takesValue reports whether the argument after a flag is its value. A flag
// the command does not have is left for the parser to refuse.
func takesValue(command *cli.Command, arg string) bool {
	name, _, joined := strings.Cut(strings.TrimLeft(arg, "-"), "=")
	if joined {
		return false
	}
	for _, f := range command.Flags {
		for _, n := range f.Names() {
			if n == name {
				_, isSwitch := f.(*cli.BoolFlag)
				return !isSwitch
			}
		}
	}
	return false
}
