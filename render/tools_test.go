package render

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// tool runs a program on a file of the given contents and returns what it
// prints. The test is skipped where the program is not installed. "FILE" in the
// arguments stands for the file.
func tool(t *testing.T, file []byte, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s is not installed", name)
	}
	out, err := exec.Command(name, inFile(t, file, args)...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

// inFile keeps contents in a file and puts its name where "FILE" stands.
func inFile(t *testing.T, contents []byte, args []string) []string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "sheet")
	if err := os.WriteFile(path, contents, 0o644); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		if a == "FILE" {
			args[i] = path
		}
	}
	return args
}

func written(t *testing.T, write func(*Sheet) ([]byte, error), s *Sheet) []byte {
	t.Helper()
	file, err := write(s)
	if err != nil {
		t.Fatal(err)
	}
	return file
}
