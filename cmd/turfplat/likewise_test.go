package main

import "testing"

func TestSpans(t *testing.T) {
	var odd []int
	for n := 1; n < 40; n += 2 {
		odd = append(odd, n)
	}
	for _, tt := range []struct {
		numbers []int
		want    string
	}{
		{[]int{3}, "3"},
		{[]int{1, 2}, "1 to 2"},
		{[]int{0, 1, 2, 5, 7, 8}, "0 to 2, 5, 7 to 8"},
		{odd, "1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23 and more"},
	} {
		if got := spans(tt.numbers); got != tt.want {
			t.Errorf("%v: %s, want %s", tt.numbers, got, tt.want)
		}
	}
}
