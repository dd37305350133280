package render

import (
	"cmp"
	"encoding/binary"
	"maps"
	"slices"
	"unicode"

	"github.com/tdewolff/canvas/text"
)

// joining says how the letters of a font change beside others, as viewers of a
// drawing must be told: the subsetting library leaves it out. It is made for the
// letters that are drawn, Arabic ones alone having forms.
type joining struct {
	forms map[string]map[uint16]uint16 // the form of a glyph, by OpenType feature
	ties  map[string]tie               // by the glyphs that are tied
}

// A tie is a glyph that stands for several.
type tie struct{ tied, glyph []uint16 }

// formFeatures are the OpenType features that letters change by, with what
// stands beside a letter then; a joiner takes the place of another letter.
var formFeatures = []struct{ tag, before, after string }{
	{"fina", zeroWidthJoiner, ""},
	{"init", "", zeroWidthJoiner},
	{"medi", zeroWidthJoiner, zeroWidthJoiner},
}

const zeroWidthJoiner = "\u200d"

// joiningOf tells how the letters of runs of a face change.
func (f Face) joiningOf(runs []run) joining {
	shaper.Lock()
	defer shaper.Unlock()
	j := joining{forms: make(map[string]map[uint16]uint16), ties: make(map[string]tie)}
	for _, feature := range formFeatures {
		j.forms[feature.tag] = make(map[uint16]uint16)
	}
	for _, r := range runs {
		for _, letter := range r.text {
			if unicode.Is(unicode.Arabic, letter) {
				f.addForms(&j, string(letter))
			}
		}
		for _, g := range r.glyphs {
			letters := slices.DeleteFunc([]rune(g.letters), func(r rune) bool { return !unicode.Is(unicode.Arabic, r) || unicode.Is(unicode.M, r) })
			if len(letters) > 1 {
				f.addTies(&j, letters)
			}
		}
	}
	return j
}

// addForms adds the forms of a letter.
func (f Face) addForms(j *joining, letter string) {
	alone := f.between("", letter, "")
	for _, feature := range formFeatures {
		form := f.between(feature.before, letter, feature.after)
		if len(alone) == 1 && len(form) == 1 && form[0] != alone[0] {
			j.forms[feature.tag][alone[0]] = form[0]
		}
	}
}

// addTies adds the glyphs that stand for letters together, whatever is beside
// them.
func (f Face) addTies(j *joining, letters []rune) {
	for _, before := range []string{"", zeroWidthJoiner} {
		for _, after := range []string{"", zeroWidthJoiner} {
			glyph := f.between(before, string(letters), after)
			var tied []uint16
			for i, letter := range letters {
				left, right := zeroWidthJoiner, zeroWidthJoiner
				if i == 0 {
					left = before
				}
				if i == len(letters)-1 {
					right = after
				}
				tied = append(tied, f.between(left, string(letter), right)...)
			}
			if len(glyph) == 1 && len(tied) == len(letters) {
				j.ties[string(bytesOf(tied))] = tie{tied, glyph}
			}
		}
	}
}

// between returns the glyphs of letters that stand between others.
func (f Face) between(before, letters, after string) []uint16 {
	var glyphs []uint16
	for _, g := range f.shape(before+letters+after, text.RightToLeft) {
		if at := int(g.Cluster); at >= len(before) && at < len(before)+len(letters) {
			glyphs = append(glyphs, g.ID)
		}
	}
	return glyphs
}

