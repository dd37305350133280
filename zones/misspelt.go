package zones

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/spelling"
)

// A misspelling is a key that was perhaps meant as one of ours.
type misspelling struct {
	key, meant string
	hint       string
	place      ingest.Place // of the first object that has it
	count      int
}

// stems are the keys that begin with a word in which people leave out what
// their key says besides: the unit, or what the word is of.
var stems = map[string]string{
	"slope": "slope_percent", "aspect": "aspect_deg", "facing": "aspect_deg", "irrigation": "irrigated", "grass": "species",
	"height": "height_m", "width": "width_m", "crown": "crown_m", "setback": "setback_m", "sigma": "sigma_m",
}

// spellable are the keys that a person writes, in their order.
var spellable = slices.DeleteFunc(slices.Sorted(maps.Keys(attributes)), func(key string) bool {
	return attributes[key].sort == anything || key == "derived" || key == sunHours
})

// noteMisspelt keeps a key that is hardly anything but a slip, to be told once
// for all objects that have it.
func (s *Site) noteMisspelt(o *Object, key string) {
	meant, begins := o.meantByStem(key)
	if !begins {
		meant = s.meantBySpelling(key)
	}
	if meant == "" || o.states(meant) {
		return
	}
	for i := range s.misspelt {
		if m := &s.misspelt[i]; m.key == key && m.meant == meant {
			m.count++
			return
		}
	}
	hint := fmt.Sprintf("did you mean %s?", meant)
	if a := attributes[meant]; a.misplaced(o.Kind) {
		hint += " " + a.instead
	}
	s.misspelt = append(s.misspelt, misspelling{key, meant, hint, o.Place, 1})
}

// tellMisspelt warns of the keys that were noted.
func (s *Site) tellMisspelt() {
	for _, m := range s.misspelt {
		text := fmt.Sprintf("%q is not read", m.key)
		if m.count > 1 {
			text += fmt.Sprintf(", here and on %d more objects", m.count-1)
		}
		s.problem(ingest.Warning, "key_unread", m.place, text, m.hint)
	}
	s.misspelt = nil
}

// headerKeys and accessKeys are those of what a file says of the site as a
// whole.
var (
	headerKeys = []string{"id", "name", "units", "revision", "notes", "access", "species", "region"}
	accessKeys = []string{"gate", "parking", "dog", "water", "power", "contact", gateCode}
)

// codeWords are words of keys under which people write a code of the gate.
var codeWords = []string{"code", "pin", "combination", "keypad", "lockbox"}

// tellsOfCode reports whether a key is hardly anything but that of a code.
func tellsOfCode(key string) bool {
	words := strings.FieldsFunc(strings.ToLower(key), func(r rune) bool { return !unicode.IsLetter(r) })
	return slices.ContainsFunc(words, func(word string) bool { return slices.Contains(codeWords, word) })
}

// tellHeaderSlips warns of keys of the header, or of its access, that are hardly
// anything but a slip of one of ours.
func (s *Site) tellHeaderSlips(within string, header ingest.Properties, keys []string) {
	for _, key := range header.Keys() {
		if slices.Contains(keys, key) {
			continue
		}
		meant := nearestKey(key, keys)
		if meant == "" && slices.Contains(keys, gateCode) && tellsOfCode(key) {
			meant = gateCode
		}
		if meant != "" && !header.Has(meant) {
			s.problem(ingest.Warning, "key_unread", s.place(), fmt.Sprintf("%s %q is not read", within, key), "did you mean "+meant+"?")
		}
	}
}

// states reports whether an object has a key, or the same in feet.
func (o *Object) states(key string) bool {
	p := o.Feature.Properties
	inFeet, length := strings.CutSuffix(key, "_m")
	return p.Has(key) || length && p.Has(inFeet+"_ft")
}

// meantByStem is the key that begins like another one, if any does; "" if that
// one says something else: it must stand alone, or its value be a figure. A
// height alone is a map tag, and so is a width of what is no line.
func (o *Object) meantByStem(key string) (meant string, begins bool) {
	stem, rest, _ := strings.Cut(strings.ToLower(key), "_")
	meant, begins = stems[stem]
	switch {
	case stem == "height" && rest == "", stem == "width" && shapes[o.Kind]&line == 0:
		return "", begins
	case rest != "" && !o.figure(key), !attributes[meant].fits(o.Kind):
		return "", begins
	}
	return meant, begins
}

// figure reports whether a value begins like a number.
func (o *Object) figure(key string) bool {
	value, _ := o.Feature.Properties.Text(key)
	return strings.IndexFunc(value, unicode.IsDigit) == 0
}

// fits reports whether an attribute may be meant of an object of a kind.
func (a attribute) fits(k Kind) bool {
	switch {
	case a.on != nil:
		return slices.Contains(a.on, k) || a.misplaced(k)
	case a.stem == "species":
		return k == Turf || k == ZoneKind
	}
	return true
}

// meantBySpelling is the key that is a letter or two from another one, and
// begins with the same; "" if none is.
func (s *Site) meantBySpelling(key string) string {
	meant, known := s.spelt[key]
	if !known {
		meant = nearestKey(key, spellable)
		if s.spelt == nil {
			s.spelt = make(map[string]string)
		}
		s.spelt[key] = meant
	}
	return meant
}

// nearestKey is which of some keys another one is a slip of.
func nearestKey(written string, keys []string) string {
	key := strings.ToLower(written)
	if len(key) < 4 || strings.Contains(key, ":") {
		return "" // too short to tell; a map tag
	}
	best, fewest := "", 3
	for _, known := range keys {
		if known[0] != key[0] || max(len(known)-len(key), len(key)-len(known)) > 2 {
			continue
		}
		allowed := 1
		if len(known) > 6 {
			allowed = 2
		}
		slips := spelling.Slips(lettersOnly(key), lettersOnly(known))
		if slips <= allowed && slips < fewest {
			best, fewest = known, slips
		}
	}
	return best
}

// lettersOnly leaves out what parts words, so that heightM is height_m.
func lettersOnly(key string) string {
	return strings.Map(func(r rune) rune {
		if r == '_' || r == '-' || r == ' ' {
			return -1
		}
		return r
	}, key)
}
