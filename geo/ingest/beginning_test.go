package ingest

import (
	"bufio"
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

func TestBeginning(t *testing.T) {
	const site = `{"type":"FeatureCollection","features":[]}` + "\n"
	long := strings.Repeat("x", 3*sniffBytes)
	for _, tt := range []struct {
		name, text, want string
		asked            bool // more than that was asked for
	}{
		{"a site and no more", site, site, false},
		{"a text sequence", "\x1e" + site, "\x1e" + site, false},
		{"half a line", site[:20], site[:20], true},
		{"a document over several lines", "{\n\"a\":1}", "{\n\"a\":1}", true},
		{"words", "a\nb\n", "a\nb\n", true},
		{"nothing", "", "", true},
		{"much", long, long[:sniffBytes], false},
		{"a site longer than is looked at", `{"a":"` + long + "\"}\n", `{"a":"` + long[:sniffBytes-6], false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			for name, in := range map[string]io.Reader{"at once": strings.NewReader(tt.text), "byte by byte": iotest.OneByteReader(strings.NewReader(tt.text))} {
				asked := false
				r := bufio.NewReaderSize(io.MultiReader(in, readerFunc(func([]byte) (int, error) { asked = true; return 0, errors.New("nobody sends more") })), 1<<16)
				r.Peek(1)
				if got := string(Beginning(r)); got != tt.want || asked != tt.asked {
					t.Errorf("%s: begins with %d bytes %.60q, asked for more: %t", name, len(got), got, asked)
				}
			}
		})
	}
}

// What was discarded before is no part of the beginning.
func TestBeginningAfterSome(t *testing.T) {
	r := bufio.NewReaderSize(strings.NewReader("\ufeffabc"), 1<<16)
	r.Peek(1)
	r.Discard(3)
	if got := string(Beginning(r)); got != "abc" {
		t.Errorf("begins with %q", got)
	}
}

type readerFunc func([]byte) (int, error)

func (f readerFunc) Read(p []byte) (int, error) { return f(p) }
