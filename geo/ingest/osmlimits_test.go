package ingest

import (
	"bytes"
	"encoding/binary"
	"flag"
	"fmt"
	"io"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"
)

func TestMapLimits(t *testing.T) {
	text := "<osm>" + corners + wayXML(1, "1 2 5 4 1", "landuse=grass") + wayXML(2, "1 2", "barrier=fence height=1") + relationXML(9, "1:outer", "type=multipolygon a=b") + "</osm>"
	for _, tt := range []struct {
		name           string
		enough, scarce Limits
		want           string
	}{
		{"bytes", Limits{Bytes: len(text)}, Limits{Bytes: len(text) - 1}, fmt.Sprintf("limit_bytes: x: has more than %d bytes", len(text)-1)},
		{"depth", Limits{Depth: 3}, Limits{Depth: 2}, "limit_depth: x: elements are nested more than 2 deep, the limit"},
		{"nodes", Limits{Nodes: 13}, Limits{Nodes: 12}, "limit_nodes: x: has more than 12 nodes"},
		{"ways", Limits{Ways: 3}, Limits{Ways: 2}, "limit_ways: x: has more than 2 ways and relations"},
		{"members", Limits{Members: 8}, Limits{Members: 7}, "limit_members: x: has more than 7 nodes of ways and members of relations"},
		{"tags", Limits{Tags: 5}, Limits{Tags: 4}, "limit_tags: x: has more than 4 tags"},
		{"features", Limits{Features: 3}, Limits{Features: 2}, "limit_features: x: has more than 2 features"},
		{"positions of a relation", Limits{Positions: 12}, Limits{Positions: 4}, "limit_positions: x: has more than 4 positions"},
		{"positions", Limits{Positions: 12}, Limits{Positions: 11}, "limit_positions: x: has more than 11 positions"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if c := mapped(t, text, tt.enough); len(c.Features) != 3 || len(c.Problems) > 0 {
				t.Errorf("with enough: got %v %v", drawn(c), said(c.Problems))
			}
			c := mapped(t, text, tt.scarce)
			got := said(c.Problems)
			if len(got) != 1 || !strings.HasPrefix(got[0], "error "+tt.want) || len(c.Features) > 0 {
				t.Errorf("with too little: got %v %v", drawn(c), got)
			}
		})
	}
}

// TestFormLimits: the other forms of an extract keep to the limits too.
func TestFormLimits(t *testing.T) {
	const geometry = `"geometry":[{"lat":0,"lon":0},{"lat":0,"lon":1},{"lat":1,"lon":1}]`
	json := `{"elements":[{"type":"node","id":1,"lat":1,"lon":1,"tags":{"a":"1"}},{"type":"way","id":2,` + geometry + `},{"type":"way","id":3,"nodes":[1,1]},` +
		`{"type":"relation","id":4,"members":[{"type":"way","ref":5,` + geometry + `}]}]}`
	xml := `<osm><way id="2"><nd ref="1" lat="0" lon="0"/></way><relation id="4"><member type="way" ref="5"><nd lat="0" lon="0"/><nd lat="0" lon="1"/></member></relation></osm>`
	pbf := string(inventedPBF(t))
	plain, ways := string(testFile(t, "invented-plain.osm.pbf")), string(testFile(t, "invented-ways.osm.pbf"))
	for _, tt := range []struct {
		name, text     string
		limits, enough Limits
		want           string
	}{
		{"nodes in JSON", json, Limits{Nodes: 6}, Limits{Nodes: 7}, "limit_nodes"},
		{"one node in JSON", json, Limits{Nodes: 1}, Limits{Nodes: 7}, "limit_nodes"},
		{"ways in JSON", json, Limits{Ways: 2}, Limits{Ways: 4}, "limit_ways"},
		{"members in JSON", json, Limits{Members: 8}, Limits{Members: 9}, "limit_members"},
		{"nodes of drawn ways in JSON", json, Limits{Members: 2}, Limits{Members: 9}, "limit_members"},
		{"nodes of ways in JSON", json, Limits{Members: 4}, Limits{Members: 9}, "limit_members"},
		{"members of relations in JSON", json, Limits{Members: 5}, Limits{Members: 9}, "limit_members"},
		{"tags in JSON", strings.Replace(json, `"a":"1"`, `"a":"1","b":"2"`, 1), Limits{Tags: 1}, Limits{Tags: 2}, "limit_tags"},
		{"nodes of drawn members in XML", xml, Limits{Members: 3}, Limits{Members: 4}, "limit_members"},
		{"drawn nodes in XML", xml, Limits{Nodes: 2}, Limits{Nodes: 3}, "limit_nodes"},
		{"nodes in PBF", pbf, Limits{Nodes: 9}, Limits{Nodes: 10}, "limit_nodes"},
		{"ways in PBF", pbf, Limits{Ways: 9}, Limits{Ways: 10}, "limit_ways"},
		{"tags in PBF", pbf, Limits{Tags: 15}, Limits{Tags: 16}, "limit_tags"},
		{"tags of nodes in PBF", pbf, Limits{Tags: 1}, Limits{Tags: 16}, "limit_tags"},
		{"members in PBF", pbf, Limits{Members: 35}, Limits{Members: 36}, "limit_members"},
		{"nodes of ways in PBF", pbf, Limits{Members: 3}, Limits{Members: 36}, "limit_members"},
		{"single nodes in PBF", plain, Limits{Nodes: 9}, Limits{Nodes: 10}, "limit_nodes"},
		{"nodes on ways in PBF", ways, Limits{Nodes: 9}, Limits{}, "limit_nodes"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if c := mapped(t, tt.text, tt.enough); c.Refused() {
				t.Errorf("with enough: %v", said(c.Problems))
			}
			if c := mapped(t, tt.text, tt.limits); len(c.Problems) != 1 || c.Problems[0].Code != tt.want || len(c.Features) > 0 {
				t.Errorf("with too little: %v", said(c.Problems))
			}
		})
	}
}

