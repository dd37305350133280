package main

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// TestBombs: packed data that unpacks to what no file of sites is stops early.
func TestBombs(t *testing.T) {
	for _, tt := range []struct {
		name string
		text []byte // over and over
		want string
	}{
		{"line ends", bytes.Repeat([]byte("\n"), 1<<20), "2000 times its size"},
		{"one line", bytes.Repeat([]byte("ab"), 1<<19), "2000 times its size"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			how := packingOf("x.zst")
			frame := how.pack(nil, tt.text)
			if len(frame)*densest > len(tt.text) {
				t.Fatalf("no bomb: %d bytes in %d", len(tt.text), len(frame))
			}
			o := &order{desk: &desk{in: io.LimitReader(repeated{frame}, 1<<20)}}
			r, err := o.open("-")
			if err != nil {
				t.Fatal(err)
			}
			n, err := io.Copy(io.Discard, r)
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want one about %q", err, tt.want)
			}
			if n > 2*much {
				t.Errorf("read %d bytes of it", n)
			}
		})
	}
}

// repeated is a text over and over; it is read in whole copies.
type repeated struct{ text []byte }

func (r repeated) Read(p []byte) (n int, err error) {
	for len(p)-n >= len(r.text) {
		n += copy(p[n:], r.text)
	}
	return n, nil
}

// TestBlocks: what a packer writes reads back block by block, each ending where
// a Write did, and as one text.
func TestBlocks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		how := rapid.SampledFrom(packings).Draw(t, "how")
		var file, text bytes.Buffer
		ends := map[int]bool{0: true}
		p := &packer{w: &file, how: how}
		for range rapid.IntRange(0, 6).Draw(t, "writes") {
			piece := bytes.Repeat([]byte(rapid.StringN(1, 30, -1).Draw(t, "piece")), rapid.IntRange(0, 5000).Draw(t, "times"))
			text.Write(piece)
			ends[text.Len()] = true
			p.Write(piece)
		}
		if err := p.finish(); err != nil {
			t.Fatal(err)
		}
		r := strings.NewReader(file.String())
		var got []byte
		for b := range blocksOf(r, how) {
			got = append(got, b.text...)
			if !ends[len(got)] {
				t.Fatalf("a block ends at %d, where no write does", len(got))
			}
		}
		if !bytes.Equal(got, text.Bytes()) {
			t.Fatalf("blocks hold %d bytes, written were %d", len(got), text.Len())
		}
		whole, err := how.unpack(bytes.NewReader(file.Bytes()))
		if err != nil {
			t.Fatal(err)
		}
		defer whole.Close()
		if got, err := io.ReadAll(whole); err != nil || !bytes.Equal(got, text.Bytes()) {
			t.Fatalf("reads back as %d bytes, written were %d: %v", len(got), text.Len(), err)
		}
	})
}

// FuzzBlocks: whatever a part file holds, its blocks are inside it.
func FuzzBlocks(f *testing.F) {
	for i, how := range packings {
		file := how.pack(how.pack(nil, []byte("a line\n")), bytes.Repeat([]byte("another\n"), 100))
		f.Add(i, file)
		f.Add(i, file[:len(file)-3])
	}
	f.Fuzz(func(t *testing.T, i int, file []byte) {
		how := packings[uint(i)%uint(len(packings))]
		at := int64(0)
		for b := range blocksOf(bytes.NewReader(file), how) {
			if at += b.size; b.size <= 0 || at > int64(len(file)) {
				t.Fatalf("a block of %d bytes ends at %d of %d", b.size, at, len(file))
			}
		}
	})
}

func TestProgressText(t *testing.T) {
	start := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	for _, tt := range []struct {
		count               int
		passed              time.Duration
		taken, first, whole int64
		want                string
	}{
		{500, 2 * time.Second, 1000, 0, 0, "500 sites, 250 a second"},
		{500, 2 * time.Second, 1000, 0, 4000, "500 sites, 250 a second, 25 %, 6 s left"},
		{500, 2 * time.Second, 2000, 1000, 5000, "500 sites, 250 a second, 25 %, 6 s left"}, // gone on with
		{90000, time.Minute, 1, 0, 10, "90000 sites, 1500 a second, 10 %, 9 min left"},
		{90000, time.Hour, 1, 0, 4, "90000 sites, 25 a second, 25 %, 3.0 h left"},
		{10, 2 * time.Second, 30, 0, 20, "10 sites, 5 a second"}, // the file grew
	} {
		p := &progress{start: start, count: tt.count, taken: func() int64 { return tt.taken }, first: tt.first, whole: tt.whole}
		if got := p.text(start.Add(tt.passed)); got != tt.want {
			t.Errorf("%s, want %s", got, tt.want)
		}
	}
}
