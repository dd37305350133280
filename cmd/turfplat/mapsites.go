package main

import (
	"cmp"
	"strings"
)

// eachSite stands for the id of a site in the name of an output.
const eachSite = "{id}"

// naming reports whether an output names a file for each site.
func naming(output string) bool { return strings.Contains(output, eachSite) }

// drawMaps draws each of many sites into files of its own, written when it is
// drawn.
func (o *order) drawMaps(d drawing) error {
	pattern := o.output
	defer func() { o.output = pattern }()
	written := make(map[string]string) // ids by the file
	return o.each(func(s surveyed) error {
		o.output = strings.ReplaceAll(pattern, eachSite, fileName(s.site.ID))
		if other, taken := written[o.output]; taken {
			return usageErrorf("sites %s and %s would both be written to %s: give each its own id", other, s.site.ID, o.output)
		}
		written[o.output] = s.site.ID
		if err := o.checkOutput(o.output); err != nil {
			return err
		}
		drawn, err := o.leaves(s, d)
		if err != nil {
			return err
		}
		return o.writeMap(drawn)
	})
}

// fileName is an id as a part of the name of a file: what may not stand in one,
// on any system, is a dash.
func fileName(id string) string {
	name := strings.Map(func(r rune) rune {
		if r < ' ' || strings.ContainsRune(`/\:*?"<>|`, r) {
			return '-'
		}
		return r
	}, id)
	return cmp.Or(strings.TrimLeft(name, "."), "site")
}
