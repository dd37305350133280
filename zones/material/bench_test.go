package material

import "testing"

func BenchmarkBestPacks(b *testing.B) {
	for _, bb := range []struct {
		name  string
		packs []Pack
	}{
		{"bags", packs("50 lb", "25 lb", "18 lb")},
		{"jugs", packs("2.5 gal", "1 gal", "1 qt", "1 pt")},
		{"lb-and-kg", packs("50 lb", "20 kg", "10 kg", "5 lb")},
		{"tote-to-pail", packs("2000 lb", "50 lb", "7 lb")},
	} {
		b.Run(bb.name, func(b *testing.B) {
			need := Amount{bb.packs[0].Size.By, 1234.5}
			for b.Loop() {
				if _, err := BestPacks(need, bb.packs); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		mustParse("0.75 lb N / 1000 ft2")
	}
}
