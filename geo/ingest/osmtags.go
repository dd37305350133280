package ingest

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
)

// osmTexts keeps one copy of the texts that recur in tags and roles.
type osmTexts struct {
	names  map[string]string
	values map[string]json.RawMessage
}

func newOSMTexts() osmTexts {
	return osmTexts{make(map[string]string), make(map[string]json.RawMessage)}
}

const (
	osmTextsKept = 1 << 14 // of each sort, to bound the memory
	osmTextShort = 64      // bytes; longer ones hardly recur
)

// name returns a copy of a key or a role.
func (t osmTexts) name(text string) string {
	if kept, ok := t.names[text]; ok {
		return kept
	}
	text = strings.ToValidUTF8(strings.Clone(text), "\ufffd")
	if len(t.names) < osmTextsKept && len(text) <= osmTextShort {
		t.names[text] = text
	}
	return text
}

// value returns a text as a JSON string.
func (t osmTexts) value(text string) json.RawMessage {
	if kept, ok := t.values[text]; ok {
		return kept
	}
	quoted := slices.Clip(appendString(nil, strings.ToValidUTF8(text, "\ufffd")))
	if len(t.values) < osmTextsKept && len(text) <= osmTextShort {
		t.values[strings.Clone(text)] = quoted
	}
	return quoted
}

// muteTags tell of the mapping, not of the thing mapped.
var muteTags = []string{"attribution", "converted_by", "created_by", "fixme", "note", "source"}

// telling reports whether a tag says anything of the thing.
func telling(tag Member) bool {
	return !slices.Contains(muteTags, tag.Name) && !strings.HasPrefix(tag.Name, "source:")
}

// tellingTags are those that say anything.
func tellingTags(tags []Member) []Member {
	var kept []Member
	for _, tag := range tags {
		if telling(tag) {
			kept = append(kept, tag)
		}
	}
	return kept
}

// tagValue is the text of a tag, empty if it is not there or says no.
func tagValue(tags []Member, key string) string {
	value, _ := lookup(tags, key)
	text, _ := scalarText(value)
	if text == "no" {
		return ""
	}
	return text
}

// addsNothing reports whether every tag that says anything stands in known.
func addsNothing(tags, known []Member) bool {
	for _, tag := range tags {
		if !telling(tag) {
			continue
		}
		if value, ok := lookup(known, tag.Name); !ok || !bytes.Equal(value, tag.Value) {
			return false
		}
	}
	return true
}

// siteAttributes are the attributes of a feature in a site file that a tag may
// not be taken for. (Not name and species, which mean the same.)
var siteAttributes = []string{
	"id", "kind", "tags", "apply", "derived", "exposure", "irrigated", "leaf", "transmittance", "source", "sigma_m",
	"height_m", "height_ft", "crown_m", "crown_ft", "width_m", "width_ft", "setback_m", "slope_percent", "aspect_deg",
	"sun_hours", "area_m2",
}

// osmProperties puts tags, sorted by name, beside the id.
func osmProperties(id string, tags []Member) Properties {
	members := make([]Member, 1, len(tags)+1)
	members[0] = Member{"id", appendString(nil, id)}
	var apart []Member
	for i, tag := range tags {
		switch {
		case i+1 < len(tags) && tags[i+1].Name == tag.Name: // the last one counts
		case slices.Contains(siteAttributes, tag.Name):
			apart = append(apart, tag)
		default:
			members = append(members, tag)
		}
	}
	if apart != nil {
		members = append(members, Member{"tags", appendObject(nil, apart)})
	}
	return Properties{members}
}
