package render

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
)

var (
	errNoSheets = errors.New("no sheets to write")
	errRawPDF   = errors.New("drawn pages cannot be taken apart: the canvas library writes PDF in another way than it did")
)

// pdfObject is an indirect object (ISO 32000-1, 7.3.10): a value, and for a
// stream its bytes.
type pdfObject struct {
	value  []byte
	stream []byte
}

// pdfDocument holds the objects of a file; the first has number 1. Canvas puts
// the catalog, the information and the page tree first.
type pdfDocument struct{ objects []pdfObject }

const (
	catalogObject = 1
	infoObject    = 2
	pagesObject   = 3
)

var (
	xrefEntry    = regexp.MustCompile(`(\d{10}) 00000 n `)
	streamLength = regexp.MustCompile(`/Length (\d+)`)
)

// takeApart reads a file that canvas has just written, and no other: classic
// cross-reference table, every stream with its length in place.
func takeApart(raw []byte) (*pdfDocument, error) {
	table := bytes.LastIndex(raw, []byte("\nxref\n"))
	if table < 0 {
		return nil, errRawPDF
	}
	var offsets []int
	for _, m := range xrefEntry.FindAllSubmatch(raw[table:], -1) {
		offset, err := strconv.Atoi(string(m[1]))
		if err != nil || offset > table {
			return nil, errRawPDF
		}
		offsets = append(offsets, offset)
	}
	ends := append(slices.Clone(offsets), table+1)
	slices.Sort(ends)

	document := &pdfDocument{}
	for i, offset := range offsets {
		next, _ := slices.BinarySearch(ends, offset+1)
		object, err := readObject(raw[offset:ends[next]], i+1)
		if err != nil {
			return nil, err
		}
		document.objects = append(document.objects, object)
	}
	if len(document.objects) < pagesObject {
		return nil, errRawPDF
	}
	return document, nil
}

func readObject(raw []byte, number int) (pdfObject, error) {
	body, framed := bytes.CutPrefix(raw, fmt.Appendf(nil, "%d 0 obj\n", number))
	body, ended := bytes.CutSuffix(body, []byte("\nendobj\n"))
	if !framed || !ended {
		return pdfObject{}, errRawPDF
	}
	value, stream, isStream := bytes.Cut(body, []byte(">>stream\n"))
	if !isStream {
		return pdfObject{value: body}, nil
	}
	value = append(value[:len(value):len(value)], ">>"...)
	m := streamLength.FindSubmatch(value)
	if m == nil {
		return pdfObject{}, errRawPDF
	}
	length, err := strconv.Atoi(string(m[1]))
	if err != nil || length > len(stream) {
		return pdfObject{}, errRawPDF
	}
	return pdfObject{value, stream[:length]}, nil
}

// bytes writes the document with a fresh cross-reference table. Its identity
// is the hash of its contents (ISO 32000-1, 14.4 leaves the method open).
func (d *pdfDocument) bytes() []byte {
	var out bytes.Buffer
	out.WriteString("%PDF-1.7\n%\xE2\xE3\xCF\xD3\n") // high bytes mark a binary file
	offsets := make([]int, len(d.objects))
	for i, object := range d.objects {
		offsets[i] = out.Len()
		fmt.Fprintf(&out, "%d 0 obj\n%s", i+1, object.value)
		if object.stream != nil {
			fmt.Fprintf(&out, "stream\n%s\nendstream", object.stream)
		}
		out.WriteString("\nendobj\n")
	}
	id := sha256.Sum256(out.Bytes())
	table := out.Len()
	fmt.Fprintf(&out, "xref\n0 %d\n0000000000 65535 f \n", len(offsets)+1)
	for _, offset := range offsets {
		fmt.Fprintf(&out, "%010d 00000 n \n", offset)
	}
	fmt.Fprintf(&out, "trailer\n<</Root %d 0 R/Info %d 0 R/Size %d/ID[<%x><%[4]x>]>>\nstartxref\n%[5]d\n%%%%EOF\n",
		catalogObject, infoObject, len(offsets)+1, id[:16], table)
	return out.Bytes()
}
