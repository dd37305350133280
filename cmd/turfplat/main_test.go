package main

import (
	"flag"
	"io"
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite the expected outputs in the scripts")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"turfplat": main})
}

// Each script in testdata/script is one behaviour as a user meets it.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error {
			return os.CopyFS(env.WorkDir, os.DirFS("../../samples"))
		},
	})
}

// run is the whole program but for the process around it.
func run(args []string, in io.Reader, out, messages io.Writer) int {
	return newDesk(in, out, messages).run(args)
}
