package program

import (
	"fmt"
	"testing"
)

func BenchmarkPlan(b *testing.B) {
	p, _ := BuiltIn("cool")
	on := yard()
	for b.Loop() {
		if _, err := p.Plan(on, Occasion{Today: date(2026, 5, 18)}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkManySteps(b *testing.B) {
	text := head
	for i := range mostSteps {
		text += fmt.Sprintf("  - {id: s%d, does: spread, material: m, rate: 0.1 lb N / 1000 ft2, product: {grade: 20-0-0}}\n", i)
	}
	p := read(b, text)
	for b.Loop() {
		if _, err := p.Plan(yard(), Occasion{Year: 2026}); err != nil {
			b.Fatal(err)
		}
	}
}
