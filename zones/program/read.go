package program

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/turf"
)

const (
	mostBytes = 1 << 20 // of a program file
	mostSteps = 200
)

// Read reads a program file: YAML, with the keys that Schema lists. All that
// is wrong or doubtful is told, with line and column; if anything is wrong, there
// is no program. Files over 1 MiB, and anchors and aliases, are refused.
func Read(r io.Reader, source string) (*Program, []ingest.Problem) {
	d := &document{source: source}
	root := d.parse(r)
	if root == nil {
		return nil, d.problems
	}
	p := &Program{Carry: material.Carry.Share()}
	d.program(root, p)
	if d.refused() {
		return nil, d.problems
	}
	return p, d.problems
}

// parse returns the mapping that the file is, nil if it is none.
func (d *document) parse(r io.Reader) *yaml.Node {
	top := &yaml.Node{Line: 0}
	text, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	switch {
	case err != nil:
		d.refuse(top, "read_failed", "cannot be read on: "+err.Error(), "")
		return nil
	case len(text) > mostBytes:
		d.refuse(top, "program_large", "is larger than 1 MiB, which no program is", "is it the right file?")
		return nil
	}
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	var file yaml.Node
	if err := decoder.Decode(&file); err != nil {
		d.refuseSyntax(err)
		return nil
	}
	if err := decoder.Decode(new(yaml.Node)); err != io.EOF {
		d.refuse(top, "program_form", "holds more than one document", "keep one program in a file")
		return nil
	}
	if d.refuseAliases(&file); len(d.problems) > 0 {
		return nil
	}
	return file.Content[0]
}

var yamlLine = regexp.MustCompile(`^(?:yaml: )?line (\d+): `)

// refuseSyntax tells what the YAML parser found, with its line as a place.
func (d *document) refuseSyntax(err error) {
	if errors.Is(err, io.EOF) {
		d.refuse(&yaml.Node{}, "program_form", "is empty", "begin with program: NAME and steps:")
		return
	}
	at := &yaml.Node{}
	text := strings.TrimPrefix(err.Error(), "yaml: ")
	if m := yamlLine.FindStringSubmatch(text); m != nil {
		at.Line, _ = strconv.Atoi(m[1])
		text = text[len(m[0]):]
		if strings.HasPrefix(text, "did not find expected ") {
			at.Line++ // the library counts lines of these from 0
		}
	}
	d.refuse(at, "program_syntax", "is not YAML: "+text, "look at the indentation and the colons there and in the line before")
}

// refuseAliases keeps small files small.
func (d *document) refuseAliases(n *yaml.Node) {
	if n.Kind == yaml.AliasNode || n.Anchor != "" {
		d.refuse(n, "program_alias", "anchors and aliases are not read", "write the value out")
		return
	}
	for _, child := range n.Content {
		d.refuseAliases(child)
	}
}

// program reads the whole file and checks what its steps say of each other.
func (d *document) program(n *yaml.Node, p *Program) {
	at := d.mapping(n, "the program", d.programKeys(p))
	for _, needed := range []string{"program", "steps"} {
		if n.Kind == yaml.MappingNode && at[needed] == nil {
			d.refuse(n, "program_key", "there is no key "+needed, "begin with program: NAME and steps:")
		}
	}
	d.checkSteps(p)
	d.checkCalibrations(p)
}

func (d *document) programKeys(p *Program) []key {
	return []key{
		value(d, "program", &p.Name, asText),
		value(d, "hemisphere", &p.Hemisphere, oneOf(hemispheres)),
		value(d, "season", &p.Season, oneOf(grassSeasons)),
		value(d, "region", &p.Region, asRegion),
		value(d, "carry", &p.Carry, quantity(material.Quantity.Share)),
		values(d, "checked", &p.Checked, oneOf(checks)),
		{"calibrations", func(n *yaml.Node) {
			d.items(n, func(item *yaml.Node) { p.Calibrations = append(p.Calibrations, d.readCalibration(item)) })
		}},
		{"steps", func(n *yaml.Node) { d.steps(n, p) }},
	}
}

var grassSeasons = []turf.Season{turf.Cool, turf.Warm}

func (d *document) steps(n *yaml.Node, p *Program) {
	if n.Kind != yaml.SequenceNode {
		d.refuse(n, "program_form", "steps must be a list, each item beginning with a dash", "")
		return
	}
	if len(n.Content) > mostSteps {
		d.refuse(n, "program_large", fmt.Sprintf("there are %d steps, more than %d", len(n.Content), mostSteps), "")
		return
	}
	for _, item := range n.Content {
		p.Steps = append(p.Steps, d.readStep(item))
	}
	d.step = ""
}
