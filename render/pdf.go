package render

import (
	"bytes"

	"github.com/tdewolff/canvas/renderers/pdf"
)

// PDF writes sheets as the pages of one document. Text can be selected and
// searched, fonts are embedded in part, and print dialogues are asked to keep
// the scale.
func PDF(sheets ...*Sheet) ([]byte, error) {
	if len(sheets) == 0 {
		return nil, errNoSheets
	}
	for _, s := range sheets {
		if err := s.check(); err != nil {
			return nil, err
		}
	}
	document, err := takeApart(drawPages(sheets))
	if err != nil {
		return nil, err
	}
	if err := document.mendStreams(); err != nil {
		return nil, err
	}
	document.mendFonts()
	document.describe(sheets[0])
	return document.bytes(), nil
}

// drawPages lets canvas draw, with the streams left bare so that they can be
// mended.
func drawPages(sheets []*Sheet) []byte {
	var raw bytes.Buffer
	file := pdf.New(&raw, sheets[0].Width, sheets[0].Height, &pdf.Options{SubsetFonts: true})
	p := painter{on: file}
	for i, s := range sheets {
		if i > 0 {
			file.NewPage(s.Width, s.Height)
		}
		p.draw(s.Elements)
	}
	file.Close() // a buffer takes every write
	return raw.Bytes()
}
