package ingest

import (
	"encoding/json"
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// jsonTexts are texts of all kinds, right and wrong.
var jsonTexts = []string{
	`{}`, `[]`, `""`, `0`, `-0`, `-1.5e+10`, `1E5`, `true`, `false`, `null`, ` [ 1 , 2 ] `, "\t{\"a\" : [ { } ] }\r\n",
	`"\u00e9\n\"\\\/\b\f\r\t"`, `{"a":{"b":[1,[2,"c"]]},"d":null}`, "\"\x7f\xc3\xa9\"",
	``, ` `, `{`, `[`, `]`, `}`, `{]`, `[}`, `[1,]`, `[,1]`, `[1 2]`, `{"a"}`, `{"a":}`, `{"a":1,}`, `{a:1}`, `{"a" 1}`, `{1:2}`,
	`"`, `"\`, `"\x"`, `"\u12"`, `"\u12g4"`, "\"\n\"", "\"\x00\"", `tru`, `truth`, `nul`, `nulls`, `falsy`,
	`-`, `+1`, `01`, `1.`, `.5`, `1e`, `1e+`, `1.e5`, `0x1`, `--1`, `1-`, `NaN`, `Infinity`, `1 2`, `{}{}`, `[] x`, `'a'`, `/**/1`,
	`[1,2]`, `[[1,2],[-93.123456789, 45.5]]`, `[01,2]`, `[1.,2]`, `[1,2.]`, `[-,2]`, `[1,2`, `[1,`, `[1`, `[1,2]]`, `{[1,2]}`,
}

func checkGrammar(t rapid.TB, text []byte) {
	t.Helper()
	g := grammar{depth: 1000}
	at, f := g.feed(text)
	if got, want := f == nil && g.complete(), json.Valid(text); got != want {
		t.Errorf("%q: well formed is %v, want %v", text, got, want)
	}
	if f == nil && at != len(text) || f != nil && at >= len(text) {
		t.Errorf("%q: right up to %d, fault %v", text, at, f)
	}
	if atByByte, byByte := feedByByte(text); at != atByByte || !reflect.DeepEqual(f, byByte) {
		t.Errorf("%q: right up to %d, fault %v; byte by byte up to %d, fault %v", text, at, f, atByByte, byByte)
	}
}

// feedByByte feeds a text in pieces of one byte, none of which is a position.
func feedByByte(text []byte) (int, *fault) {
	g := grammar{depth: 1000}
	for i := range text {
		if _, f := g.feed(text[i : i+1]); f != nil {
			return i, f
		}
	}
	return len(text), nil
}

// Positions are passed over whole only where they are two numbers.
func TestGrammarOfPositions(t *testing.T) {
	piece := rapid.SampledFrom([]string{
		"[", "]", ",", " ", "-", ".", "0", "7", "12", "12345678", "123456789", "0.12345678", "-93.123456789", "e", "1e5", "[1,2]", "[-93.5, 45.25]",
	})
	rapid.Check(t, func(t *rapid.T) {
		text := []byte("[")
		for _, p := range rapid.SliceOfN(piece, 0, 8).Draw(t, "pieces") {
			text = append(text, p...)
		}
		checkGrammar(t, append(text, rapid.SampledFrom([]string{"", "]", "]]"}).Draw(t, "end")...))
	})
}

func TestGrammar(t *testing.T) {
	for _, text := range jsonTexts {
		checkGrammar(t, []byte(text))
	}
}

// TestGrammarOfPieces: texts put together at random are judged as the
// standard library judges them.
func TestGrammarOfPieces(t *testing.T) {
	piece := rapid.SampledFrom([]string{
		"{", "}", "[", "]", ",", ":", `"a"`, `"\u00e9"`, "1", "-2.5e3", "true", "null", " ", "\n", ".", "e", `\`, "0", "-",
	})
	rapid.Check(t, func(t *rapid.T) {
		var text []byte
		for _, p := range rapid.SliceOfN(piece, 0, 12).Draw(t, "pieces") {
			text = append(text, p...)
		}
		checkGrammar(t, text)
	})
}

func FuzzGrammar(f *testing.F) {
	for _, text := range jsonTexts {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) < 1000 { // deeper brackets are a matter of limits
			checkGrammar(t, text)
		}
	})
}
