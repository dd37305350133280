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
	path := filepath.Join(t.TempDir(), "sheet")
	if err := os.WriteFile(path, file, 0o644); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		if a == "FILE" {
			args[i] = path
		}
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

func written(t *testing.T, write func(*Sheet) ([]byte, error), s *Sheet) []byte {
	t.Helper()
	file, err := write(s)
	if err != nil {
		t.Fatal(err)
	}
	return file
}
