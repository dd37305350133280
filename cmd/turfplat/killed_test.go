package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"testing"
)

// routeBook is a route of many small sites with what may stand among them:
// lines that are no site, rings that cross themselves, ids and whole sites that
// come again, and names that need quotes and line ends in a cell.
func routeBook(sites int) []byte {
	r := rand.New(rand.NewPCG(20261128, 1))
	var book bytes.Buffer
	for i := range sites {
		id, name := fmt.Sprintf("lot-%d", i), fmt.Sprintf("Lot %d", i)
		lon, lat := -98.5+float64(i%200)*1e-3, 40+float64(i/200)*1e-3
		ring := fmt.Sprintf("[[%[1]f,%[2]f],[%[3]f,%[2]f],[%[3]f,%[4]f],[%[1]f,%[4]f],[%[1]f,%[2]f]]", lon, lat, lon+2e-4, lat+2e-4)
		switch r.IntN(12) {
		case 0:
			fmt.Fprintf(&book, `{"type":"FeatureCollection","site":{"id":%q},"features":[`+"\n", id)
			continue
		case 1:
			ring = fmt.Sprintf("[[%[1]f,%[2]f],[%[3]f,%[4]f],[%[3]f,%[2]f],[%[1]f,%[4]f],[%[1]f,%[2]f]]", lon, lat, lon+2e-4, lat+2e-4)
			id = fmt.Sprintf("lot-%d", i+1) // as the next one is called
		case 2:
			id = fmt.Sprintf("lot-%d", max(0, i-1))
		case 3:
			name = fmt.Sprintf("\"The %d\",\nback", i)
		}
		line := fmt.Sprintf(`{"type":"FeatureCollection","site":{"id":%q,"name":%q},"features":[{"type":"Feature","properties":{"kind":"turf","name":%[2]q},"geometry":{"type":"Polygon","coordinates":[%s]}}]}`+"\n", id, name, ring)
		for range 1 + r.IntN(20)/19 {
			book.WriteString(line)
		}
	}
	return book.Bytes()
}

// ownProgram is the test binary under the name by which it is the program itself.
func ownProgram(t *testing.T) string {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(t.TempDir(), "turfplat")
	if err := os.Symlink(self, link); err != nil {
		t.Fatal(err)
	}
	return link
}

