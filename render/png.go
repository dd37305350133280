package render

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/draw"
	"image/png"
	"math"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/rasterizer"
)

// ScreenDPI is a resolution fit for screens and quick prints; 300 is that of
// an office printer.
const ScreenDPI = 150

// mostPixels bounds the memory of a picture to about 400 MB; an A3 sheet at
// 600 dots per inch has 70 million.
const mostPixels = 100_000_000

// PNG writes the sheet as a picture with dpi dots per inch, which prints true
// to size where the printer heeds the picture's own resolution.
func PNG(sheet *Sheet, dpi float64) ([]byte, error) {
	if err := sheet.check(); err != nil {
		return nil, err
	}
	width, height := math.Round(sheet.Width/mmPerInch*dpi), math.Round(sheet.Height/mmPerInch*dpi)
	if !(width >= 1 && height >= 1 && width*height <= mostPixels) {
		return nil, fmt.Errorf("sheet %q at %g dots per inch: use at least one pixel and at most %d million", sheet.ID, dpi, mostPixels/1_000_000)
	}
	picture := image.NewRGBA(image.Rect(0, 0, int(width), int(height)))
	draw.Draw(picture, picture.Bounds(), image.White, image.Point{}, draw.Src)
	p := painter{on: rasterizer.FromImage(picture, canvas.DPI(dpi), canvas.LinearColorSpace{}), outlined: true}
	p.draw(sheet.Elements)

	var file bytes.Buffer
	if err := png.Encode(&file, picture); err != nil {
		return nil, err
	}
	return withResolution(file.Bytes(), dpi), nil
}

// withResolution puts the resolution into a PNG file: a pHYs chunk after the
// header (ISO/IEC 15948:2004, 11.3.5.3).
func withResolution(file []byte, dpi float64) []byte {
	const (
		header = 8 + 25 // signature and IHDR
		length = 9
		metre  = 1 // unit
	)
	perMetre := uint32(math.Round(dpi / mmPerInch * 1000))
	chunk := binary.BigEndian.AppendUint32(nil, length)
	chunk = append(chunk, "pHYs"...)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = append(chunk, metre)
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
	return bytes.Join([][]byte{file[:header], chunk, file[header:]}, nil)
}
