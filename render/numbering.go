package render

import "slices"

// A numbered is a text that tells the number of a sheet. It is drawn once
// sheets are [Bound].
type numbered struct {
	text  Text
	sheet *Sheet // nil is the one it stands on
	words func(number, count int) string
}

func (numbered) element() {}

// Bound returns the sheets as they go together into one file or one set of
// files, in this order: each tells its number, "sheet 2 of 5", and those that
// point to another tell where it is. A sheet alone needs no number.
func Bound(sheets ...*Sheet) []*Sheet {
	if len(sheets) < 2 {
		return sheets
	}
	bound := make([]*Sheet, len(sheets))
	for i, s := range sheets {
		own := *s
		own.Elements = numberedAs(s.Elements, func(n numbered) (Text, bool) {
			number := i
			if n.sheet != nil {
				number = slices.Index(sheets, n.sheet)
			}
			n.text.String = n.words(number+1, len(sheets))
			return n.text, number >= 0
		})
		bound[i] = &own
	}
	return bound
}

// numberedAs returns the elements with texts in place of what tells numbers.
func numberedAs(elements []Element, text func(numbered) (Text, bool)) []Element {
	told := make([]Element, 0, len(elements))
	for _, e := range elements {
		switch e := e.(type) {
		case Group:
			e.Elements = numberedAs(e.Elements, text)
			told = append(told, e)
		case numbered:
			if t, known := text(e); known {
				told = append(told, t)
			}
		default:
			told = append(told, e)
		}
	}
	return told
}
