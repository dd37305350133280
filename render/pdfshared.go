package render

import (
	"bytes"
	"fmt"
	"reflect"
	"regexp"
	"strconv"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/pdf"
)

// Ground that several sheets show alike is drawn once, as a form (ISO 32000-1,
// 8.10), and each page draws the form. Canvas knows of no forms: it draws a mark
// in its place, off the paper, which is replaced afterwards.

// sharedForms are the groups that stand on several sheets.
type sharedForms struct{ groups []Group }

// leastShared is how many points make a group worth sharing.
const leastShared = 60

// sharedBy finds the groups that sheets share: without text, which needs
// fonts.
func sharedBy(sheets []*Sheet) sharedForms {
	var shared sharedForms
	met := make(map[string][]Group)
	for _, s := range sheets {
		for _, e := range s.Elements {
			g, ok := e.(Group)
			if !ok || !worthSharing(g) || shared.index(e) >= 0 {
				continue
			}
			if among(met[g.ID], g) {
				shared.groups = append(shared.groups, g)
			}
			met[g.ID] = append(met[g.ID], g)
		}
	}
	return shared
}

func among(groups []Group, g Group) bool {
	for _, other := range groups {
		if reflect.DeepEqual(other, g) {
			return true
		}
	}
	return false
}

func worthSharing(g Group) bool {
	points, texts := 0, 0
	visit(g.Elements, func(e Element) {
		switch e := e.(type) {
		case Text:
			texts++
		case Path:
			for _, line := range e.Lines {
				points += len(line.Points)
			}
		}
	})
	return texts == 0 && points >= leastShared
}

// index is the number of the form that an element is; -1 if it is none.
func (s sharedForms) index(e Element) int {
	g, ok := e.(Group)
	if !ok {
		return -1
	}
	for i, shared := range s.groups {
		if shared.ID == g.ID && reflect.DeepEqual(shared, g) {
			return i
		}
	}
	return -1
}

const formMark = 9000 // mm off the paper

// mark draws what a form is replaced for.
func (p *painter) mark(form int) {
	at := float64(-formMark - form)
	path := &canvas.Path{}
	path.MoveTo(at, -formMark)
	path.LineTo(at, -formMark-1)
	path.LineTo(at-1, -formMark-1)
	path.Close()
	p.on.RenderPath(path, canvas.Style{Fill: paint(black)}, canvas.Identity)
}

var (
	drawnMark = regexp.MustCompile(`-(\d+) -9000 m -\d+ -9001 l -\d+ -9001 l (?:h )?f`)
	// pageStart is the measure with which every page of canvas begins.
	pageStart = regexp.MustCompile(`^[\d.]+ 0 0 [\d.]+ 0 0 cm `)
)

// formStart is the state of a page in which canvas begins to draw.
const formStart = "0 g 0 G 1 w 0 J 0 j 10 M [] 0 d "

// drawForms returns the streams of the forms.
func (s sharedForms) drawForms(width, height float64) ([][]byte, error) {
	if len(s.groups) == 0 {
		return nil, nil
	}
	var raw bytes.Buffer
	file := pdf.New(&raw, width, height, &pdf.Options{})
	p := painter{on: file}
	for i, g := range s.groups {
		if i > 0 {
			file.NewPage(width, height)
		}
		p.draw(g.Elements)
	}
	file.Close() // a buffer takes every write
	document, err := takeApart(raw.Bytes())
	if err != nil {
		return nil, err
	}
	var streams [][]byte
	for _, object := range document.objects {
		if start := pageStart.Find(object.stream); start != nil {
			streams = append(streams, append([]byte(formStart), object.stream[len(start):]...))
		}
	}
	if len(streams) != len(s.groups) {
		return nil, errRawPDF
	}
	return streams, nil
}

// share draws forms where they are marked, and returns their objects, which
// follow those of the document.
func (d *pdfDocument) share(forms sharedForms, sheets []*Sheet) ([]pdfObject, error) {
	var width, height float64
	for _, s := range sheets {
		width, height = max(width, s.Width), max(height, s.Height)
	}
	streams, err := forms.drawForms(width, height)
	if err != nil || len(streams) == 0 {
		return nil, err
	}
	var objects []pdfObject
	var names bytes.Buffer
	for i, stream := range streams {
		stream = packed(stream)
		objects = append(objects, pdfObject{
			value:  fmt.Appendf(nil, "<</Type/XObject/Subtype/Form/BBox[0 0 %g %g]/Resources<<>>/Filter/FlateDecode/Length %d>>", width, height, len(stream)),
			stream: stream,
		})
		fmt.Fprintf(&names, "/G%d %d 0 R", i, len(d.objects)+len(objects))
	}
	drawn := 0
	for i, object := range d.objects {
		if bytes.HasPrefix(object.value, []byte("<</Type/Page/")) {
			d.objects[i].value = bytes.Replace(object.value, []byte("/Resources<<"), append([]byte("/Resources<</XObject<<"), append(names.Bytes(), ">>"...)...), 1)
			if len(d.objects[i].value) == len(object.value) {
				return nil, errRawPDF
			}
		}
		if object.stream == nil {
			continue
		}
		d.objects[i].stream = drawnMark.ReplaceAllFunc(object.stream, func(mark []byte) []byte {
			drawn++
			number, _ := strconv.Atoi(string(drawnMark.FindSubmatch(mark)[1])) // digits
			return fmt.Appendf(nil, "/G%d Do", number-formMark)
		})
	}
	if drawn < 2*len(streams) {
		return nil, errRawPDF
	}
	return objects, nil
}
