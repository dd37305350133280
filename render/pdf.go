package render

import (
	"bytes"

	"github.com/tdewolff/canvas/renderers/pdf"
)

// PDF writes sheets as the pages of one document, which should be [Bound] first
// if they are several. Text can be selected and searched, fonts are embedded in
// part, print dialogues are asked to keep the scale, and readers that can show
// where one stands find every map on the earth.
func PDF(sheets ...*Sheet) ([]byte, error) {
	if len(sheets) == 0 {
		return nil, errNoSheets
	}
	for _, s := range sheets {
		if err := s.check(); err != nil {
			return nil, err
		}
	}
	forms := sharedBy(sheets)
	document, err := takeApart(drawPages(sheets, forms))
	if err != nil {
		return nil, err
	}
	drawn, err := document.share(forms, sheets)
	if err != nil {
		return nil, err
	}
	if err := document.mendStreams(); err != nil {
		return nil, err
	}
	document.objects = append(document.objects, drawn...)
	document.mendFonts()
	pages, err := document.pages(len(sheets))
	if err != nil {
		return nil, err
	}
	document.placeMaps(pages, sheets)
	document.describe(pages, sheets)
	return document.bytes(), nil
}

// drawPages lets canvas draw, with the streams left bare so that they can be
// mended.
func drawPages(sheets []*Sheet, forms sharedForms) []byte {
	var raw bytes.Buffer
	file := pdf.New(&raw, sheets[0].Width, sheets[0].Height, &pdf.Options{SubsetFonts: true})
	p := painter{on: file}
	for i, s := range sheets {
		if i > 0 {
			file.NewPage(s.Width, s.Height)
		}
		for _, e := range s.Elements {
			if form := forms.index(e); form >= 0 {
				p.mark(form)
			} else {
				p.draw([]Element{e})
			}
		}
	}
	file.Close() // a buffer takes every write
	return raw.Bytes()
}
