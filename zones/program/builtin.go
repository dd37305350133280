package program

import (
	_ "embed"
	"fmt"
	"strings"
)

// The built-in programs hold the whole season of their kind of grass.
var (
	//go:embed cool.yaml
	coolYAML string
	//go:embed warm.yaml
	warmYAML string
)

// builtIns are the programs that come with turfplat.
var builtIns = map[string]string{"cool": coolYAML, "warm": warmYAML}

// BuiltIn returns a program that comes with turfplat: cool or warm. It is
// false if there is none of the name.
func BuiltIn(name string) (*Program, bool) {
	text, ok := builtIns[name]
	if !ok {
		return nil, false
	}
	p, problems := Read(strings.NewReader(text), name)
	if p == nil {
		panic(fmt.Sprintf("program: %s.yaml: %s", name, problems[0])) // part of the program
	}
	p.builtIn = true
	return p, true
}
