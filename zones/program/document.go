package program

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/spelling"
)

// A document is a program file being read. What is wrong is noted with its
// place, and reading goes on.
type document struct {
	source   string
	step     string // the id of the step being read
	problems []ingest.Problem
}

// A key of a mapping, and how its value is read.
type key struct {
	name string
	read func(*yaml.Node)
}

func (d *document) place(n *yaml.Node) ingest.Place {
	return ingest.Place{Source: d.source, Line: n.Line, Column: n.Column, Feature: -1, Label: d.step}
}

func (d *document) refuse(n *yaml.Node, code, text, hint string) {
	d.problems = append(d.problems, ingest.Problem{Severity: ingest.Refusal, Code: code, Place: d.place(n), Text: text, Hint: hint})
}

// warn notes what a program may well mean otherwise.
func (d *document) warn(n *yaml.Node, code, text, hint string) {
	d.problems = append(d.problems, ingest.Problem{Severity: ingest.Warning, Code: code, Place: d.place(n), Text: text, Hint: hint})
}

// refused reports whether anything keeps the file from being a program.
func (d *document) refused() bool {
	return slices.ContainsFunc(d.problems, isRefusal)
}

func isRefusal(p ingest.Problem) bool { return p.Severity == ingest.Refusal }

// fault notes what an error says, under the name of the key.
func (d *document) fault(n *yaml.Node, name string, err error) {
	var wrong *material.InputError
	if errors.As(err, &wrong) {
		d.refuse(n, "program_value", name+": "+wrong.Text, wrong.Hint)
		return
	}
	d.refuse(n, "program_value", name+": "+err.Error(), "")
}

// mapping reads the keys of a mapping and returns where each of them stands.
func (d *document) mapping(n *yaml.Node, name string, keys []key) map[string]*yaml.Node {
	at := make(map[string]*yaml.Node)
	if n.Kind != yaml.MappingNode {
		d.refuse(n, "program_form", name+" must hold keys, such as "+keys[0].name+": ...", "")
		return at
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, value := n.Content[i], n.Content[i+1]
		found := findKey(keys, k.Value)
		switch {
		case found == nil && isNull(value) && n.Style&yaml.FlowStyle != 0:
			d.refuse(k, "program_key", fmt.Sprintf("%s has no key %s", name, ingest.Quoted(k.Value)), "in braces a comma ends a value: quote what holds one, as in \"2,4-D\"")
		case found == nil:
			d.refuse(k, "program_key", fmt.Sprintf("%s has no key %s", name, ingest.Quoted(k.Value)), keyHint(k.Value, keys))
		case at[k.Value] != nil:
			d.refuse(k, "program_key", fmt.Sprintf("key %s stands twice in %s", k.Value, name), "")
		case isNull(value):
			d.refuse(k, "program_value", k.Value+" has no value", "leave the key out or give it one")
		default:
			at[k.Value] = value
			found.read(value)
		}
	}
	return at
}

func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

func findKey(keys []key, name string) *key {
	for i := range keys {
		if keys[i].name == name {
			return &keys[i]
		}
	}
	return nil
}

func keyHint(written string, keys []key) string {
	var names []string
	for _, k := range keys {
		names = append(names, k.name)
	}
	if near := spelling.Nearest(written, names); near != "" {
		return "did you mean " + near + "?"
	}
	return "its keys are " + strings.Join(names, ", ")
}

// items calls read for each item of a list; a value that is no list is its own
// only item.
func (d *document) items(n *yaml.Node, read func(*yaml.Node)) {
	if n.Kind != yaml.SequenceNode {
		read(n)
		return
	}
	for _, item := range n.Content {
		read(item)
	}
}

// value returns a reader of one scalar.
func value[T any](d *document, name string, into *T, parse func(string) (T, error)) key {
	return key{name, func(n *yaml.Node) {
		if v, ok := scalar(d, n, name, parse); ok {
			*into = v
		}
	}}
}

// values returns a reader of a scalar or a list of them.
func values[T any](d *document, name string, into *[]T, parse func(string) (T, error)) key {
	return key{name, func(n *yaml.Node) {
		d.items(n, func(item *yaml.Node) {
			if v, ok := scalar(d, item, name, parse); ok {
				*into = append(*into, v)
			}
		})
	}}
}

func scalar[T any](d *document, n *yaml.Node, name string, parse func(string) (T, error)) (v T, ok bool) {
	if n.Kind != yaml.ScalarNode {
		d.refuse(n, "program_form", name+" must be one value, not a list or keys", "")
		return v, false
	}
	v, err := parse(n.Value)
	if err != nil {
		d.fault(n, name, err)
	}
	return v, err == nil
}

func asText(text string) (string, error) {
	if strings.TrimSpace(text) == "" {
		return "", errors.New("is empty")
	}
	return text, nil
}

func asBool(text string) (bool, error) {
	switch text {
	case "true":
		return true, nil
	case "false":
		return false, nil
	}
	return false, errors.New(ingest.Quoted(text) + " is not true or false")
}

// whole returns a parser of whole numbers from 1.
func whole(most int) func(string) (int, error) {
	return func(text string) (int, error) {
		n, err := strconv.Atoi(text)
		if err != nil || n < 1 || n > most {
			return 0, fmt.Errorf("%s is not a whole number from 1 to %d", ingest.Quoted(text), most)
		}
		return n, nil
	}
}

// oneOf returns a parser of the words of a list.
func oneOf[T ~string](words []T) func(string) (T, error) {
	return func(text string) (T, error) {
		var names []string
		for _, w := range words {
			if string(w) == text {
				return w, nil
			}
			names = append(names, string(w))
		}
		hint := "it is one of " + strings.Join(names, ", ")
		if near := spelling.Nearest(text, names); near != "" {
			hint = "did you mean " + near + "?"
		}
		return "", &material.InputError{Text: ingest.Quoted(text) + " is not known", Hint: hint}
	}
}

// quantity returns a parser of quantities with their unit.
func quantity[T any](of func(material.Quantity) (T, error)) func(string) (T, error) {
	return func(text string) (T, error) {
		q, err := material.Parse(text)
		if err != nil {
			var none T
			return none, err
		}
		return of(q)
	}
}
