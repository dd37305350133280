package zones

import (
	"slices"
	"testing"
)

func TestRuns(t *testing.T) {
	for _, tt := range []struct {
		numbers []int
		want    []string
		more    bool
	}{
		{nil, nil, false},
		{[]int{4}, []string{"4"}, false},
		{[]int{1, 2, 3, 7, 9, 10}, []string{"1 to 3", "7", "9 to 10"}, false},
		{[]int{1, 3, 5}, []string{"1", "3", "5"}, false},
		{[]int{1, 3, 5, 6, 8}, []string{"1", "3", "5 to 6"}, true},
	} {
		if got, more := Runs(tt.numbers, 3); !slices.Equal(got, tt.want) || more != tt.more {
			t.Errorf("%v: %q and more %v, want %q and %v", tt.numbers, got, more, tt.want, tt.more)
		}
	}
}
