package ingest

import "slices"

// objects reads the members of JSON objects and keeps one copy of each name.
type objects struct {
	names   map[string]string
	reading []Member // reused
}

func newObjects() *objects { return &objects{names: make(map[string]string)} }

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
	return slices.Clone(o.reading), "", false
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
		text: "member " + quoted(name) + " is given twice, took the last", plural: "members",
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
	if len(o.names) < most && name == string(inner) {
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
