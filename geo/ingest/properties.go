package ingest

import (
	"encoding/json"
	"iter"
	"slices"
	"strconv"
	"strings"
)

// Properties are the attributes of a feature: names in the order read, values
// as they were written. The zero value is empty and ready to use. A plain copy
// shares its values with the original; use [Properties.Clone] before changing
// one of them.
type Properties struct {
	members []Member
}

// Clone returns properties that can be changed without changing p.
func (p Properties) Clone() Properties { return Properties{slices.Clone(p.members)} }

// Has reports whether key is there, be it null.
func (p Properties) Has(key string) bool { return find(p.members, key) >= 0 }

// Raw returns the JSON text of a value.
func (p Properties) Raw(key string) (json.RawMessage, bool) { return lookup(p.members, key) }

// Within returns what stands in the object that a property is; ok is false if
// the property is something else, and true if there is none or it is null.
func (p Properties) Within(key string) (within Properties, ok bool) {
	raw, there := p.Raw(key)
	switch {
	case !there || len(raw) == 0 || raw[0] == 'n':
		return Properties{}, true
	case raw[0] != '{':
		return Properties{}, false
	}
	return Properties{membersOf(raw)}, true
}

// Keys returns the names in order.
func (p Properties) Keys() []string {
	keys := make([]string, len(p.members))
	for i, m := range p.members {
		keys[i] = m.Name
	}
	return keys
}

// All yields names and the JSON text of their values, in order.
func (p Properties) All() iter.Seq2[string, json.RawMessage] {
	return func(yield func(string, json.RawMessage) bool) {
		for _, m := range p.members {
			if !yield(m.Name, m.Value) {
				return
			}
		}
	}
}

// Text returns a string, or a number or truth value as it was written.
func (p Properties) Text(key string) (string, bool) {
	raw, ok := p.Raw(key)
	if !ok {
		return "", false
	}
	return scalarText(raw)
}

// Number returns a finite number, or that of a string holding nothing else.
func (p Properties) Number(key string) (float64, bool) {
	text, _ := p.Text(key)
	text = strings.TrimSpace(text)
	if text == "" || strings.Trim(text, "0123456789+-.eE") != "" {
		return 0, false // ParseFloat also takes infinities and hexadecimals
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}

// Bool returns a truth value, or that of the strings true, yes, false and no.
func (p Properties) Bool(key string) (value, ok bool) {
	switch text, _ := p.Text(key); text {
	case "true", "yes":
		return true, true
	case "false", "no":
		return false, true
	}
	return false, false
}

// Tag returns a map-data tag: the property itself, else the entry of an object
// called tags, which may also be given as a string holding that object.
func (p Properties) Tag(key string) (string, bool) {
	if text, ok := p.Text(key); ok {
		return text, true
	}
	return p.nested("tags").Text(key)
}

// nested returns the properties inside the object, or the string holding an
// object, called key.
func (p Properties) nested(key string) Properties {
	raw, ok := p.Raw(key)
	if !ok || len(raw) == 0 {
		return Properties{}
	}
	if raw[0] == '"' {
		raw = wellFormed([]byte(unquote(raw)))
	}
	if len(raw) == 0 || raw[0] != '{' {
		return Properties{}
	}
	return Properties{membersOf(raw)}
}

// Set gives key a value, in its old place or at the end. It panics if value
// has no JSON form.
func (p *Properties) Set(key string, value any) { p.members = with(p.members, key, marshal(value)) }

// Delete takes key away.
func (p *Properties) Delete(key string) { p.members = without(p.members, key) }
