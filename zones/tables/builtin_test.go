package tables

import (
	"reflect"
	"testing"
)

func TestBuiltIn(t *testing.T) {
	got := BuiltIn("t", "a,b\n1,\"x, y\"\n2,\n", "a", "b")
	if want := [][]string{{"1", "x, y"}, {"2", ""}}; !reflect.DeepEqual(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestMalformedTablesAreNotBuiltIn(t *testing.T) {
	for _, tt := range []struct{ table, want string }{
		{"", "t.csv: the columns are not a,b"},
		{"b,a\n1,2\n", "t.csv: the columns are not a,b"},
		{"a,b\n1\n", "t.csv: record on line 2: wrong number of fields"},
		{"a,b\n\"1,2\n", `t.csv: parse error on line 2, column 6: extraneous or missing " in quoted-field`},
	} {
		func() {
			defer func() {
				if got := recover(); got != tt.want {
					t.Errorf("%q: %v, want %s", tt.table, got, tt.want)
				}
			}()
			BuiltIn("t.csv", tt.table, "a", "b")
		}()
	}
}
