package render

import (
	"math"
	"strings"
	"testing"
)

func sampleTable() table {
	return table{
		columns: []column{{head: "Zone"}, {head: "What it is", wrap: true}, {head: "ft²", anchor: End}},
		rows:    [][]string{{"A", "Front lawn", "9,870"}, {"B", "Side strip between walk and drive", "410"}, {"C"}},
		totals:  [][]string{{"", "Turf", "10,280"}},
		size:    9,
	}
}

// textsAndRules parts what a table is made of.
func textsAndRules(elements []Element) (texts []Text, rules []Path) {
	visit(elements, func(e Element) {
		switch e := e.(type) {
		case Text:
			texts = append(texts, e)
		case Path:
			rules = append(rules, e)
		}
	})
	return texts, rules
}

func TestTableStaysInItsColumn(t *testing.T) {
	for _, width := range []float64{20, 40, 60, 150} {
		elements, height := sampleTable().set(Point{10, 200}, width)
		texts, rules := textsAndRules(elements)
		for _, text := range texts {
			left := text.At.X - text.width()*text.Anchor.share()
			if left < 10-1e-6 || left+text.width() > 10+width+1e-6 {
				t.Errorf("%g mm: %q runs from %g to %g", width, text.String, left, left+text.width())
			}
			if text.At.Y > 200 || text.At.Y < 200-height {
				t.Errorf("%g mm: %q stands at %g, outside the table", width, text.String, text.At.Y)
			}
		}
		for _, rule := range rules {
			if got := lengthOf(rule.Lines); math.Abs(got-width) > 1e-9 {
				t.Errorf("%g mm: a rule is %g mm long", width, got)
			}
		}
		if bottom := rules[len(rules)-1].Lines[0].Points[0].Y; math.Abs(200-height-bottom) > 1e-9 {
			t.Errorf("%g mm: the last rule is at %g, the height %g", width, bottom, height)
		}
	}
}

// Figures that find no room beside each other stand in lines under the words.
func TestTableCutsNoFigures(t *testing.T) {
	table := sampleTable()
	for _, head := range []string{"A pass", "Mix a pass", "2 passes", "Left"} {
		table.columns = append(table.columns, column{head: head, anchor: End})
		for i := range table.rows[:2] {
			table.rows[i] = append(table.rows[i], "1,234.5 fl oz")
		}
	}
	for _, width := range []float64{35, 45, 60, 90} {
		elements, _ := table.set(Point{10, 200}, width)
		texts, _ := textsAndRules(elements)
		figures := 0
		for _, text := range texts {
			if strings.HasSuffix(text.String, "…") {
				t.Errorf("%g mm: %q is cut", width, text.String)
			}
			if left := text.At.X - text.width()*text.Anchor.share(); left < 10-1e-6 {
				t.Errorf("%g mm: %q begins at %g, left of the table", width, text.String, left)
			}
			if text.String == "1,234.5 fl oz" {
				figures++
			}
		}
		if figures != 8 {
			t.Errorf("%g mm: %d figures, want 8", width, figures)
		}
	}
}

func TestTableNumbersLineUp(t *testing.T) {
	elements, _ := sampleTable().set(Point{10, 200}, 60)
	texts, _ := textsAndRules(elements)
	var ends []float64
	for _, text := range texts {
		if strings.ContainsAny(text.String, "0123456789") {
			if text.Anchor != End {
				t.Errorf("%q is not flush right", text.String)
			}
			ends = append(ends, text.At.X)
		}
	}
	if len(ends) != 3 || ends[0] != ends[1] || ends[1] != ends[2] {
		t.Errorf("numbers end at %v", ends)
	}
}

func TestTableShortensAndWraps(t *testing.T) {
	table := sampleTable()
	_, wide := table.set(Point{}, 100)
	if _, narrow := table.set(Point{}, 45); narrow <= wide {
		t.Errorf("a narrow table is %g mm high, a wide one %g", narrow, wide)
	}
	table.columns[1] = column{head: "What it is", width: 20}
	elements, _ := table.set(Point{}, 60)
	texts, _ := textsAndRules(elements)
	var cut []string
	for _, text := range texts {
		if strings.HasSuffix(text.String, "…") {
			cut = append(cut, text.String)
		}
	}
	if len(cut) != 1 || !strings.HasPrefix(cut[0], "Side strip") {
		t.Errorf("shortened: %q", cut)
	}
}

func TestTableOfNothing(t *testing.T) {
	elements, height := table{size: 9}.set(Point{0, 100}, 50)
	s := NewSheet("x", "x", A4)
	s.Add(elements...)
	if err := s.check(); err != nil || height <= 0 {
		t.Errorf("height %g, %v", height, err)
	}
}
