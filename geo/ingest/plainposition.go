package ingest

import "github.com/paulmach/orb"

// plainPosition reads a position into the row if it is written as almost all
// are: two plain numbers on the globe and no blank but one after the comma.
// Otherwise it leaves the position for another look.
func (c *coordinates) plainPosition() bool {
	from := c.at
	if c.text[from] != '[' || c.left <= 0 {
		return false
	}
	lon, end := plainDegrees(c.text, from+1)
	if end == 0 || c.text[end] != ',' {
		return false
	}
	if end++; c.text[end] == ' ' {
		end++
	}
	lat, end := plainDegrees(c.text, end)
	p := orb.Point{lon, lat}
	if end == 0 || c.text[end] != ']' || checkDegrees(p) != nil {
		return false
	}
	c.left--
	c.at = end + 1
	c.row.add(p, c.text[from:c.at])
	return true
}

// plainDegrees reads a number that begins at i and has no exponent nor more
// digits than a double holds for sure, and returns the index after it; 0 if
// another value stands there. It gives the same doubles as parseNumber.
func plainDegrees(text []byte, i int) (v float64, end int) {
	negative := text[i] == '-'
	if negative {
		i++
	}
	var whole uint64
	first, point := i, -1
	for ; ; i++ {
		if digit := text[i] - '0'; digit <= 9 {
			whole = whole*10 + uint64(digit)
		} else if text[i] == '.' && point < 0 {
			point = i
		} else {
			break
		}
	}
	digits, places := i-first, 0
	if point >= 0 {
		digits, places = digits-1, i-1-point
	}
	const most = 18 // digits that cannot overflow
	if digits == 0 || digits > most || whole > 1<<53 {
		return 0, 0
	}
	v = float64(whole) / powers[places]
	if negative {
		v = -v
	}
	return v, i
}
