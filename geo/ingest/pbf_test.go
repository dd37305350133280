package ingest

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
)

func digestOf(text []byte) [32]byte { return sha256.Sum256(text) }

const osmTestdata = "../../testdata/osm/"

func testFile(t testing.TB, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(osmTestdata + name)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func inventedPBF(t testing.TB) []byte { return testFile(t, "invented.osm.pbf") }

// A small writer of the format, for what other programs do not write.

func pbfNumber(field int, v uint64) []byte {
	return binary.AppendUvarint(binary.AppendUvarint(nil, uint64(field<<3)), v)
}

func pbfField(field int, parts ...[]byte) []byte {
	body := bytes.Join(parts, nil)
	b := binary.AppendUvarint(nil, uint64(field<<3|pbfBody))
	return append(binary.AppendUvarint(b, uint64(len(body))), body...)
}

func pbfPacked(field int, numbers ...uint64) []byte {
	var b []byte
	for _, v := range numbers {
		b = binary.AppendUvarint(b, v)
	}
	return pbfField(field, b)
}

// pbfSigned packs differences.
func pbfSigned(field int, numbers ...int64) []byte {
	var b []byte
	for _, v := range numbers {
		b = binary.AppendVarint(b, v)
	}
	return pbfField(field, b)
}

// pbfBlob writes a block with the fields of its blob.
func pbfBlob(kind string, blob ...[]byte) []byte {
	size := len(bytes.Join(blob, nil))
	header := slices.Concat(pbfField(1, []byte(kind)), pbfNumber(3, uint64(size)))
	return slices.Concat(binary.BigEndian.AppendUint32(nil, uint32(len(header))), header, bytes.Join(blob, nil))
}

func pbfData(parts ...[]byte) []byte { return pbfBlob("OSMData", pbfField(1, parts...)) }

func deflated(data []byte) []byte {
	var b bytes.Buffer
	w := zlib.NewWriter(&b)
	w.Write(data)
	w.Close()
	return b.Bytes()
}

// misSummed is deflated data with a wrong sum at its end.
func misSummed(data []byte) []byte {
	b := deflated(data)
	b[len(b)-1] ^= 1
	return b
}

var pbfHead = pbfBlob("OSMHeader", pbfField(1, pbfField(4, []byte("OsmSchema-V0.6")), pbfField(4, []byte("DenseNodes"))))

// pbfTexts is a table of texts; the first is never used.
func pbfTexts(texts ...string) []byte {
	entries := [][]byte{pbfField(1)}
	for _, text := range texts {
		entries = append(entries, pbfField(1, []byte(text)))
	}
	return pbfField(1, entries...)
}

var natural = pbfTexts("natural", "tree")

// TestPBFAsXML: what another program wrote as PBF, packed or plain, reads as
// its XML does.
func TestPBFAsXML(t *testing.T) {
	want := mapped(t, string(testFile(t, "invented.osm")), Limits{})
	if len(want.Features) != 9 {
		t.Fatalf("got %d features: %v", len(want.Features), drawn(want))
	}
	for _, name := range []string{"invented.osm.pbf", "invented-plain.osm.pbf"} {
		c := mapped(t, string(testFile(t, name)), Limits{})
		if !slices.Equal(drawn(c), drawn(want)) || !slices.Equal(said(c.Problems), said(want.Problems)) {
			t.Errorf("%s: got\n%s\n%s\nwant\n%s\n%s", name, drawn(c), said(c.Problems), drawn(want), said(want.Problems))
		}
	}
}

// TestPBFLocationsOnWays: nodes without tags may be left out if the ways say
// where they are.
func TestPBFLocationsOnWays(t *testing.T) {
	want := drawn(mapped(t, string(testFile(t, "invented.osm")), Limits{}))
	c := mapped(t, string(testFile(t, "invented-ways.osm.pbf")), Limits{})
	if !slices.Equal(drawn(c), want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(drawn(c), "\n"), strings.Join(want, "\n"))
	}
}

