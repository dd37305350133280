package tables

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

// words reads a table of two columns, in which a row that begins with "bad" is
// wrong twice.
func words(r io.Reader) ([]string, error) {
	var read []string
	err := Read(r, "words", func(names []string) error {
		if len(names) != 2 || names[0] != "a" {
			return errors.New("there is no column a")
		}
		return nil
	}, func(cells []string) []error {
		if cells[0] == "bad" {
			return []error{fmt.Errorf("%q is bad", cells[0]), errors.New("twice")}
		}
		read = append(read, strings.Join(cells, "-"))
		return nil
	})
	return read, err
}

func TestRead(t *testing.T) {
	for _, tt := range []struct{ name, table, read, err string }{
		{"rows", "a,b\n1,2\n3,\"4, 5\"\n", "1-2 3-4, 5", ""},
		{"head alone", "a,b", "", ""},
		{"marked as UTF-8", "\ufeffa,b\n1,2\n", "1-2", ""},
		{"nothing", "", "", "line 1: there is no column a"},
		{"other columns", "x,b\n1,2\n", "", "line 1: there is no column a"},
		{"all that is wrong, by line", "a,b\nbad,\n1,2\n\"3\n4\",5\n6\n7,8,9\nbad,x\n", "1-2 3\n4-5",
			"line 2: \"bad\" is bad\nline 2: twice\nline 6: there are 1 columns, not 2\nline 7: there are 3 columns, not 2\nline 8: \"bad\" is bad\nline 8: twice"},
		{"no telling what follows", "a,b\nbad,\n1,\"2\"3\n4,5\n", "", "line 2: \"bad\" is bad\nline 2: twice\nparse error on line 3, column 5: extraneous or missing \" in quoted-field"},
		{"another file", "a,b\n" + strings.Repeat("1,2\n", 1<<18), "", "is larger than 1 MiB, which no table of words is: is it the right file?"},
	} {
		read, err := words(strings.NewReader(tt.table))
		if err == nil {
			err = errors.New("")
		}
		if got := strings.Join(read, " "); got != tt.read || err.Error() != tt.err {
			t.Errorf("%s: %q, %q; want %q, %q", tt.name, got, err, tt.read, tt.err)
		}
	}
	if _, err := words(iotest.ErrReader(io.ErrClosedPipe)); err != io.ErrClosedPipe {
		t.Errorf("a reader that fails: %v", err)
	}
}
