package render

import "math"

const (
	coarsest, finest = 12.0, 0.4 // mm, periods of texture that count
	octaves          = 5
	directions       = 8
)

// texture is how much a tile's lightness changes, by period and direction: root
// mean squares in units of L*, of the spectrum under a Hann window.
func (t groundTile) texture() (bins [octaves * directions]float64) {
	n := t.side
	values := make([]complex128, n*n)
	mean := 0.0
	for i, p := range t.pixels {
		l := lab(p)[0]
		values[i] = complex(l, 0)
		mean += l / float64(n*n)
	}
	for i := range values {
		window := hann(i%n, n) * hann(i/n, n)
		values[i] = (values[i] - complex(mean, 0)) * complex(window, 0)
	}
	const hannPower = 3. / 8 * 3. / 8 // share of the power that the window leaves
	for i, v := range transformed(values, n) {
		u, w := wave(i%n, n), wave(i/n, n)
		frequency := math.Hypot(u, w) / (float64(n) / tileDPI * mmPerInch) // per mm
		if frequency < 1/coarsest || frequency >= 1/finest {
			continue
		}
		octave := int(octaves * math.Log(frequency*coarsest) / math.Log(coarsest/finest))
		angle := math.Mod(math.Atan2(w, u)+math.Pi, math.Pi)
		direction := int(angle/math.Pi*directions+0.5) % directions
		power := (real(v)*real(v) + imag(v)*imag(v)) / math.Pow(float64(n), 4) / hannPower
		bins[octave*directions+direction] += power
	}
	for i := range bins {
		bins[i] = math.Sqrt(bins[i])
	}
	return bins
}

func hann(k, n int) float64 { return 0.5 - 0.5*math.Cos(2*math.Pi*float64(k)/float64(n)) }

func wave(k, n int) float64 {
	if k > n/2 {
		k -= n
	}
	return float64(k)
}

// transformed is the discrete Fourier transform of a square, side a power of
// two.
func transformed(values []complex128, n int) []complex128 {
	line := make([]complex128, n)
	for y := range n {
		fourier(values[y*n : (y+1)*n])
	}
	for x := range n {
		for y := range n {
			line[y] = values[y*n+x]
		}
		fourier(line)
		for y := range n {
			values[y*n+x] = line[y]
		}
	}
	return values
}

// fourier transforms in place (Cooley and Tukey 1965).
func fourier(v []complex128) {
	n := len(v)
	if n == 1 {
		return
	}
	even, odd := make([]complex128, n/2), make([]complex128, n/2)
	for i := range even {
		even[i], odd[i] = v[2*i], v[2*i+1]
	}
	fourier(even)
	fourier(odd)
	for i := range even {
		sin, cos := math.Sincos(-2 * math.Pi * float64(i) / float64(n))
		w := complex(cos, sin) * odd[i]
		v[i], v[i+n/2] = even[i]+w, even[i]-w
	}
}
