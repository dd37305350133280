package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// runInterrupted feeds a run the first bytes of a book, and interrupts it once it
// has begun its part file. It returns what was said.
func runInterrupted(t *testing.T, dir, part string, args []string, book []byte) string {
	t.Helper()
	c := exec.Command(args[0], args[1:]...)
	c.Dir = dir
	var said bytes.Buffer
	c.Stderr = &said
	in, err := c.StdinPipe()
	if err == nil {
		err = c.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	if _, err := in.Write(book); err != nil {
		t.Fatal(err)
	}
	awaitFile(t, filepath.Join(dir, part))
	if err := c.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	c.Wait()
	if state := c.ProcessState; state.Exited() {
		t.Errorf("ended by itself, %s, not by the signal", state)
	}
	return said.String()
}

func awaitFile(t *testing.T, name string) {
	t.Helper()
	for range 6000 {
		if info, err := os.Stat(name); err == nil && info.Mode().IsRegular() {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Fatalf("%s does not come", name)
}

// TestInterrupted interrupts runs: they say what they leave, which is a part if one
// can go on with it, and otherwise nothing.
func TestInterrupted(t *testing.T) {
	turfplat, book := ownProgram(t), routeBook(200)
	tests := []struct {
		name      string
		run       []string
		said      string
		leavesAny bool
	}{
		{"lines", []string{"feed", "--lines", "-", "-o", "out.csv"},
			"turfplat: error: interrupted: out.csv.part holds what is done\n" +
				"turfplat: hint: to go on with it, give the same input and flags, and --resume\n", true},
		{"columns", []string{"feed", "--lines", "--format", "parquet", "-", "-o", "out.parquet"},
			"turfplat: error: interrupted: nothing was written\n", false},
		{"one document", []string{"measure", "--json", "-", "-o", "out.json"},
			"turfplat: error: interrupted: nothing was written\n", false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			dir := t.TempDir()
			part := tt.run[len(tt.run)-1] + ".part"
			said := runInterrupted(t, dir, part, slices.Concat([]string{turfplat}, tt.run), book[:len(book)/2])
			if !bytes.HasSuffix([]byte(said), []byte(tt.said)) {
				t.Errorf("said %q, and not %q at its end", said, tt.said)
			}
			left, err := filepath.Glob(filepath.Join(dir, "*"))
			if err != nil || (len(left) > 0) != tt.leavesAny {
				t.Errorf("left %q, %v", left, err)
			}
		})
	}
}

// TestInterruptedAndResumed goes on where a run was interrupted.
func TestInterruptedAndResumed(t *testing.T) {
	turfplat, book, dir := ownProgram(t), routeBook(600), t.TempDir()
	args := []string{turfplat, "feed", "--lines", "-", "-o", "out.csv"}
	runInterrupted(t, dir, "out.csv.part", args, book[:len(book)/2])
	runKilled(t, dir, append(args, "--resume"), book, -1)
	got, err := os.ReadFile(filepath.Join(dir, "out.csv"))
	if err != nil {
		t.Fatal(err)
	}
	var want bytes.Buffer
	run([]string{"turfplat", "feed", "--lines", "-"}, bytes.NewReader(book), &want, io.Discard)
	if !bytes.Equal(got, want.Bytes()) {
		t.Errorf("%d bytes, undisturbed %d", len(got), want.Len())
	}
}
