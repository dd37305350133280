package ingest

import (
	"bytes"
	"os"
	"testing"
)

// osmFuzzLimits are small, so that what goes over them is found too.
var osmFuzzLimits = Limits{
	Bytes: 1 << 20, Features: 1000, Positions: 10_000, Problems: 100,
	Nodes: 10_000, Ways: 1000, Members: 10_000, Tags: 1000,
}

// checkHostile: no input makes the reader panic, and what is not refused
// writes what reads back the same.
func checkHostile(t *testing.T, input []byte) {
	for c := range OSM(bytes.NewReader(input), "x", osmFuzzLimits) {
		if c.Refused() {
			continue
		}
		for i, f := range c.Features {
			if f.Geometry == nil || f.Index != i || f.ID == "" {
				t.Errorf("feature %d: %v %q", i, f.Geometry, f.ID)
			}
		}
		checkWrites(t, c)
	}
}

// FuzzOSM: XML and JSON.
func FuzzOSM(f *testing.F) {
	for _, r := range mapRules {
		f.Add([]byte("<osm>" + r.xml + "</osm>"))
	}
	for _, r := range relationRules {
		f.Add([]byte("<osm>" + corners + r.xml + "</osm>"))
	}
	for _, r := range overpassRules {
		f.Add([]byte(`{"elements":[` + r.elements + `]}`))
	}
	for _, r := range brokenMaps {
		if len(r.text) < 1<<16 {
			f.Add([]byte(r.text))
		}
	}
	for _, path := range realFiles(f, "osm/*.osm") {
		if text, err := os.ReadFile(path); err == nil && len(text) < 50_000 {
			f.Add(text)
		}
	}
	f.Fuzz(checkHostile)
}

func FuzzPBF(f *testing.F) {
	for _, name := range []string{"invented.osm.pbf", "invented-plain.osm.pbf", "invented-ways.osm.pbf"} {
		f.Add(testFile(f, name))
	}
	for _, r := range pbfRules {
		if len(r.data) < 1<<16 {
			f.Add(append(bytes.Clone(pbfHead), r.data...))
		}
	}
	for _, group := range pbfBroken {
		f.Add(append(bytes.Clone(pbfHead), pbfData(natural, group)...))
	}
	f.Fuzz(checkHostile)
}
