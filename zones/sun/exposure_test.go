package sun

import (
	"slices"
	"testing"
)

func TestParseLimits(t *testing.T) {
	for _, tt := range []struct {
		text, err string
		want      Limits
	}{
		{text: "6,4,2", want: Limits{6, 4, 2}},
		{text: " 8, 5.5 ,3 ", want: Limits{8, 5.5, 3}},
		{text: "6,4", err: `limits "6,4" are not three: write the least hours of full sun, part sun and shade, as in 6,4,2`},
		{text: "6,4,2,1", err: `limits "6,4,2,1" are not three: write the least hours of full sun, part sun and shade, as in 6,4,2`},
		{text: "", err: `limits "" are not three: write the least hours of full sun, part sun and shade, as in 6,4,2`},
		{text: "2,4,6", err: `limits "2,4,6" do not descend: write them as in 6,4,2`},
		{text: "6,6,2", err: `limits "6,6,2" do not descend: write them as in 6,4,2`},
		{text: "6,4,0", err: `limit "0" is not a number of hours between 0 and 24`},
		{text: "25,4,2", err: `limit "25" is not a number of hours between 0 and 24`},
		{text: "6,4h,2", err: `limit "4h" is not a number of hours between 0 and 24`},
		{text: "NaN,4,2", err: `limit "NaN" is not a number of hours between 0 and 24`},
	} {
		got, err := ParseLimits(tt.text)
		if err != nil || tt.err != "" {
			if err == nil || err.Error() != tt.err {
				t.Errorf("%q: error %v, want %s", tt.text, err, tt.err)
			}
			continue
		}
		if again, err := ParseLimits(got.String()); !slices.Equal(got, tt.want) || err != nil || !slices.Equal(again, got) {
			t.Errorf("%q: %v, written and read %v, want %v", tt.text, got, again, tt.want)
		}
	}
}

func TestExposure(t *testing.T) {
	for hours, want := range map[float64]Exposure{14: FullSun, 6: FullSun, 5.999: PartSun, 4: PartSun, 3.9: FullShade, 2: FullShade, 1.9: DeepShade, 0: DeepShade} {
		if got := DefaultLimits().Exposure(hours); got != want {
			t.Errorf("%g h: %s, want %s", hours, got, want)
		}
	}
}
