package render

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"

	"example.org/turfplat/zones"
)

// lacking tells which letters of the names on a site's sheets the typefaces
// lack; it is empty if there are none.
func lacking(s *zones.Site, laid []zones.Zone, shown func(*zones.Object) bool) string {
	var l lettering
	l.of(s.Name)
	for _, z := range laid {
		l.of(z.Name)
		l.of(z.Species)
	}
	for _, o := range slices.Concat(s.Objects, s.Beyond) {
		if shown(o) {
			l.of(o.Name)
		}
	}
	if len(l.missing) == 0 {
		return ""
	}
	return fmt.Sprintf("%c stands for letters that these typefaces lack: %s.", standIn, strings.Join(scriptsOf(l.missing), ", "))
}

// scriptsOf names the scripts of letters (Unicode Standard Annex 24), each
// once, in the order of the letters.
func scriptsOf(letters []rune) []string {
	names := slices.Sorted(maps.Keys(unicode.Scripts))
	var scripts []string
	for _, r := range letters {
		script := "symbols"
		for _, name := range names {
			if name != "Common" && name != "Inherited" && unicode.Is(unicode.Scripts[name], r) {
				script = strings.ReplaceAll(name, "_", " ")
			}
		}
		if !slices.Contains(scripts, script) {
			scripts = append(scripts, script)
		}
	}
	return scripts
}
