package render

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Scale is the denominator of a representative fraction: 240 is 1:240, at
// which an inch on paper is 20 feet on the ground.
type Scale int

const (
	largestScale  Scale = 1
	smallestScale Scale = 1_000_000

	inchesPerFoot = 12
)

// MM returns the length on paper, in millimetres, of metres on the ground.
func (s Scale) MM(metres float64) float64 { return metres * 1000 / float64(s) }

// metres returns the length on the ground, in metres, of millimetres on paper.
func (s Scale) metres(mm float64) float64 { return mm * float64(s) / 1000 }

// String gives the scale in words where whole feet go into an inch, "1 in = 20
// ft (1:240)", and else as a fraction, "1:250".
func (s Scale) String() string {
	if s > 0 && s%inchesPerFoot == 0 {
		return fmt.Sprintf("1 in = %d ft (1:%d)", s/inchesPerFoot, int(s))
	}
	return fmt.Sprintf("1:%d", int(s))
}

var (
	fractionForm = regexp.MustCompile(`^1:(\d+)$`)
	inchForm     = regexp.MustCompile(`^(?:1(?:in|inch|")=)?(\d+)(?:ft|feet|foot|')(?:\(1:(\d+)\))?$`)
)

// ParseScale reads a scale as people write it: "1:240", "1:2,400", "20ft", "1
// in = 20 ft", and whatever [Scale.String] gives.
func ParseScale(text string) (Scale, error) {
	squeezed := strings.ToLower(strings.NewReplacer(" ", "", ",", "").Replace(text))
	if m := fractionForm.FindStringSubmatch(squeezed); m != nil {
		return scaleWithin(text, m[1], 1)
	}
	m := inchForm.FindStringSubmatch(squeezed)
	if m == nil {
		return 0, fmt.Errorf("scale %q is not understood: write it as 1:240 or as 20ft for 1 in = 20 ft", text)
	}
	s, err := scaleWithin(text, m[1], inchesPerFoot)
	if err == nil && m[2] != "" && m[2] != strconv.Itoa(int(s)) {
		return 0, fmt.Errorf("scale %q contradicts itself: 1 in = %s ft is 1:%d", text, m[1], int(s))
	}
	return s, err
}

func scaleWithin(text, digits string, times Scale) (Scale, error) {
	n, err := strconv.Atoi(digits)
	if err != nil || Scale(n) > smallestScale/times || Scale(n) < largestScale {
		return 0, fmt.Errorf("scale %q is out of range: use 1:%d to 1:%d", text, largestScale, int(smallestScale))
	}
	return Scale(n) * times, nil
}

// scaleSeries is a family of scales that people own rulers for.
type scaleSeries struct {
	unit  Scale
	steps []Scale // the first decade, in units
}

// Series to choose from. Engineer's scales are 1 inch to 10, 20, 30, 40, 50
// and 60 feet, metric ones 1:100, 1:200, 1:250, 1:300, 1:400 and 1:500, as on
// the six edges of the rulers; and 1 inch to 80 feet, which the edge of 40
// reads, and 1:750 (common practice, no source). Both go on in tens.
var (
	engineerScales = scaleSeries{10 * inchesPerFoot, []Scale{1, 2, 3, 4, 5, 6, 8}}
	metricScales   = scaleSeries{10, []Scale{10, 20, 25, 30, 40, 50, 75}}
)

// Key maps show where the sheets are that people measure on: they take finer
// steps, to be as large as they can.
var (
	engineerKeyScales = scaleSeries{inchesPerFoot, []Scale{10, 12, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80}}
	metricKeyScales   = scaleSeries{10, []Scale{10, 12, 15, 20, 25, 30, 35, 40, 50, 60, 75}}
)

// fit returns the largest scale of the series at which ground of the given
// width and height, in metres, fits a window of the given size in millimetres.
func (series scaleSeries) fit(width, height, windowWidth, windowHeight float64) (Scale, error) {
	for tens := Scale(1); ; tens *= 10 {
		for _, step := range series.steps {
			s := series.unit * step * tens
			if s > smallestScale {
				return 0, fmt.Errorf("ground of %g x %g m does not fit a window of %g x %g mm at any scale down to 1:%d",
					width, height, windowWidth, windowHeight, int(smallestScale))
			}
			if fits(s.MM(width), windowWidth) && fits(s.MM(height), windowHeight) {
				return s, nil
			}
		}
	}
}

// down are the scales of the series from the largest down to a limit, the
// smallest first.
func (series scaleSeries) down(limit Scale) []Scale {
	var scales []Scale
	for tens := Scale(1); series.unit*series.steps[0]*tens <= limit; tens *= 10 {
		for _, step := range series.steps {
			if s := series.unit * step * tens; s <= limit {
				scales = append(scales, s)
			}
		}
	}
	slices.Reverse(scales)
	return scales
}

// fits allows the last binary digits of a length that just fits.
func fits(length, room float64) bool { return length <= room*(1+1e-12) && !math.IsNaN(length) }
