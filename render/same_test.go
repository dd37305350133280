package render

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"
)

// digests names the bytes of the specimen, of a site map and of a sun sheet in
// each form.
func digests(t *testing.T) string {
	t.Helper()
	var out strings.Builder
	_, siteMap := inventedMap(t, "mill")
	for _, name := range []string{"svg", "pdf", "png"} {
		fmt.Fprintf(&out, "%s", name)
		for _, sheet := range []*Sheet{specimen(), siteMap, courtyardSun(t, MapOptions{})} {
			fmt.Fprintf(&out, " %x", sha256.Sum256(written(t, writers[name], sheet)))
		}
		fmt.Fprintln(&out)
	}
	return out.String()
}

const digestsWanted = "RENDER_TEST_PRINT_DIGESTS"

// TestPrintDigests is run by TestBytesDoNotDependOnTheMachine, as a process of
// its own.
func TestPrintDigests(t *testing.T) {
	if os.Getenv(digestsWanted) == "" {
		t.Skip("prints for TestBytesDoNotDependOnTheMachine, which runs it")
	}
	fmt.Printf("digests:\n%s", digests(t))
}

func TestBytesDoNotDependOnTheMachine(t *testing.T) {
	want := digests(t)
	for _, environment := range [][]string{
		{"TZ=Pacific/Kiritimati", "GOMAXPROCS=1", "LANG=tr_TR.UTF-8"},
		{"TZ=America/St_Johns", "GOMAXPROCS=7", "GOGC=5"},
	} {
		command := exec.Command(os.Args[0], "-test.run=^TestPrintDigests$", "-test.v")
		command.Env = append(os.Environ(), append(environment, digestsWanted+"=1")...)
		out, err := command.CombinedOutput()
		if err != nil || !strings.Contains(string(out), want) {
			t.Errorf("%v: %v\n%s\nwant\n%s", environment, err, out, want)
		}
	}
}

func TestBytesDoNotDependOnTheClock(t *testing.T) {
	want := digests(t)
	time.Sleep(time.Until(time.Now().Truncate(time.Second).Add(time.Second))) // fonts are stamped by the second
	if got := digests(t); got != want {
		t.Errorf("a second later\n%s, before\n%s", got, want)
	}
}

func TestSheetsMayBeWrittenAtOnce(t *testing.T) {
	for name, write := range writers {
		want := written(t, write, specimen())
		var group sync.WaitGroup
		for range 4 {
			group.Go(func() {
				if got, err := write(specimen()); err != nil || !bytes.Equal(got, want) {
					t.Errorf("%s written beside others differs: %v", name, err)
				}
			})
		}
		group.Wait()
	}
}
