package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
)

// Who sends one site and waits gets its answer before sending the next, from
// the first on.
func TestLinesAnswerOneByOne(t *testing.T) {
	for _, command := range [][]string{{"measure", "--json"}, {"check", "--json"}, {"zone"}, {"feed", "--format", "ndjson"}, {"lanes", "--swath", "10ft"}} {
		t.Run(command[0], func(t *testing.T) {
			asked, ask := io.Pipe()
			answers, answer := io.Pipe()
			done := make(chan int)
			go func() {
				code := run(append([]string{"turfplat"}, append(command, "--lines", "--quiet", "-")...), asked, answer, io.Discard)
				answer.Close()
				done <- code
			}()
			lines := bufio.NewReader(answers)
			for i := range 3 {
				fmt.Fprintf(ask, `{"type":"FeatureCollection","site":{"id":"lot-%d"},"features":[{"type":"Feature","properties":{"kind":"turf"},"geometry":{"type":"Polygon","coordinates":[[[0,40],[2e-4,40],[2e-4,40.0002],[0,40]]]}}]}`+"\n", i)
				for id, text := fmt.Sprintf(`"lot-%d"`, i), ""; !strings.Contains(text, id); { // a site may have several rows
					var err error
					if text, err = lines.ReadString('\n'); err != nil {
						t.Fatal(err)
					}
				}
			}
			ask.Close()
			if code := <-done; code != 0 {
				t.Errorf("exit status %d", code)
			}
		})
	}
}

// An output that fails is told at the latest when all is written.
func TestLingeringTellsErrors(t *testing.T) {
	full := errors.New("full")
	out, in := io.Pipe()
	out.CloseWithError(full)
	l := newLingering(in)
	if _, err := l.Write([]byte("x\n")); err != nil {
		t.Fatal(err)
	}
	l.letGo()
	if _, err := l.Write([]byte("y\n")); !errors.Is(err, full) {
		t.Errorf("writing on: %v", err)
	}
	if err := l.close(); !errors.Is(err, full) {
		t.Errorf("at the end: %v", err)
	}
}
