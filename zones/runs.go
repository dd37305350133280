package zones

import "strconv"

// Runs writes numbers in rising order for people: each that stands alone, and as
// "3 to 7" those that follow each other. It returns no more than most runs, and
// whether there are more.
func Runs(numbers []int, most int) (runs []string, more bool) {
	for i := 0; i < len(numbers); {
		if len(runs) == most {
			return runs, true
		}
		j := i
		for j+1 < len(numbers) && numbers[j+1] == numbers[j]+1 {
			j++
		}
		run := strconv.Itoa(numbers[i])
		if j > i {
			run += " to " + strconv.Itoa(numbers[j])
		}
		runs, i = append(runs, run), j+1
	}
	return runs, false
}
