package program

import (
	"strings"
	"testing"
)

func TestBuiltIns(t *testing.T) {
	for name, text := range builtIns {
		p, problems := Read(strings.NewReader(text), name+".yaml")
		for _, problem := range problems {
			t.Error(problem, problem.Hint)
		}
		if p != nil {
			t.Log(name, len(p.Steps))
		}
	}
}
