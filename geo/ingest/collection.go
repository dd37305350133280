package ingest

import "encoding/json"

// A Collection is one site as read.
type Collection struct {
	Source   string
	Line     int      // where the site begins in a newline-delimited input, else 0
	Members  []Member // of the collection, in order, but for type and features
	Features []*Feature
	Problems []Problem // in the order of the input
	// Digest is the SHA-256 sum of the bytes read: the whole input, or in a
	// newline-delimited one the site's lines without their last line end.
	Digest [32]byte
}

// Member returns the value of a member of the collection.
func (c *Collection) Member(name string) (json.RawMessage, bool) { return lookup(c.Members, name) }

// Within returns what stands in the object that a member of the collection is;
// ok is false if the member is something else, and true if there is none or it
// is null.
func (c *Collection) Within(member string) (p Properties, ok bool) {
	return Properties{c.Members}.Within(member)
}

// SetMember gives a member of the collection a value. It panics if value has
// no JSON form.
func (c *Collection) SetMember(name string, value any) {
	c.Members = with(c.Members, name, marshal(value))
}

// SetWithin gives key a value inside the object that a member of the
// collection is, in its old place or at the end, and leaves the rest of the
// object as it was written. A member that is missing or no object becomes one.
// It panics if value has no JSON form.
func (c *Collection) SetWithin(member, key string, value any) {
	var inside []Member
	if raw, ok := c.Member(member); ok && len(raw) > 0 && raw[0] == '{' {
		inside = membersOf(raw)
	}
	c.Members = with(c.Members, member, appendObject(nil, with(inside, key, marshal(value))))
}

// Refused reports whether anything in the site blocks it.
func (c *Collection) Refused() bool { return Refuses(c.Problems) }

// Place says where a feature of the collection stands, for problems found
// later on.
func (c *Collection) Place(f *Feature) Place {
	source, line := f.source, f.line
	if source == "" {
		source = c.Source
	}
	if line == 0 {
		line = c.Line
	}
	return Place{Source: source, Line: line, Feature: f.Index, Label: f.Label()}
}
