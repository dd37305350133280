package ingest

import (
	"bytes"
	"encoding/binary"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// rowRead is all that reading a row of positions leaves behind.
type rowRead struct {
	Row             trace
	Findings        findings
	Wrapped, Broken bool
	At, Left        int
}

func readRow(text []byte, positions int, one func(*coordinates)) rowRead {
	var fs findings
	c := coordinates{findings: &fs, left: positions}
	c.start(text, shapes["LineString"])
	c.startRow()
	c.array(func() { one(&c) })
	return rowRead{c.row, fs, c.wrapped, c.broken, c.at, c.left}
}

// checkPlain asks that a row reads the same whether plain positions have a
// look of their own or not.
func checkPlain(t rapid.TB, text []byte) {
	t.Helper()
	for _, positions := range []int{1, 1000} {
		got, want := readRow(text, positions, (*coordinates).position), readRow(text, positions, (*coordinates).oddPosition)
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s: read %+v, want %+v", text, got, want)
		}
	}
}

var plainSeeds = []string{
	`[[1,2],[-93.123456789,45.5]]`, `[[1, 2]]`, `[[ 1,2]]`, `[[1,2 ]]`, `[[1 ,2]]`, `[[1,  2]]`, `[[1,2,3]]`, `[[1]]`, `[[]]`, `[]`, `[1,2]`, `[[1,"2"]]`, `[[1,null]]`, `[[1,[2]]]`,
	`[[-0,0],[-0.0,-0.000]]`, `[[1e1,2]]`, `[[1,2E-3]]`, `[[9007199254740993,2]]`, `[[0.9007199254740993,2]]`, `[[0.90071992547409931,12]]`, `[[0.000000000000000000001,2]]`,
	`[[123456789012345678901234567890,2]]`, `[[181,2]]`, `[[2,91]]`, `[[360.5,2]]`, `[[-180,-90]]`, `5`, `"[1,2]"`, `[{"a":1}]`, `[[1,2],[1,2]]`, `null`,
}

func FuzzPlainPosition(f *testing.F) {
	for _, text := range plainSeeds {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if whole := wellFormed([]byte(text)); whole != nil {
			checkPlain(t, whole)
			if end := valueEnd(whole, 0); end != len(whole) {
				t.Errorf("%s: ends at %d", whole, end)
			}
		}
	})
}

func TestPlainPositions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.StringMatching(`-?(0|[1-9][0-9]{0,9})(\.[0-9]{1,20})?(e-?[0-9])?`)
		text := []byte{'['}
		for range rapid.IntRange(0, 4).Draw(t, "positions") {
			if len(text) > 1 {
				text = append(text, ',')
			}
			text = append(text, '[')
			for i := range rapid.IntRange(1, 3).Draw(t, "numbers") {
				if i > 0 {
					text = append(text, rapid.SampledFrom([]string{",", ", ", " ,"}).Draw(t, "comma")...)
				}
				text = append(text, number.Draw(t, "number")...)
			}
			text = append(text, ']')
		}
		checkPlain(t, append(text, ']'))
	})
}

// Among eight bytes all that matter are marked, and no part of a number is.
func TestMarked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		eight := rapid.SliceOfN(rapid.Byte(), 8, 8).Draw(t, "bytes")
		if rapid.Bool().Draw(t, "numbers") {
			eight = []byte(rapid.StringMatching(`[0-9,. \n+-]{8}`).Draw(t, "text"))
			if i := rapid.IntRange(0, 15).Draw(t, "at"); i < 8 {
				eight[i] = rapid.SampledFrom([]byte(`"{}[]`)).Draw(t, "mark")
			}
		}
		marks := marked(binary.LittleEndian.Uint64(eight))
		for i, c := range eight {
			mark := marks>>(8*i)&0xff != 0
			if matters := strings.ContainsRune(`"{}[]`, rune(c)); matters && !mark {
				t.Errorf("byte %d of %q is not marked", i, eight)
			}
			if number := strings.ContainsRune("0123456789,. \n+-", rune(c)); number && mark && !bytes.ContainsRune(eight[:i], '"') {
				t.Errorf("byte %d of %q is marked", i, eight)
			}
		}
	})
}

// The end of a bracket is where counting byte by byte finds it.
func TestBracketEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.SampledFrom([]string{"1", "-81.440087683", "true", `"a"`, `"]\"[{}"`, `"\\"`, `"é ☂"`, "[]", "{}", "[1, 2]", "1e5"})
		text := rapid.SampledFrom([]string{"", " ", "x", "[[", "1.23,"}).Draw(t, "before")
		from, depth := len(text), 0
		for range rapid.IntRange(1, 30).Draw(t, "steps") {
			switch {
			case depth > 1 && rapid.Bool().Draw(t, "close"):
				text, depth = text+"]", depth-1
			case depth == 0 || rapid.Bool().Draw(t, "open"):
				text, depth = text+"[", depth+1
			default:
				text += value.Draw(t, "value")
			}
			if rapid.Bool().Draw(t, "comma") {
				text += ","
			}
		}
		text += strings.Repeat("]", depth)
		want := len(text)
		text += rapid.SampledFrom([]string{"", "]", `,"b":[1]}`, "}}", "[1,2,3,4,5,6]"}).Draw(t, "after")
		if got := bracketEnd([]byte(text), from); got != want {
			t.Errorf("%s: ends at %d, want %d", text[from:], got, want)
		}
	})
}

// numberSteps leads where step does, wherever it leads.
func TestNumberSteps(t *testing.T) {
	for from := range state(stateCount) {
		for c := range 256 {
			to := numberSteps[from][c]
			if to == stateCount {
				continue
			}
			g := grammar{depth: 10, state: from, open: []byte{'['}}
			if f := g.step(byte(c)); f != nil || g.state != to || len(g.open) != 1 {
				t.Errorf("state %d: %q leads to %d, step to %d (%v)", from, byte(c), to, g.state, f)
			}
		}
	}
}
