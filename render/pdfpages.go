package render

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

var (
	kidsOf    = regexp.MustCompile(`/Kids\[([^\]]*)\]`)
	reference = regexp.MustCompile(`(\d+) 0 R`)
)

// pages are the numbers of the objects of the pages, in order.
func (d *pdfDocument) pages(count int) ([]int, error) {
	kids := kidsOf.FindSubmatch(d.objects[pagesObject-1].value)
	if kids == nil {
		return nil, errRawPDF
	}
	var pages []int
	for _, m := range reference.FindAllSubmatch(kids[1], -1) {
		number, err := strconv.Atoi(string(m[1]))
		if err != nil || number < 1 || number > len(d.objects) || !bytes.HasSuffix(d.objects[number-1].value, []byte(">>")) {
			return nil, errRawPDF
		}
		pages = append(pages, number)
	}
	if len(pages) != count {
		return nil, errRawPDF
	}
	return pages, nil
}

// add appends an object and returns its number.
func (d *pdfDocument) add(value []byte) int {
	d.objects = append(d.objects, pdfObject{value: value})
	return len(d.objects)
}

// bookmark adds an outline with an entry for each sheet (ISO 32000-1, 12.3.3)
// and returns the number of its object.
func (d *pdfDocument) bookmark(pages []int, sheets []*Sheet) int {
	first := len(d.objects) + 2
	last := first + len(sheets) - 1
	outline := d.add(fmt.Appendf(nil, "<</Type/Outlines/First %d 0 R/Last %d 0 R/Count %d>>", first, last, len(sheets)))
	for i, s := range sheets {
		entry := fmt.Appendf(nil, "<</Title%s/Parent %d 0 R/Dest[%d 0 R/Fit]", pdfString(plain(s.name())), outline, pages[i])
		if i > 0 {
			entry = fmt.Appendf(entry, "/Prev %d 0 R", first+i-1)
		}
		if i < len(sheets)-1 {
			entry = fmt.Appendf(entry, "/Next %d 0 R", first+i+1)
		}
		d.add(append(entry, ">>"...))
	}
	return outline
}

// describe replaces what canvas says of the document: its language is that of
// the sheets, it bears no date, it shows its title, its pages bear the numbers
// that stand on the sheets, and print dialogues are asked not to scale
// (ISO 32000-1, tables 28, 150 and 317; the extension is that of places on the
// earth, part of ISO 32000-2). Several sheets have bookmarks.
func (d *pdfDocument) describe(pages []int, sheets []*Sheet) {
	title := sheets[0].Title
	var several string
	if len(sheets) > 1 {
		several = fmt.Sprintf("/PageMode/UseOutlines/Outlines %d 0 R", d.bookmark(pages, sheets))
		if sheets[0].Site != "" {
			title = sheets[0].Site
		}
	}
	d.objects[catalogObject-1].value = fmt.Appendf(nil,
		"<</Type/Catalog/Pages %d 0 R/Lang%s/PageLabels<</Nums[0<</S/D>>]>>%s/ViewerPreferences<</DisplayDocTitle true/PrintScaling/None>>"+
			"/Extensions<</ADBE<</BaseVersion/1.7/ExtensionLevel 3>>>>>>",
		pagesObject, pdfString(sheets[0].lang()), several)
	d.objects[infoObject-1].value = fmt.Appendf(nil,
		"<</Title%s/Subject%s/Producer(turfplat)>>",
		pdfString(plain(title)), pdfString(plain(subjects(sheets))))
}

// subjects are what all sheets show, in words.
func subjects(sheets []*Sheet) string {
	all := make([]string, len(sheets))
	for i, s := range sheets {
		all[i] = s.Subject
	}
	return strings.Join(all, " ")
}
