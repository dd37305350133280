package ingest

import "slices"

// objects reads the members of JSON objects and keeps one copy of each name.
// The zero value keeps none, and serves a single object.
type objects struct {
	names   map[string]string
	reading []Member // reused
	room    []Member // for those of the next objects
}

func newObjects() *objects { return &objects{names: make(map[string]string)} }

// membersOf reads a single object.
func membersOf(object []byte) []Member {
	members, _, _ := new(objects).members(object)
	return members
}

// members reads an object. Of a name given twice the last value counts;
// repeated is one such name, and found tells whether there is any.
func (o *objects) members(object []byte) (members []Member, repeated string, found bool) {
	o.reading = o.reading[:0]
	for name, value := range pairs(object) {
		o.reading = append(o.reading, Member{o.name(name), value})
	}
	if repeated, found = repeatedName(o.reading); found {
		return lastOfEach(o.reading), repeated, true
	}
	return o.kept(), "", false
}

// kept returns the members that were read, in room that several objects share.
func (o *objects) kept() []Member {
	const roomy = 64 // members, of some twenty objects
	if o.names == nil {
		return slices.Clone(o.reading)
	}
	n := len(o.reading)
	if cap(o.room)-len(o.room) < n {
		o.room = make([]Member, 0, max(n, roomy))
	}
	start := len(o.room)
	o.room = append(o.room, o.reading...)
	return o.room[start:len(o.room):len(o.room)]
}

// judged reads an object and judges what any GeoJSON object may have: a name
// given twice, a coordinate system.
func (o *objects) judged(object []byte) (members []Member, fs findings) {
	members, repeated, found := o.members(object)
	if found {
		fs.add(repeatedMember(repeated))
	}
	if crs, ok := lookup(members, "crs"); ok {
		if f, ok := checkCRS(crs); ok {
			fs.add(f)
		}
	}
	return members, fs
}

func repeatedMember(name string) finding {
	return finding{
		severity: Warning, code: "member_repeated",
		text: "member " + Quoted(name) + " is given twice, took the last", plural: "members",
	}
}

// name unquotes a member's name.
func (o *objects) name(quoted []byte) string {
	const most = 1 << 12 // names kept, to bound the memory
	inner := quoted[1 : len(quoted)-1]
	if name, ok := o.names[string(inner)]; ok {
		return name
	}
	name := unquote(quoted)
	if o.names != nil && len(o.names) < most && name == string(inner) {
		o.names[name] = name
	}
	return name
}

// repeatedName finds a name that stands in members twice.
func repeatedName(members []Member) (string, bool) {
	const few = 16 // up to which comparing all beats a map
	if len(members) <= few {
		for i, m := range members {
			if find(members[:i], m.Name) >= 0 {
				return m.Name, true
			}
		}
		return "", false
	}
	seen := make(map[string]bool, len(members))
	for _, m := range members {
		if seen[m.Name] {
			return m.Name, true
		}
		seen[m.Name] = true
	}
	return "", false
}

// lastOfEach keeps the last value of each name, where the name first stands.
func lastOfEach(members []Member) []Member {
	var kept []Member
	at := make(map[string]int, len(members))
	for _, m := range members {
		if i, ok := at[m.Name]; ok {
			kept[i].Value = m.Value
			continue
		}
		at[m.Name] = len(kept)
		kept = append(kept, m)
	}
	return kept
}