var pbfRules = []struct {
	name     string
	data     []byte // after the header
	features []string
	problems []string
}{
	{name: "coordinates with an offset and a granularity", data: pbfData(natural, pbfNumber(17, 1000), pbfNumber(19, 1e9), pbfNumber(20, 2e9),
		pbfField(2, pbfField(2, pbfSigned(1, 5), pbfSigned(8, -500_000), pbfSigned(9, 250_000), pbfPacked(10, 1, 2, 0)))),
		features: []string{`osm:node/5 Point [2.25,0.5] {"natural":"tree"}`}},
	{name: "texts after the objects", data: pbfData(pbfField(2, pbfField(1, pbfNumber(1, 14), pbfPacked(2, 1), pbfPacked(3, 2), pbfNumber(8, 2e7), pbfNumber(9, 1e7))), natural),
		features: []string{`osm:node/7 Point [0.5,1] {"natural":"tree"}`}},
	{name: "deleted objects of a history", data: pbfData(natural,
		pbfField(2, pbfField(2, pbfSigned(1, 5, 1), pbfSigned(8, 1, 0), pbfSigned(9, 1, 0), pbfPacked(10, 1, 2, 0, 1, 2, 0), pbfField(5, pbfPacked(6, 0, 1)))),
		pbfField(2, pbfField(1, pbfNumber(1, 18), pbfField(4, pbfNumber(1, 2), pbfNumber(6, 0)))),
		pbfField(2, pbfField(3, pbfNumber(1, 8), pbfField(4, pbfNumber(6, 0))))),
		features: []string{`osm:node/6 Point [0.0000001,0.0000001] {"natural":"tree"}`},
		problems: []string{`note osm_deleted: x: osm:node/5 is marked as deleted, left aside (3 objects)`}},
	{name: "text that is not UTF-8", data: pbfData(pbfTexts("name", "T\xfcr"), pbfField(2, pbfField(2, pbfSigned(1, 5), pbfSigned(8, 0), pbfSigned(9, 0), pbfPacked(10, 1, 2, 0)))),
		features: []string{"osm:node/5 Point [0,0] {\"name\":\"T\ufffdr\"}"}},
	{name: "blocks and fields of a later version", data: slices.Concat(pbfBlob("Later", pbfField(1, []byte("\xff\xff"))),
		pbfData(natural, pbfField(99, []byte("x")), pbfNumber(98, 7), []byte{97<<3&0x7f | pbfNarrow | 0x80, 97 << 3 >> 7, 1, 2, 3, 4}, []byte{1<<3 | pbfWide, 1, 2, 3, 4, 5, 6, 7, 8}))},
	{name: "no data", data: pbfBlob("OSMData"), problems: []string{`error pbf_damaged: x: the block at offset 47 is damaged: it holds no data`}},
	{name: "a compression of another kind", data: pbfBlob("OSMData", pbfNumber(2, 9), pbfField(7, []byte("x"))),
		problems: []string{`error pbf_feature: x: the block at offset 47 is packed in a way that is not supported`}},
	{name: "a required feature", data: pbfBlob("OSMHeader", pbfField(1, pbfField(4, []byte("Moon")))),
		problems: []string{`error pbf_feature: x: requires the feature "Moon", which is not supported`}},
	{name: "a header block cut off", data: pbfBlob("OSMHeader", pbfField(1, []byte{0xff})),
		problems: []string{`error pbf_damaged: x: the block at offset 47 is damaged: it cannot be read`}},
	{name: "broken compression", data: pbfBlob("OSMData", pbfField(3, []byte("lawn"))),
		problems: []string{`error pbf_damaged: x: the block at offset 47 is damaged: zlib: invalid header`}},
	{name: "compression that ends early", data: pbfBlob("OSMData", pbfField(3, deflated(make([]byte, 1000))[:10])),
		problems: []string{`error pbf_damaged: x: the block at offset 47 is damaged: its data end early`}},
	{name: "a sum that is wrong", data: pbfBlob("OSMData", pbfField(3, misSummed([]byte("lawn")))),
		problems: []string{`error pbf_damaged: x: the block at offset 47 is damaged: zlib: invalid checksum`}},
	{name: "more than 32 MiB in a block", data: pbfBlob("OSMData", pbfField(3, deflated(make([]byte, 33<<20)))),
		problems: []string{`error pbf_damaged: x: the block at offset 47 is damaged: it holds more than the 32 MiB that are allowed`}},
	{name: "a blob of 2 GB", data: slices.Concat([]byte{0, 0, 0, 15}, pbfField(1, []byte("OSMData")), pbfNumber(3, 1<<31)),
		problems: []string{`error pbf_damaged: x: the block at offset 47 is damaged: it would have 2147483648 bytes`}},
	{name: "a header of 4 GB", data: []byte{0xff, 0xff, 0xff, 0xff},
		problems: []string{`error pbf_damaged: x: the block at offset 47 is damaged: its header would have 4294967295 bytes`}},
	{name: "a header that cannot be read", data: []byte{0, 0, 0, 1, 0xff},
		problems: []string{`error pbf_damaged: x: the block at offset 47 is damaged: its header cannot be read`}},
}

