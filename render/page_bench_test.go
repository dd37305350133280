package render

import (
	"fmt"
	"math"
	"testing"
)

// busyPage has 60 filled areas, 200 lines and 150 labels.
func busyPage(pattern *pattern) *Sheet {
	s := NewSheet("busy", "Busy page", Letter)
	for i := range 60 {
		area := wobbly(20, Point{20 + 18*float64(i%10), 30 + 40*float64(i/10)}, 8)
		s.Add(Path{Lines: area.lines(), Fill: bluishGreen.tint(0.2), Stroke: black, Weight: hairLine})
		if pattern != nil {
			s.Add(pattern.fill(area, black))
		}
	}
	for i := range 200 {
		turn := float64(i) * math.Pi / 100
		s.Add(Path{Lines: []Line{{Points: []Point{Point{108, 140}.polar(20, turn), Point{108, 140}.polar(90, turn)}}}, Stroke: blue, Weight: thinLine})
	}
	for i := range 150 {
		s.Add(Text{At: Point{15 + 36*float64(i%5), 15 + 8.5*float64(i/5)}, String: fmt.Sprintf("Zone %d: %d ft²", i, 137*i), Size: 8, Ink: black})
	}
	return s
}

func BenchmarkPage(b *testing.B) {
	for kind, page := range map[string]*Sheet{"plain": busyPage(nil), "hatched": busyPage(&hatch), "specimen": specimen()} {
		for name, write := range writers {
			b.Run(name+"/"+kind, func(b *testing.B) {
				for b.Loop() {
					file, err := write(page)
					if err != nil {
						b.Fatal(err)
					}
					b.ReportMetric(float64(len(file)), "bytes/file")
				}
			})
		}
	}
}
