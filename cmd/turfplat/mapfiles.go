package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"strings"

	"example.org/turfplat/render"
)

// A leaf is a sheet as it goes into a file.
type leaf struct {
	site  string
	sheet *render.Sheet
	file  string
	page  int
	data  []byte // of the file; nil if the sheet before is in the same one
}

// leaves writes sheets into files that are named after the one asked for.
func (f form) leaves(output string, sheets []*render.Sheet) ([]leaf, error) {
	sheets = render.Bound(sheets...)
	leaves := make([]leaf, len(sheets))
	for i, sheet := range sheets {
		leaves[i] = leaf{sheet: sheet, file: output, page: i + 1}
		var err error
		switch {
		case f.together && i > 0:
		case f.together:
			leaves[i].data, err = f.write(sheets...)
		default:
			leaves[i].data, err = f.write(sheet)
			if len(sheets) > 1 {
				leaves[i].file, leaves[i].page = sheetFile(output, i+1, len(sheets), sheet), 1
			}
		}
		if err != nil {
			return nil, err
		}
	}
	return leaves, nil
}

// sheetFile is the name of a file of one of so many sheets: NAME-2-sun.svg. Numbers
// have equal digits, so that the files sort as the sheets do.
func sheetFile(output string, number, of int, sheet *render.Sheet) string {
	ending := filepath.Ext(output)
	name := strings.TrimPrefix(strings.TrimSuffix(sheet.ID, "-map"), "step-")
	digits := len(strconv.Itoa(of))
	return fmt.Sprintf("%s-%0*d-%s%s", strings.TrimSuffix(output, ending), digits, number, name, ending)
}

// writeLeaves writes the files of sheets, once all of them are known to go
// where no input is.
func (o *order) writeLeaves(leaves []leaf) error {
	for _, l := range leaves {
		if err := o.checkOutput(l.file); err != nil {
			return err
		}
	}
	for _, l := range leaves {
		if l.data == nil {
			continue
		}
		if err := o.writeTo(l.file, 0, func(w io.Writer) error { _, err := w.Write(l.data); return err }); err != nil {
			return err
		}
	}
	return nil
}

// drawnMap is the machine form of what map did; the first sheet is told at the
// top as well.
type drawnMap struct {
	Schema string `json:"schema"`
	Site   string `json:"site"`
	drawnSheet
	Sheets []drawnSheet `json:"sheets"`
}

type drawnSheet struct {
	Sheet    string  `json:"sheet"`
	File     string  `json:"file"`
	Page     int     `json:"page"`
	WidthMM  float64 `json:"width_mm"`
	HeightMM float64 `json:"height_mm"`
	Scale    int     `json:"scale"` // 0 of a sheet without a map
	Text     string  `json:"scale_text"`
}

func mapAccount(leaves []leaf) drawnMap {
	account := drawnMap{Schema: "turfplat/map/1", Site: leaves[0].site}
	for _, l := range leaves {
		drawn := drawnSheet{
			Sheet: l.sheet.ID, File: filepath.ToSlash(l.file), Page: l.page,
			WidthMM: l.sheet.Width, HeightMM: l.sheet.Height, Scale: int(l.sheet.Scale),
		}
		if l.sheet.Scale != 0 {
			drawn.Text = l.sheet.Scale.String()
		}
		account.Sheets = append(account.Sheets, drawn)
	}
	account.drawnSheet = account.Sheets[0]
	return account
}
