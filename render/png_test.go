package render

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/png"
	"math"
	"testing"
)

func drawn(t *testing.T, s *Sheet, dpi float64) image.Image {
	t.Helper()
	file, err := PNG(s, dpi)
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

func dark(c color.Color) bool {
	r, g, b, _ := c.RGBA()
	return r+g+b < 3*0x8000
}

func TestPNGPrintsTrueToSize(t *testing.T) {
	file, err := PNG(ruler(), 300)
	if err != nil {
		t.Fatal(err)
	}
	at := bytes.Index(file, []byte("pHYs"))
	if at < 0 {
		t.Fatal("the picture bears no resolution")
	}
	across, unit := binary.BigEndian.Uint32(file[at+4:]), file[at+12]
	if across != 11811 || unit != 1 { // 300 / 0.0254, unit metre
		t.Errorf("resolution is %d, unit %d", across, unit)
	}
	picture := drawn(t, ruler(), 300)
	if size := picture.Bounds().Size(); size != (image.Point{2550, 3300}) {
		t.Errorf("letter paper is %v pixels", size)
	}
	first, last := math.MaxInt, 0
	row := int(math.Round((Letter.Height - 100) / mmPerInch * 300))
	for x := range 2550 {
		if dark(picture.At(x, row)) {
			first, last = min(first, x), max(last, x)
		}
	}
	if length := float64(last-first+1) / 300 * mmPerInch; math.Abs(length-rulerMM) > 0.1 {
		t.Errorf("100 ft are drawn %g mm long", length)
	}
}

func TestPNGShowsHolesDashesAndInks(t *testing.T) {
	s := NewSheet("x", "x", Paper{"card", 60, 40})
	s.Add(
		Path{Lines: append(box(10, 10, 20), ring{{15, 15}, {15, 25}, {25, 25}, {25, 15}}).lines(), Fill: blue},
		Path{Lines: []Line{{Points: []Point{{0, 35}, {60, 35}}}}, Stroke: vermillion, Weight: 2, Dash: []float64{10, 5}},
	)
	picture := drawn(t, s, 254) // ten pixels a millimetre
	for _, tt := range []struct {
		name string
		x, y int // mm
		want Ink
	}{
		{"fill", 12, 12, blue},
		{"hole", 20, 20, white},
		{"paper", 5, 5, white},
		{"first dash", 5, 35, vermillion},
		{"gap", 12, 35, white},
		{"second dash", 20, 35, vermillion},
	} {
		r, g, b, _ := picture.At(tt.x*10, 400-tt.y*10).RGBA()
		if got := RGB(r>>8<<16 | g>>8<<8 | b>>8); got != tt.want {
			t.Errorf("%s is %s, want %s", tt.name, got, tt.want)
		}
	}
}

func TestPNGRefusesOddResolutions(t *testing.T) {
	for _, dpi := range []float64{0, -1, 0.01, 1e5, 1e300, math.NaN(), math.Inf(1)} {
		if _, err := PNG(ruler(), dpi); err == nil {
			t.Errorf("%g dots per inch are taken", dpi)
		}
	}
}
