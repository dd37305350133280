package main

import (
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

var (
	flagLine = regexp.MustCompile(`(?m)^    --([a-z-]+)`)
	anyFlag  = regexp.MustCompile(`--([a-z-]+)`)
)

// A help page fits a terminal of 80 columns, but for examples to be copied. It
// lists each flag of its command once, and speaks of none that is not there.
func TestHelpPages(t *testing.T) {
	app := newApp(newDesk(nil, io.Discard, io.Discard))
	everywhere := []string{"help"}
	for _, command := range app.Commands {
		for _, f := range command.Flags {
			everywhere = append(everywhere, f.Names()[0])
		}
	}
	checkWidth(t, "turfplat", app.CustomAppHelpTemplate)
	for _, command := range app.Commands {
		page := command.CustomHelpTemplate
		checkWidth(t, command.Name, page)
		var listed, taken []string
		for _, m := range flagLine.FindAllStringSubmatch(page, -1) {
			listed = append(listed, m[1])
		}
		for _, f := range command.Flags {
			if name := f.Names()[0]; name != "output" { // listed as -o
				taken = append(taken, name)
			}
		}
		if command.Name == "version" {
			continue // its one flag stands in the usage
		}
		slices.Sort(listed)
		slices.Sort(taken)
		if !slices.Equal(listed, taken) {
			t.Errorf("%s: help lists %q, the command takes %q", command.Name, listed, taken)
		}
		for _, m := range anyFlag.FindAllStringSubmatch(page, -1) {
			if !slices.Contains(everywhere, m[1]) {
				t.Errorf("%s: help speaks of --%s, which no command has", command.Name, m[1])
			}
		}
	}
}

func checkWidth(t *testing.T, name, page string) {
	t.Helper()
	for _, line := range strings.Split(page, "\n") {
		if utf8.RuneCountInString(line) > 80 && !strings.HasPrefix(line, "    $ ") {
			t.Errorf("%s: line of %d columns: %s", name, utf8.RuneCountInString(line), line)
		}
	}
}
