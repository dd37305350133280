package ingest

import (
	"slices"
	"strings"
)

// checkCRS judges a member "crs", which the GeoJSON of 2008 had and RFC 7946 4
// took out: names of WGS 84 longitude and latitude do no harm, any other would
// put everything in the wrong place.
func checkCRS(crs []byte) (finding, bool) {
	if crs[0] == 'n' {
		return finding{}, false
	}
	name := crsName(crs)
	if isWGS84(name) {
		return finding{
			severity: Note, code: "crs_old", plural: "times",
			text: "names its coordinate system (" + Quoted(name) + "), which is no longer needed",
		}, true
	}
	text := "has a coordinate system without a name"
	if name != "" {
		text = "is in the coordinate system " + Quoted(name)
	}
	return finding{
		severity: Refusal, code: "crs_unknown", plural: "times",
		text: text + ", not in WGS 84 longitude and latitude",
		hint: "convert to longitude and latitude (WGS 84, EPSG:4326) first",
	}, true
}

func crsName(crs []byte) string {
	properties := Properties{[]Member{{"crs", crs}}}.nested("crs").nested("properties")
	name, _ := properties.Text("name")
	return name
}

// isWGS84 knows OGC:CRS84, EPSG:4326 and EPSG:4979 in all the ways they are
// written: short, as urn:ogc:def:crs:... and as http://www.opengis.net/def/crs/...
func isWGS84(name string) bool {
	parts := strings.FieldsFunc(strings.ToUpper(name), func(r rune) bool { return r == ':' || r == '/' })
	if len(parts) == 0 {
		return false
	}
	switch code := parts[len(parts)-1]; code {
	case "CRS84", "CRS84H":
		return true
	case "4326", "4979":
		return slices.Contains(parts, "EPSG")
	}
	return false
}
