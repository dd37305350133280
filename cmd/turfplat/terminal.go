package main

import (
	"io"
	"io/fs"
	"os"
)

// isTerminal reports whether an output is a screen.
func isTerminal(out io.Writer) bool {
	f, ok := out.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&fs.ModeCharDevice != 0
}

// piped reports whether an input is there to be read, and no keyboard.
func piped(in io.Reader) bool {
	f, ok := in.(*os.File)
	if !ok {
		return in != nil
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&fs.ModeCharDevice == 0
}
