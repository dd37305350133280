package ingest

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
)

// A Member is one name and value of a JSON object, the value as it was
// written.
type Member struct {
	Name  string
	Value json.RawMessage
}

// find returns the index of the member called name, or -1.
func find(members []Member, name string) int {
	return slices.IndexFunc(members, func(m Member) bool { return m.Name == name })
}

// lookup returns the value of the member called name.
func lookup(members []Member, name string) (json.RawMessage, bool) {
	if i := find(members, name); i >= 0 {
		return members[i].Value, true
	}
	return nil, false
}

// with returns members with name set: in its place if it stands there
// already, else at the end.
func with(members []Member, name string, value json.RawMessage) []Member {
	if i := find(members, name); i >= 0 {
		members[i].Value = value
		return members
	}
	return append(members, Member{name, value})
}

// without returns members less the one called name.
func without(members []Member, name string) []Member {
	return slices.DeleteFunc(members, func(m Member) bool { return m.Name == name })
}

// marshal gives the JSON text of a value. It panics on values that have none
// (a channel, NaN): those are mistakes of the caller, not of the input.
func marshal(value any) json.RawMessage {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(value); err != nil {
		panic(fmt.Sprintf("ingest: value has no JSON form: %v", err))
	}
	return bytes.TrimSuffix(b.Bytes(), []byte{'\n'})
}