// TestNestingLimit: an extract whose rings take too long is refused.
func TestNestingLimit(t *testing.T) {
	e := newExtract(DefaultLimits)
	text := "<osm>" + corners + wayXML(1, "1 2 5 4 1", "") + wayXML(2, "11 12 13 14 11", "") + relationXML(9, "1 2", "type=multipolygon a=b") + "</osm>"
	if f := readOSMXML(strings.NewReader(text), e); f != nil {
		t.Fatal(f)
	}
	s := newOSMSite(newSite("x", 0, DefaultLimits), e)
	s.nesting.left = 3
	s.build()
	checkSaid(t, s.done().Problems, "error limit_rings: x: has relations with too many rings within rings, which would take too long")
}

// TestPBFLimits: bytes count as they are packed and unpacked.
func TestPBFLimits(t *testing.T) {
	zeros := pbfBlob("OSMData", pbfField(3, deflated(pbfField(99, make([]byte, 1<<20)))))
	file := slices.Concat(pbfHead, bytes.Repeat(zeros, 10))
	for _, tt := range []struct {
		limit int
		want  string
	}{
		{11 << 20, ""},
		{9 << 20, "error limit_bytes: x: has more than 9437184 bytes when unpacked, the limit for one site"},
		{2000, "error limit_bytes: x: has more than 2000 bytes when unpacked, the limit for one site"},
		{40, "error limit_bytes: x: has more than 40 bytes, the limit for one site"},
	} {
		c := mapped(t, string(file), Limits{Bytes: tt.limit})
		if got := strings.Join(said(c.Problems), "\n"); got != tt.want {
			t.Errorf("limit %d: got %s", tt.limit, got)
		}
	}
	many := pbfData(pbfField(1, bytes.Repeat(pbfField(1), 1000)))
	c := mapped(t, string(slices.Concat(pbfHead, many)), Limits{Tags: 999})
	checkSaid(t, c.Problems, "error limit_tags: x: has more than 999 texts in one block, the limit for one site")
}

var osmLarge = flag.Bool("osm-large", false, "test map extracts at the limits as they are, not at a twentieth of them")

// osmScale is by how much the limits are lowered for the tests.
func osmScale() int {
	if *osmLarge {
		return 1
	}
	return 20
}

func scaledLimits() Limits {
	l, n := DefaultLimits, osmScale()
	return Limits{
		Bytes: l.Bytes / n, Features: l.Features / n, Positions: l.Positions / n,
		Nodes: l.Nodes / n, Ways: l.Ways / n, Members: l.Members / n, Tags: l.Tags / n,
	}
}

// checkMemory: at the limits the reader may use a gigabyte, and a little for
// what does not grow.
func checkMemory(t *testing.T, most uint64) {
	t.Helper()
	still := 0
	if osmScale() > 1 {
		still = 40 << 20
	}
	if allowed := uint64(1<<30/osmScale() + still); most > allowed {
		t.Errorf("took %d MB of %d", most>>20, allowed>>20)
	}
}

