package program

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

// A conflict is a file of testdata/conflicts: its first line names the step, the
// rule, its severity and until when; a guilty program provokes it, the nearest
// innocent one must be left alone.
type conflict struct {
	step, rule string
	severity   Severity
	until      string
	on, region string
	files      map[string][]byte
}

func readConflict(t *testing.T, file string) conflict {
	t.Helper()
	archive, err := txtar.ParseFile(file)
	if err != nil {
		t.Fatal(err)
	}
	c := conflict{files: make(map[string][]byte)}
	for i, line := range strings.Split(strings.TrimSpace(string(archive.Comment)), "\n") {
		words := strings.Fields(line)
		switch {
		case i == 0:
			c.step, c.rule, c.severity = words[0], words[1], Severity(words[2])
			if words[3] != "-" {
				c.until = words[3]
			}
		case words[0] == "on":
			c.on = words[1]
		case words[0] == "region":
			c.region = strings.Join(words[1:], " ")
		}
	}
	for _, f := range archive.Files {
		c.files[f.Name] = f.Data
	}
	return c
}

// reasons are the verdicts of the rule on the step, but for notes where the
// rule is more than one.
func (c conflict) reasons(t *testing.T, which string) (*StepPlan, []Verdict) {
	t.Helper()
	on := yard()
	on.Region = c.region
	at := Occasion{Today: day(t, c.on)}
	if log, ok := c.files[which+".csv"]; ok {
		at.Soil = station(t, log)
	}
	s := stepOf(t, lay(t, read(t, string(c.files[which+".yaml"])), on, at), c.step)
	var found []Verdict
	for _, v := range s.Reasons {
		if v.Rule == c.rule && (v.Severity != Note || c.severity == Note) {
			found = append(found, v)
		}
	}
	return s, found
}

func TestConflicts(t *testing.T) {
	files, err := filepath.Glob("testdata/conflicts/*.txtar")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	provoked := make(map[string]bool)
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) {
			c := readConflict(t, file)
			provoked[c.rule] = true
			s, guilty := c.reasons(t, "guilty")
			if len(guilty) != 1 {
				t.Fatalf("guilty: %d verdicts of %s in %+v", len(guilty), c.rule, s.Reasons)
			}
			v := guilty[0]
			if v.Severity != c.severity || isoDay(v.Until) != c.until || v.Source == "" || v.Text == "" {
				t.Errorf("guilty: %s until %q (%s, %s)", v.Severity, isoDay(v.Until), v.Text, v.Source)
			}
			if c.severity == Block && lifts[c.rule] == "" {
				t.Errorf("nothing is told that lifts %s", c.rule)
			}
			if _, innocent := c.reasons(t, "innocent"); len(innocent) > 0 {
				t.Errorf("innocent: %+v", innocent)
			}
		})
	}
	for name := range rules {
		if !provoked[name] {
			t.Errorf("no file provokes rule %s", name)
		}
	}
	for _, l := range laws {
		if !provoked[l.rule] {
			t.Errorf("no file provokes law %s", l.rule)
		}
	}
}
