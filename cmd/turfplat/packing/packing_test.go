package packing

import (
	"bytes"
	"io"
	"strings"
	"testing"

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
			how := Of("x.zst")
			frame := how.pack(nil, tt.text)
			if len(frame)*densest > len(tt.text) {
				t.Fatalf("no bomb: %d bytes in %d", len(tt.text), len(frame))
			}
			bomb := &io.LimitedReader{R: &repeated{text: frame}, N: 1 << 20}
			r, err := how.Unpack(bomb, func() int64 { return 1<<20 - bomb.N })
			if err != nil {
				t.Fatal(err)
			}
			defer r.Close()
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

// repeated is a text over and over.
type repeated struct {
	text []byte
	at   int
}

func (r *repeated) Read(p []byte) (n int, err error) {
	for n < len(p) {
		copied := copy(p[n:], r.text[r.at:])
		n, r.at = n+copied, (r.at+copied)%len(r.text)
	}
	return n, nil
}

// TestBlocks: what a Writer writes reads back block by block, each ending where
// a Write did, and as one text.
func TestBlocks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		how := rapid.SampledFrom(ways).Draw(t, "how")
		var file, text bytes.Buffer
		ends := map[int]bool{0: true}
		p := NewWriter(&file, how)
		for range rapid.IntRange(0, 6).Draw(t, "writes") {
			piece := bytes.Repeat([]byte(rapid.StringN(1, 30, -1).Draw(t, "piece")), rapid.IntRange(0, 5000).Draw(t, "times"))
			text.Write(piece)
			ends[text.Len()] = true
			p.Write(piece)
		}
		if err := p.Finish(); err != nil {
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
	for i, how := range ways {
		file := how.pack(how.pack(nil, []byte("a line\n")), bytes.Repeat([]byte("another\n"), 100))
		f.Add(i, file)
		f.Add(i, file[:len(file)-3])
	}
	f.Fuzz(func(t *testing.T, i int, file []byte) {
		how := ways[uint(i)%uint(len(ways))]
		at := int64(0)
		for b := range blocksOf(bytes.NewReader(file), how) {
			if at += b.size; b.size <= 0 || at > int64(len(file)) {
				t.Fatalf("a block of %d bytes ends at %d of %d", b.size, at, len(file))
			}
		}
	})
}