// TestHostileMaps: a gigabyte of anything is given up in time, in less than a
// gigabyte of memory.
func TestHostileMaps(t *testing.T) {
	const size = 1 << 30
	node := `<node id="1" lon="1" lat="2">`
	for _, tt := range []struct {
		name   string
		stream *endless
		code   string
	}{
		{"nodes", &endless{start: "<osm>", line: `<node id="1" lon="1" lat="2"/>`}, "limit_nodes"},
		{"nodes with tags", &endless{start: "<osm>", line: node + `<tag k="name" v="Alder Lane"/></node>`}, "limit_features"},
		{"tags of one node", &endless{start: "<osm>" + node, line: `<tag k="k" v="v"/>`}, "limit_tags"},
		{"long tags", &endless{start: "<osm>" + node, line: `<tag k="k" v="` + strings.Repeat("v", 200) + `"/>`}, "limit_bytes"},
		{"ways", &endless{start: "<osm>", line: `<way id="1"><nd ref="1"/></way>`}, "limit_ways"},
		{"nodes of one way", &endless{start: "<osm><way id='1'>", line: `<nd ref="1"/>`}, "limit_members"},
		{"members", &endless{start: "<osm><relation id='1'>", line: `<member type="way" ref="1" role="outer"/>`}, "limit_bytes"},
		{"unknown elements", &endless{start: "<osm>", line: `<lawn/>`}, "limit_bytes"},
		{"one long value", &endless{start: "<osm><node id='", line: "1"}, "limit_bytes"},
		{"one long comment", &endless{start: "<osm><!--", line: "lawn "}, "limit_bytes"},
		{"elements in elements", &endless{start: "<osm>", line: "<a>"}, "limit_depth"},
		{"JSON", &endless{start: `{"elements":[0`, line: `,{"type":"node","id":1,"lat":1,"lon":2}`}, "limit_bytes"},
		{"PBF", &endless{start: string(pbfHead), line: string(pbfBlob("OSMData", pbfField(3, deflated(pbfField(99, make([]byte, 30<<20))))))}, "limit_bytes"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			stop := watchMemory()
			began := time.Now()
			var codes []string
			for c := range OSM(io.LimitReader(tt.stream, size), "x", scaledLimits()) {
				for _, p := range c.Problems {
					codes = append(codes, p.Code)
				}
			}
			most := stop()
			t.Logf("%v, %d MB", time.Since(began).Round(time.Millisecond), most>>20)
			if !slices.Equal(codes, []string{tt.code}) {
				t.Errorf("got problems %v, want %s", codes, tt.code)
			}
			checkMemory(t, most)
		})
	}
}

// watchMemory looks at the heap until it is stopped, and then tells the most
// that was in use.
func watchMemory() (stop func() uint64) {
	runtime.GC()
	done, most := make(chan bool), make(chan uint64)
	go func() {
		var peak uint64
		var m runtime.MemStats
		tick := time.NewTicker(20 * time.Millisecond)
		defer tick.Stop()
		for {
			runtime.ReadMemStats(&m)
			peak = max(peak, m.HeapAlloc)
			select {
			case <-tick.C:
			case <-done:
				most <- peak
				return
			}
		}
	}()
	return func() uint64 { close(done); return <-most }
}

// TestLargestMap: an extract just within every limit is read in less than a
// gigabyte, be it of nodes or of ways.
func TestLargestMap(t *testing.T) {
	limits := scaledLimits()
	for _, tt := range []struct {
		name           string
		objects, nodes int
	}{
		{"nodes", limits.Features, 0},
		{"ways", limits.Ways, limits.Nodes / limits.Ways},
	} {
		t.Run(tt.name, func(t *testing.T) {
			stop := watchMemory()
			began := time.Now()
			var features int
			for c := range OSM(largeMap(tt.objects, tt.nodes, limits.Tags/tt.objects), "x", limits) {
				features = len(c.Features)
				checkSaid(t, c.Problems)
			}
			most := stop()
			t.Logf("%v, %d MB", time.Since(began).Round(time.Millisecond), most>>20)
			if features != tt.objects {
				t.Errorf("got %d features of %d", features, tt.objects)
			}
			checkMemory(t, most)
		})
	}
}

