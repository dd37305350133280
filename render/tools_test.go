package render

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// tool runs a program on a file of the given contents and returns what it
// prints. The test is skipped where the program is not installed. "FILE" in the
// arguments stands for the file.
func tool(t *testing.T, file []byte, name string, args ...string) string {
	t.Helper()
	return fed(t, "", file, name, args...)
}

// fed runs a program as tool does, and types an input into it.
func fed(t *testing.T, input string, file []byte, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s is not installed", name)
	}
	cmd := exec.Command(name, inFile(t, file, args)...)
	cmd.Stdin = strings.NewReader(input)
	out, err := cmd.CombinedOutput()
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

// checkFiles has other programs check the files of a sheet, and keeps them
// where a folder is named.
func checkFiles(t *testing.T, name string, sheet *Sheet) {
	t.Helper()
	for ending, write := range writers {
		file := written(t, write, sheet)
		if *sheetsDir != "" {
			if err := os.WriteFile(filepath.Join(*sheetsDir, name+"."+ending), file, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		switch ending {
		case "svg":
			tool(t, file, "xmllint", "--noout", "FILE")
		case "pdf":
			tool(t, file, "qpdf", "--check", "FILE")
		}
	}
}
