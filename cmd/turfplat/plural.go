package main

import (
	"fmt"
	"strings"
)

// plural counts what a word stands for: 1 fix, 2 fixes, 3 sites.
func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	if strings.HasSuffix(word, "x") {
		word += "e"
	}
	return fmt.Sprintf("%d %ss", n, word)
}