// TestLargestRelation: so is one area of as many positions as there may be.
func TestLargestRelation(t *testing.T) {
	limits := scaledLimits()
	const perWay = 2000
	ways := min(limits.Positions, limits.Nodes) / perWay * 9 / 10
	stop := watchMemory()
	began := time.Now()
	for c := range OSM(spiral(ways, perWay), "x", limits) {
		checkSaid(t, c.Problems)
		if len(c.Features) != 1 || len(c.Features[0].Geometry.(orb.MultiPolygon)[0][0]) < (perWay-1)*ways {
			t.Errorf("got %d features", len(c.Features))
		}
	}
	most := stop()
	t.Logf("%v, %d MB", time.Since(began).Round(time.Millisecond), most>>20)
	checkMemory(t, most)
}

// spiral is a PBF file of one relation whose ways follow each other round a
// circle, at distances that go to and fro.
func spiral(ways, perWay int) io.Reader {
	parts := []io.Reader{bytes.NewReader(pbfHead)}
	var members, roles, kinds []byte
	around := 0 // places
	all := ways * (perWay - 1)
	for w := range ways {
		var refs, lats, lons []int64
		var last [3]int64
		for k := range perWay {
			i := (around + k) % all
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(all))
			r := 1e8 * (1 + float64(i%7)/10)
			at := [3]int64{int64(i), int64(r * sin), int64(r * cos)}
			refs, lats, lons = append(refs, at[0]-last[0]), append(lats, at[1]-last[1]), append(lons, at[2]-last[2])
			last = at
		}
		around += perWay - 1
		parts = append(parts, bytes.NewReader(pbfData(natural, pbfField(2, pbfField(3, pbfNumber(1, uint64(w)), pbfSigned(8, refs...), pbfSigned(9, lats...), pbfSigned(10, lons...))))))
		members = binary.AppendVarint(members, int64(min(w, 1)))
		roles, kinds = append(roles, 0), append(kinds, 1)
	}
	relation := pbfField(4, pbfNumber(1, 9), pbfPacked(2, 1, 3), pbfPacked(3, 2, 4), pbfField(8, roles), pbfField(9, members), pbfField(10, kinds))
	return io.MultiReader(append(parts, bytes.NewReader(pbfData(pbfTexts("type", "multipolygon", "natural", "wood"), pbfField(2, relation))))...)
}

// largeMap is a PBF file of ways with so many nodes and tags each, whose places
// stand with them; or of nodes, if the ways would have none.
func largeMap(objects, nodes, tags int) io.Reader {
	const perBlock = 8000 // as other programs write them
	parts := []io.Reader{bytes.NewReader(pbfHead)}
	for first := 0; first < objects; first += perBlock {
		parts = append(parts, &lazyBlock{first: first, objects: min(perBlock, objects-first), nodes: nodes, tags: tags})
	}
	return io.MultiReader(parts...)
}

// A lazyBlock is made when it is read.
type lazyBlock struct {
	first, objects, nodes, tags int
	r                           *bytes.Reader
}

func (l *lazyBlock) Read(p []byte) (int, error) {
	if l.r == nil {
		l.r = bytes.NewReader(l.block())
	}
	n, err := l.r.Read(p)
	if err == io.EOF {
		l.r = nil
	}
	return n, err
}

func (l *lazyBlock) block() []byte {
	var texts []string
	var group [][]byte
	for i := range l.objects {
		id := l.first + i
		var keys, values []uint64
		for k := range l.tags {
			texts = append(texts, fmt.Sprintf("key%d", k), fmt.Sprintf("value %d of %d", k, id))
			keys, values = append(keys, uint64(len(texts)-1)), append(values, uint64(len(texts)))
		}
		if l.nodes == 0 {
			group = append(group, pbfField(1, pbfNumber(1, uint64(2*id)), pbfPacked(2, keys...), pbfPacked(3, values...), pbfNumber(8, uint64(2*id)), pbfNumber(9, 0)))
			continue
		}
		var refs, lats, lons []int64
		for k := range l.nodes {
			refs, lats, lons = append(refs, int64(k)), append(lats, int64(k%3)), append(lons, int64(k))
		}
		refs[0], lats[0], lons[0] = int64(id)*int64(l.nodes*l.nodes), int64(id), 0
		group = append(group, pbfField(3, pbfNumber(1, uint64(id)), pbfPacked(2, keys...), pbfPacked(3, values...), pbfSigned(8, refs...), pbfSigned(9, lats...), pbfSigned(10, lons...)))
	}
	return pbfData(pbfTexts(texts...), pbfField(2, group...))
}
