// Package spelling finds what was perhaps meant by a word that is not known.
package spelling

import "strings"

// mostCompared is how long a word may be, in bytes, that is looked up among
// others.
const mostCompared = 40

// Nearest returns the first of the words that another one is least slips from,
// in any case, and no more than a third of its letters; "" if none is so near.
func Nearest(written string, words []string) string {
	if len(written) > mostCompared {
		return ""
	}
	written = strings.ToLower(written)
	best, fewest := "", 1+len([]rune(written))/3
	for _, word := range words {
		if n := Slips(written, strings.ToLower(word)); n < fewest {
			best, fewest = word, n
		}
	}
	return best
}

// Slips counts the letters to add, drop or change that make b of a
// (Levenshtein 1966).
func Slips(a, b string) int {
	from, to := []rune(a), []rune(b)
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i, r := range from {
		diagonal := row[0]
		row[0] = i + 1
		for j, q := range to {
			changed := diagonal
			if r != q {
				changed++
			}
			diagonal = row[j+1]
			row[j+1] = min(changed, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(to)]
}
