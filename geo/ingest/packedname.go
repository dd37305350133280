package ingest

import "strings"

// UnpackedName is the name of a file without the ending that says how it is
// packed: walk.csv of walk.csv.gz. Readers take text that was unpacked already;
// its name tells the format where the content leaves it open.
func UnpackedName(name string) string {
	for _, ending := range []string{".gz", ".zst"} {
		if at := len(name) - len(ending); at > 0 && strings.EqualFold(name[at:], ending) {
			return name[:at]
		}
	}
	return name
}