// pbfBroken are primitive blocks that point nowhere or stop short; all are
// told in the same words.
var pbfBroken = map[string][]byte{
	"tag of a node":      pbfField(2, pbfField(1, pbfNumber(1, 2), pbfPacked(2, 9), pbfPacked(3, 1))),
	"tag of a dense one": pbfField(2, pbfField(2, pbfSigned(1, 5), pbfSigned(8, 1), pbfSigned(9, 1), pbfPacked(10, 9, 1, 0))),
	"tag without value":  pbfField(2, pbfField(2, pbfSigned(1, 5), pbfSigned(8, 1), pbfSigned(9, 1), pbfPacked(10, 1))),
	"tag of a way":       pbfField(2, pbfField(3, pbfNumber(1, 2), pbfPacked(2, 1), pbfPacked(3, 1<<63))),
	"keys, no values":    pbfField(2, pbfField(3, pbfNumber(1, 2), pbfPacked(2, 1, 1), pbfPacked(3, 1))),
	"role":               pbfField(2, pbfField(4, pbfNumber(1, 2), pbfPacked(8, 9), pbfSigned(9, 1), pbfPacked(10, 1))),
	"kind of a member":   pbfField(2, pbfField(4, pbfNumber(1, 2), pbfPacked(8, 1), pbfSigned(9, 1), pbfPacked(10, 3))),
	"fewer roles":        pbfField(2, pbfField(4, pbfNumber(1, 2), pbfPacked(8, 1), pbfSigned(9, 1, 1), pbfPacked(10, 1, 1))),
	"fewer latitudes":    pbfField(2, pbfField(2, pbfSigned(1, 5, 1), pbfSigned(8, 1), pbfSigned(9, 1, 1))),
	"number cut short":   pbfField(2, pbfField(3, pbfNumber(1, 2), pbfField(8, []byte{0x80}))),
	"number too long":    pbfField(2, pbfField(3, pbfNumber(1, 2), pbfField(8, bytes.Repeat([]byte{0xff}, 11)))),
	"body cut short":     pbfField(2, []byte{3<<3 | pbfBody, 100, 1}),
	"group of old":       pbfField(2, []byte{1<<3 | 3}),
	"node cut short":     pbfField(2, pbfField(1, []byte{1 << 3})),
	"way cut short":      pbfField(2, pbfField(3, []byte{1 << 3})),
	"relation cut short": pbfField(2, pbfField(4, []byte{1 << 3})),
	"dense cut short":    pbfField(2, pbfField(2, []byte{1 << 3})),
	"texts cut short":    pbfField(1, []byte{1<<3 | pbfBody, 100}),
	"block cut short":    {2<<3 | pbfBody, 100},
}

func TestPBFRules(t *testing.T) {
	for _, tt := range pbfRules {
		t.Run(tt.name, func(t *testing.T) {
			checkMapped(t, mapped(t, string(slices.Concat(pbfHead, tt.data)), Limits{}), tt.features, tt.problems)
		})
	}
	for name, group := range pbfBroken {
		t.Run(name, func(t *testing.T) {
			c := mapped(t, string(slices.Concat(pbfHead, pbfData(natural, group))), Limits{})
			checkMapped(t, c, nil, []string{`error pbf_damaged: x: the block at offset 47 is damaged: its objects cannot be read`})
		})
	}
}

// TestPBFCut: a file cut anywhere but between blocks is refused with the place,
// and one cut between blocks reads as far as it goes.
func TestPBFCut(t *testing.T) {
	whole := inventedPBF(t)
	between := 0
	for n := 4 + len(pbfBegin); n < len(whole); n++ {
		c := mapped(t, string(whole[:n]), Limits{})
		if !c.Refused() {
			between++
			continue
		}
		p := c.Problems[0]
		want := fmt.Sprintf("ends early at offset %d, inside the block that begins at offset ", n)
		if p.Code != "input_short" || !strings.HasPrefix(p.Text, want) {
			t.Errorf("cut at %d: %s %s", n, p.Code, p.Text)
		}
	}
	if between == 0 || between > 5 {
		t.Errorf("%d cuts were not noticed", between)
	}
}
