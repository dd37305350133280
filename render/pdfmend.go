package render

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"unicode/utf16"
)

// mendFonts sets the descent of fonts below the base line, where ISO 32000-1,
// table 122, has it; canvas gives it without the sign.
func (d *pdfDocument) mendFonts() {
	for i, object := range d.objects {
		d.objects[i].value = bytes.Replace(object.value, []byte("/Descent "), []byte("/Descent -"), 1)
	}
}

// mendStreams packs every stream, and pins the dates in fonts. Canvas packs
// fonts itself, and leaves all else bare as asked.
func (d *pdfDocument) mendStreams() error {
	for i, object := range d.objects {
		if object.stream == nil {
			continue
		}
		fontLength := ""
		if bytes.Contains(object.value, []byte("/FlateDecode")) {
			font, err := unpacked(object.stream)
			if err != nil {
				return fmt.Errorf("%w: %w", errRawPDF, err)
			}
			pinDates(font)
			object.stream = font
			fontLength = fmt.Sprintf("/Length1 %d", len(font)) // ISO 32000-1, table 127
		}
		object.stream = withLetters(object.stream)
		stream := packed(object.stream)
		d.objects[i] = pdfObject{
			value:  fmt.Appendf(nil, "<</Filter/FlateDecode/Length %d%s>>", len(stream), fontLength),
			stream: stream,
		}
	}
	return nil
}

// pdfString writes a text string (ISO 32000-1, 7.9.2.2) in hexadecimal, which
// needs no escapes.
func pdfString(text string) string {
	units := utf16.Encode([]rune("\uFEFF" + text))
	out := []byte{'<'}
	for _, u := range units {
		out = fmt.Appendf(out, "%04X", u)
	}
	return string(append(out, '>'))
}

func packed(data []byte) []byte {
	var out bytes.Buffer
	w := zlib.NewWriter(&out)
	w.Write(data) // a buffer takes every write
	w.Close()
	return out.Bytes()
}

func unpacked(data []byte) ([]byte, error) {
	r, err := zlib.NewReader(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	return io.ReadAll(r)
}