// runKilled feeds a run the first bytes of a book, and kills it; without a
// moment it lets it end and returns its exit code.
func runKilled(t *testing.T, dir string, args []string, book []byte, moment int) int {
	t.Helper()
	c := exec.Command(args[0], args[1:]...)
	c.Dir = dir
	in, err := c.StdinPipe()
	if err == nil {
		err = c.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	if moment >= 0 {
		in.Write(book[:moment])
		c.Process.Kill()
	} else {
		io.Copy(in, bytes.NewReader(book))
		in.Close()
	}
	err = c.Wait()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return c.ProcessState.ExitCode()
}

// resumable are runs that can be gone on with, on routes of so many sites.
var resumable = []struct {
	run   []string
	sites int
}{
	{[]string{"measure", "--json", "-o", "out.ndjson"}, 3000},
	{[]string{"measure", "--json", "-o", "out.ndjson.zst"}, 3000},
	{[]string{"measure", "--json", "-o", "out.ndjson.gz"}, 3000},
	{[]string{"check", "--json", "-o", "out.ndjson"}, 3000},
	{[]string{"zone", "-o", "out.ndjson"}, 3000},
	{[]string{"survey", "-o", "out.ndjson.zst"}, 3000},
	{[]string{"feed", "-o", "out.csv"}, 3000},
	{[]string{"feed", "-o", "out.csv.gz"}, 3000},
	{[]string{"feed", "--format", "ndjson", "-o", "out.ndjson"}, 3000},
	{[]string{"lanes", "--swath", "10ft", "-o", "out.ndjson"}, 30}, // takes a hundred times as long
}

// TestKilledAndResumed kills runs at 100 moments in all, each time going on
// where the last one was killed: the file is at last the one of a run that
// nobody disturbed.
func TestKilledAndResumed(t *testing.T) {
	turfplat := ownProgram(t)
	for i, tt := range resumable {
		t.Run(fmt.Sprint(tt.run), func(t *testing.T) {
			t.Parallel()
			run, book := tt.run, routeBook(tt.sites)
			calm, dir := t.TempDir(), t.TempDir()
			args := slices.Concat([]string{turfplat}, run, []string{"--lines", "-"})
			file := run[len(run)-1]
			code := runKilled(t, calm, args, book, -1)
			want, err := os.ReadFile(filepath.Join(calm, file))
			if err != nil {
				t.Fatal(err)
			}

			r := rand.New(rand.NewPCG(20261128, uint64(i)))
			var moments []int
			for range 10 {
				moments = append(moments, r.IntN(len(book)))
			}
			slices.Sort(moments)
			args = append(args, "--resume")
			for _, moment := range moments {
				runKilled(t, dir, args, book, moment)
				if _, err := os.Stat(filepath.Join(dir, file)); err == nil {
					t.Fatalf("killed at %d bytes, and the file is there", moment)
				}
			}
			if again := runKilled(t, dir, args, book, -1); again != code {
				t.Errorf("exit status %d, undisturbed %d", again, code)
			}
			got, err := os.ReadFile(filepath.Join(dir, file))
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got, want) {
				t.Errorf("%d bytes, undisturbed %d", len(got), len(want))
			}
			if _, err := os.Stat(filepath.Join(dir, file+".part")); err == nil {
				t.Error("the part is left")
			}
		})
	}
}

// TestCutAnywhere goes on with what a run left, whole lines or not, blocks of
// packed text or not: nothing at all, all of it, and cuts between.
func TestCutAnywhere(t *testing.T) {
	for i, tt := range resumable {
		t.Run(fmt.Sprint(tt.run), func(t *testing.T) {
			t.Parallel()
			r := rand.New(rand.NewPCG(20261128, uint64(i)))
			dir := t.TempDir()
			book, out := filepath.Join(dir, "book.ndjson"), filepath.Join(dir, tt.run[len(tt.run)-1])
			if err := os.WriteFile(book, routeBook(min(tt.sites, 1500)), 0o666); err != nil {
				t.Fatal(err)
			}
			args := slices.Concat([]string{"turfplat"}, tt.run[:len(tt.run)-1], []string{out, "--lines", book})
			var calm, messages bytes.Buffer
			code := run(args, nil, io.Discard, &calm)
			want, err := os.ReadFile(out)
			if err != nil {
				t.Fatal(err)
			}
			cuts := []int{0, 1, len(want) - 1, len(want)}
			for range 8 {
				cuts = append(cuts, r.IntN(len(want)))
			}
			for _, cut := range cuts {
				if err := errors.Join(os.WriteFile(out+".part", want[:cut], 0o666), os.Remove(out)); err != nil {
					t.Fatal(err)
				}
				messages.Reset()
				if again := run(append(args, "--resume"), nil, io.Discard, &messages); again != code {
					t.Errorf("cut at %d: exit status %d, undisturbed %d\n%s", cut, again, code, &messages)
				}
				if got, err := os.ReadFile(out); err != nil || !bytes.Equal(got, want) {
					t.Fatalf("cut at %d: %d bytes, undisturbed %d: %v", cut, len(got), len(want), err)
				}
				if cut == len(want) && tally(messages.String()) != tally(calm.String()) {
					t.Errorf("of %q refused, undisturbed %q", tally(messages.String()), tally(calm.String()))
				}
			}
		})
	}
}

// tally is the line that tells how many sites were refused.
func tally(messages string) string {
	return regexp.MustCompile(`[0-9]+ of [0-9]+ sites refused`).FindString(messages)
}