// glyphs are all that letters may change from and to, in order.
func (j joining) glyphs() []uint16 {
	var all []uint16
	for _, forms := range j.forms {
		for from, to := range forms {
			all = append(all, from, to)
		}
	}
	for _, t := range j.ties {
		all = append(append(all, t.tied...), t.glyph...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// table is the table GSUB of a font that holds some of the glyphs, numbered as
// they are given (OpenType 1.9.1, "Glyph substitution table"); nil if letters do
// not change.
func (j joining) table(number func(uint16) uint16) []byte {
	type lookup struct {
		tag  string
		kind uint16
		rows []byte
	}
	var lookups []lookup
	for _, feature := range formFeatures {
		if forms := j.forms[feature.tag]; len(forms) > 0 {
			lookups = append(lookups, lookup{feature.tag, 1, singles(forms, number)})
		}
	}
	if len(j.ties) > 0 {
		lookups = append(lookups, lookup{"rlig", 4, ligatures(slices.Collect(maps.Values(j.ties)), number)})
	}
	if len(lookups) == 0 {
		return nil
	}
	count := uint16(len(lookups))
	const noFeature, ignoreMarks = 0xFFFF, 8
	scripts := append(append(bytesOf([]uint16{1}), "arab"...), bytesOf([]uint16{8, 4, 0, 0, noFeature, count})...)
	features, list := bytesOf([]uint16{count}), bytesOf([]uint16{count})
	var featureTables, lookupTables []byte
	for i, l := range lookups {
		scripts = append(scripts, bytesOf([]uint16{uint16(i)})...)
		features = append(append(features, l.tag...), bytesOf([]uint16{2 + 6*count + uint16(len(featureTables))})...)
		featureTables = append(featureTables, bytesOf([]uint16{0, 1, uint16(i)})...)
		list = append(list, bytesOf([]uint16{2 + 2*count + uint16(len(lookupTables))})...)
		lookupTables = append(append(lookupTables, bytesOf([]uint16{l.kind, ignoreMarks, 1, 8})...), l.rows...)
	}
	features, list = append(features, featureTables...), append(list, lookupTables...)
	const header = 10
	table := bytesOf([]uint16{1, 0, header, header + uint16(len(scripts)), header + uint16(len(scripts)+len(features))})
	return slices.Concat(table, scripts, features, list)
}

// singles is a single substitution, format 2.
func singles(forms map[uint16]uint16, number func(uint16) uint16) []byte {
	numbered := make(map[uint16]uint16)
	for from, to := range forms {
		numbered[number(from)] = number(to)
	}
	from := slices.Sorted(maps.Keys(numbered))
	words := []uint16{2, 6 + 2*uint16(len(from)), uint16(len(from))}
	for _, g := range from {
		words = append(words, numbered[g])
	}
	return bytesOf(append(words, coverage(from)...))
}

// ligatures is a ligature substitution, format 1, with a set of one ligature or
// more for each glyph that ligatures begin with.
func ligatures(ties []tie, number func(uint16) uint16) []byte {
	sets := make(map[uint16][][]uint16)
	slices.SortFunc(ties, func(a, b tie) int {
		return cmp.Or(cmp.Compare(len(b.tied), len(a.tied)), slices.Compare(a.tied, b.tied)) // longer ones are tried first
	})
	for _, t := range ties {
		words := []uint16{number(t.glyph[0]), uint16(len(t.tied))}
		for _, g := range t.tied[1:] {
			words = append(words, number(g))
		}
		first := number(t.tied[0])
		sets[first] = append(sets[first], words)
	}
	firsts := slices.Sorted(maps.Keys(sets))
	head, count := []uint16{1, 0, uint16(len(firsts))}, uint16(len(firsts))
	var body []uint16
	for _, first := range firsts {
		head = append(head, 2*(3+count+uint16(len(body))))
		set, tables := []uint16{uint16(len(sets[first]))}, []uint16(nil)
		for _, words := range sets[first] {
			set = append(set, 2*(1+uint16(len(sets[first]))+uint16(len(tables))))
			tables = append(tables, words...)
		}
		body = append(append(body, set...), tables...)
	}
	head[1] = 2 * (3 + count + uint16(len(body)))
	return bytesOf(slices.Concat(head, body, coverage(firsts)))
}

// coverage lists glyphs, in order.
func coverage(glyphs []uint16) []uint16 {
	return append([]uint16{1, uint16(len(glyphs))}, glyphs...)
}

func bytesOf(words []uint16) []byte {
	var out []byte
	for _, w := range words {
		out = binary.BigEndian.AppendUint16(out, w)
	}
	return out
}
