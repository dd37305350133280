package render

import "math"

// A groundTile is a square picture of a class of ground in linear light, row by
// row: red, green and blue from 0 to 1.
type groundTile struct {
	side   int
	pixels [][3]float64
}

// seen returns the tile as changed pixel by pixel.
func (t groundTile) seen(change func([3]float64) [3]float64) groundTile {
	changed := groundTile{t.side, make([][3]float64, len(t.pixels))}
	for i, p := range t.pixels {
		changed.pixels[i] = change(p)
	}
	return changed
}

// seenWith is what eyes of a kind see of a pixel.
func seenWith(sight matrix) func([3]float64) [3]float64 {
	all := cones.inverse()
	return func(rgb [3]float64) [3]float64 {
		seen := all.of(sight.of(cones.of(rgb)))
		for i := range seen {
			seen[i] = max(0, min(1, seen[i]))
		}
		return seen
	}
}

// greyed is the light of a pixel without its colour (IEC 61966-2-1).
func greyed(rgb [3]float64) [3]float64 {
	y := brightness(rgb)
	return [3]float64{y, y, y}
}

func brightness(rgb [3]float64) float64 { return 0.2126*rgb[0] + 0.7152*rgb[1] + 0.0722*rgb[2] }

// meanColour is the colour of the tile from afar, in L*a*b*.
func (t groundTile) meanColour() [3]float64 {
	var sum [3]float64
	for _, p := range t.pixels {
		for i := range p {
			sum[i] += p[i] / float64(len(t.pixels))
		}
	}
	return lab(sum)
}

// copied is the tile after a photocopier: blurred by the spread of the toner,
// then black or white (common practice, no source).
func (t groundTile) copied() groundTile {
	const spread = 0.08 / mmPerInch * tileDPI // pixels
	rows := t.blurred(spread, 1)
	both := rows.blurred(spread, t.side)
	return both.seen(func(p [3]float64) [3]float64 {
		if brightness(p) < 0.5 {
			return [3]float64{}
		}
		return [3]float64{1, 1, 1}
	})
}

// blurred blurs along rows (step 1) or columns (step side), with the tile
// going on round its edges.
func (t groundTile) blurred(sigma float64, step int) groundTile {
	reach := int(math.Ceil(3 * sigma))
	out := groundTile{t.side, make([][3]float64, len(t.pixels))}
	for i := range t.pixels {
		x, y := i%t.side, i/t.side
		var total float64
		for k := -reach; k <= reach; k++ {
			w := math.Exp(-float64(k*k) / (2 * sigma * sigma))
			j := y*t.side + (x+k+t.side)%t.side
			if step != 1 {
				j = (y+k+t.side)%t.side*t.side + x
			}
			for c := range 3 {
				out.pixels[i][c] += w * t.pixels[j][c]
			}
			total += w
		}
		for c := range 3 {
			out.pixels[i][c] /= total
		}
	}
	return out
}
