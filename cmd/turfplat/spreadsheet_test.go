package main

import "testing"

func TestPlainCell(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "Front": "Front", "a=b": "a=b", "'quoted": "'quoted", " =1": " =1",
		"=1+1": "'=1+1", "+1 555": "'+1 555", "-cmd": "'-cmd", "@SUM(A1)": "'@SUM(A1)", "\t=1": "'\t=1", "\r=1": "'\r=1", "＝1": "'＝1",
		"-98.5": "-98.5", "+3": "+3", "-1e-9": "-1e-9",
	} {
		if got := plainCell(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}
