package render

import (
	"errors"
	"fmt"
	"math"
)

// Limits of what a sheet may hold, in millimetres.
const (
	largestSheet  = 1500 // longer than A0
	sheetDiagonal = largestSheet * math.Sqrt2
	farthest      = 100_000 // of a point from the corner; beyond it lies a mistake
	shortestDash  = 0.01    // less than any printer's dot
)

// check reports everything about a sheet that cannot be drawn.
func (s *Sheet) check() error {
	var problems []error
	if !(s.Width > 0 && s.Width <= largestSheet && s.Height > 0 && s.Height <= largestSheet) {
		problems = append(problems, fmt.Errorf("paper of %g x %g mm: use 1 to %d mm a side", s.Width, s.Height, largestSheet))
	}
	visit(s.Elements, func(e Element) {
		var err error
		switch e := e.(type) {
		case Path:
			err = e.check()
		case Text:
			err = e.check()
		default:
			err = fmt.Errorf("element %T: add a Path, Text or Group itself, not a pointer to it", e)
		}
		if err != nil {
			problems = append(problems, err)
		}
	})
	if len(problems) == 0 {
		return nil
	}
	return fmt.Errorf("sheet %q cannot be drawn: %w", s.ID, errors.Join(problems...))
}

func (p Path) check() error {
	if !isLength(p.Weight) {
		return fmt.Errorf("line weight of %g mm", p.Weight)
	}
	for _, length := range p.Dash {
		if !isLength(length) || length < shortestDash {
			return fmt.Errorf("dash of %g mm: dashes and gaps are %g mm long at least", length, shortestDash)
		}
	}
	for _, line := range p.Lines {
		for _, q := range line.Points {
			if !q.finite() {
				return fmt.Errorf("path through %g, %g mm, which is no place on a sheet", q.X, q.Y)
			}
		}
	}
	return nil
}

func (t Text) check() error {
	switch missing := missing(t.String); {
	case len(missing) > 0:
		return fmt.Errorf("text %q: the typefaces have no %U: make it legible first", t.String, missing)
	case t.Face < 0 || int(t.Face) >= faces:
		return fmt.Errorf("text %q: face %d is not known", t.String, int(t.Face))
	case !t.At.finite():
		return fmt.Errorf("text %q at %g, %g mm, which is no place on a sheet", t.String, t.At.X, t.At.Y)
	case !isLength(t.Size) || t.Size == 0 || !isLength(t.Halo) || !(math.Abs(t.Turn) <= 360):
		return fmt.Errorf("text %q: size %g pt, halo %g mm, turned by %g degrees", t.String, t.Size, t.Halo, t.Turn)
	}
	return nil
}

func (p Point) finite() bool { return math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest }

func isLength(v float64) bool { return v >= 0 && v <= largestSheet }
