package main

import (
	"fmt"
	"runtime"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo/ingest"
)

func siteOf(id string, line int) *ingest.Collection {
	header := fmt.Sprintf(`{"id":%q}`, id)
	return &ingest.Collection{Source: "route.ndjson", Line: line, Members: []ingest.Member{{Name: "site", Value: []byte(header)}}}
}

// TestSiteIDsBound tries that no more ids are remembered than may be, that this is
// told once, and that repeats of those that are remembered are found all the same.
func TestSiteIDsBound(t *testing.T) {
	ids := newSiteIDs()
	ids.most = 2
	var told []string
	for i, id := range strings.Fields("a b a c d d b") {
		c := siteOf(id, i+1)
		ids.look(c)
		for _, p := range c.Problems {
			told = append(told, p.Code+" "+p.String())
		}
	}
	want := []string{
		`site_id_repeated route.ndjson: line 3: has the id "a" of an earlier site, route.ndjson: line 1`,
		`site_ids_many route.ndjson: line 4: is beyond 2 sites of different ids: from here on only repeats of those are told`,
		`site_id_repeated route.ndjson: line 7: has the id "b" of an earlier site, route.ndjson: line 2`,
	}
	if !slices.Equal(told, want) {
		t.Errorf("told\n%s", strings.Join(told, "\n"))
	}
	if len(ids.first) != ids.most {
		t.Errorf("remembers %d ids", len(ids.first))
	}
}

func BenchmarkSiteIDs(b *testing.B) {
	before := heap()
	ids := newSiteIDs()
	n := 0
	for b.Loop() {
		n++
		ids.look(siteOf(fmt.Sprint("lot-", n), n))
	}
	b.ReportMetric(float64(heap()-before)/float64(len(ids.first)), "B/id")
	runtime.KeepAlive(ids)
}

func heap() uint64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}
