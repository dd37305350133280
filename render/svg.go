package render

import (
	"bytes"
	"fmt"
	"strings"
)

// SVG writes the sheet as a drawing of its own: true size, named groups, text
// as text, fonts embedded in part. It keeps to SVG 1.1 but for paint-order,
// which halos need. Inside an HTML page it goes as it stands; sheets of one
// page need different IDs.
func SVG(sheet *Sheet) ([]byte, error) {
	if err := sheet.check(); err != nil {
		return nil, err
	}
	w := svgWriter{height: sheet.Height, name: xmlName(sheet.ID), used: map[string]bool{}}
	w.used[w.name] = true
	used := lettersOf(sheet.Elements)
	w.printf("<svg xmlns=\"http://www.w3.org/2000/svg\" id=\"%s\" width=\"%smm\" height=\"%[3]smm\" viewBox=\"0 0 %[2]s %[3]s\""+
		" role=\"img\" aria-labelledby=\"%[1]s-title %[1]s-desc\" lang=\"%[4]s\" xml:lang=\"%[4]s\""+
		" font-family=\"%[5]s\" fill=\"none\" stroke-linejoin=\"round\">\n",
		w.name, decimal(sheet.Width), decimal(sheet.Height), sheet.lang(), w.families(used))
	w.printf("<title id=\"%s-title\">%s</title>\n", w.name, escaped(plain(sheet.Title)))
	w.printf("<desc id=\"%s-desc\">%s</desc>\n", w.name, escaped(plain(sheet.Subject)))
	if err := w.fonts(used); err != nil {
		return nil, err
	}
	w.printf("<path fill=\"%s\" d=\"M0 0H%sV%sH0z\"/>\n", white, decimal(sheet.Width), decimal(sheet.Height))
	w.elements(sheet.Elements)
	w.printf("</svg>\n")
	return w.out.Bytes(), nil
}

type svgWriter struct {
	out    bytes.Buffer
	height float64
	name   string          // of the sheet, first part of every id
	used   map[string]bool // ids
}

func (w *svgWriter) printf(format string, v ...any) { fmt.Fprintf(&w.out, format, v...) }

func (w *svgWriter) elements(elements []Element) {
	for _, e := range elements {
		switch e := e.(type) {
		case Group:
			w.group(e)
		case Path:
			w.path(e)
		case Text:
			w.text(e)
		}
	}
}

func (w *svgWriter) group(g Group) {
	w.printf("<g")
	if g.ID != "" {
		w.printf(" id=\"%s\"", w.unusedID(g.ID))
	}
	if title := plain(g.Title); title != "" {
		w.printf(" role=\"group\">\n<title>%s</title>\n", escaped(title))
	} else {
		w.printf(">\n")
	}
	w.elements(g.Elements)
	w.printf("</g>\n")
}

func (w *svgWriter) path(p Path) {
	drawn := !p.Stroke.none() && p.Weight > 0
	if len(p.Lines) == 0 || p.Fill.none() && !drawn {
		return
	}
	w.printf("<path")
	if !p.Fill.none() {
		w.printf(" fill=\"%s\"", p.Fill)
	}
	if drawn {
		w.printf(" stroke=\"%s\" stroke-width=\"%s\"", p.Stroke, decimal(p.Weight))
		if len(p.Dash) > 0 {
			w.printf(" stroke-dasharray=\"%s\"", decimals(p.Dash))
		}
		if p.Round {
			w.printf(" stroke-linecap=\"round\"")
		}
	}
	w.printf(" d=\"")
	for _, line := range p.Lines {
		w.line(line)
	}
	w.printf("\"/>\n")
}

func (w *svgWriter) line(line Line) {
	if len(line.Points) < 2 {
		return
	}
	for i, q := range line.Points {
		if i == 0 {
			w.out.WriteByte('M')
		} else {
			w.out.WriteByte(' ')
		}
		w.out.Write(appendDecimal(w.out.AvailableBuffer(), q.X))
		w.out.WriteByte(' ')
		w.out.Write(appendDecimal(w.out.AvailableBuffer(), w.height-q.Y))
	}
	if line.Closed {
		w.out.WriteByte('z')
	}
}

func (w *svgWriter) text(t Text) {
	if t.String == "" || t.Ink.none() {
		return
	}
	haloed := t.Halo > 0
	if haloed && !t.Face.hasAll(t.String) {
		w.path(t.halo()) // viewers draw run after run, each with its rim over the one before
		haloed = false
	}
	x, y := decimal(t.At.X), decimal(w.height-t.At.Y)
	w.printf("<text x=\"%s\" y=\"%s\" font-size=\"%s\" fill=\"%s\"", x, y, decimal(t.Size*mmPerPoint), t.Ink)
	if cut := cuts[t.Face]; t.Face != Regular {
		w.printf(" font-weight=\"%d\" font-style=\"%s\"", cut.weight, cut.style)
	}
	if t.Anchor != Start {
		w.printf(" text-anchor=\"%s\"", [...]string{Middle: "middle", End: "end"}[t.Anchor])
	}
	if t.Turn != 0 {
		w.printf(" transform=\"rotate(%s %s %s)\"", decimal(-t.Turn), x, y)
	}
	if haloed {
		w.printf(" stroke=\"%s\" stroke-width=\"%s\" paint-order=\"stroke\"", t.clear(), decimal(2*t.Halo))
	}
	w.printf(">%s</text>\n", escaped(t.String))
}

// unusedID returns an id that no element of the sheet has yet.
func (w *svgWriter) unusedID(id string) string {
	stem := w.name + "-" + xmlName(id)
	unused := stem
	for n := 2; w.used[unused]; n++ {
		unused = fmt.Sprintf("%s-%d", stem, n)
	}
	w.used[unused] = true
	return unused
}

// xmlName makes a short name fit for an id: letters and digits of ASCII, with
// hyphens for all else.
func xmlName(name string) string {
	parts := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	})
	fit := strings.Join(parts, "-")
	if fit == "" || fit[0] <= '9' {
		fit = "s" + fit
	}
	return fit
}

var markup = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escaped(text string) string { return markup.Replace(text) }
