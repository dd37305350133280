package turf

import (
	"strings"
	"unicode"

	"example.org/turfplat/zones/spelling"
)

// Find returns the grass that goes by a name: its own or another, in any case,
// singular or plural, with or without the word grass.
func (t *Table) Find(name string) (Species, bool) {
	i := t.index(name)
	if i < 0 {
		return Species{}, false
	}
	return t.species[i], true
}

// index is where the grass of a name stands, -1 if there is none.
func (t *Table) index(name string) int {
	if i, known := t.at[key(name)]; known {
		return i
	}
	return -1
}

func (s Species) names() []string { return append([]string{s.Name}, s.Also...) }

// key is what is compared of a name: its letters and figures, without the
// ending grass or a plural s.
func key(name string) string {
	name = strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, name)
	if saint, ok := strings.CutPrefix(name, "saint"); ok {
		name = "st" + saint
	}
	for _, ending := range []string{"grasses", "grass", "s"} {
		if stem := strings.TrimSuffix(name, ending); stem != "" && stem != name && !strings.HasSuffix(stem, "s") {
			return stem
		}
	}
	return name
}

// Nearest returns the name that was perhaps meant by one that is not known;
// "" if none is near.
func (t *Table) Nearest(name string) string {
	var known []string
	for _, s := range t.species {
		for _, n := range s.names() {
			known = append(known, key(n))
		}
	}
	if at, found := t.at[spelling.Nearest(key(name), known)]; found {
		return t.species[at].Name
	}
	return ""
}
