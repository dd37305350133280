package zones

import (
	_ "embed"
	"slices"
	"strings"
)

// regionsCSV holds the regions of whose rules something is known here, be it
// setbacks or law of fertilizers: with the letters that the post has for them
// and the region that they lie in, whose rules hold there as well.
//
//go:embed regions.csv
var regionsCSV string

var regions = mustReadRows("regions.csv", regionsCSV, readRegion,
	"region", "code", "within", "note")

// A region is a row of the table.
type region struct{ name, code, within string }

func readRegion(cells []string) (region, bool) {
	r := region{name: cells[0], code: cells[1], within: cells[2]}
	return r, r.name != ""
}

// Regions lists the regions of whose rules something is known here.
func Regions() []string {
	var names []string
	for _, r := range regions {
		names = append(names, r.name)
	}
	return names
}

// FindRegion returns a region by its name or the letters that the post has for
// it, in any case; false if nothing is known of it here.
func FindRegion(name string) (string, bool) {
	name = strings.TrimSpace(name)
	if name == "" {
		return "", false
	}
	for _, r := range regions {
		if strings.EqualFold(name, r.name) || r.code != "" && strings.EqualFold(name, r.code) {
			return r.name, true
		}
	}
	return "", false
}

// nearRegion is the region of which a name is hardly anything but a slip; "" if
// there is none.
func nearRegion(name string) string {
	var lower []string
	for _, r := range regions {
		lower = append(lower, strings.ToLower(r.name))
	}
	meant, _ := FindRegion(nearestKey(name, lower))
	return meant
}

// RegionsAround are the regions whose rules hold in a region: itself, then those
// that it lies in, the nearest first; none if nothing is known of it here.
func RegionsAround(name string) []string {
	var around []string
	for ; known(name); name = regionAround(name) {
		around = append(around, name)
	}
	return around
}

// regionAround is the region that one lies in; "" if that is none of the table.
func regionAround(name string) string {
	for _, r := range regions {
		if r.name == name {
			return r.within
		}
	}
	return ""
}

// known reports whether a region is in the table.
func known(name string) bool {
	return slices.ContainsFunc(regions, func(r region) bool { return r.name == name })
}

// hasSetbacks reports whether any setback rule of a region, or of one that it
// lies in, is known here.
func hasSetbacks(name string) bool {
	around := RegionsAround(name)
	return slices.ContainsFunc(setbackRules, func(r shoreRule) bool { return slices.Contains(around, r.region) })
}
