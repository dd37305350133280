package render

import (
	"encoding/binary"
	"maps"
	"slices"

	"github.com/tdewolff/font"
)

// mapCharacters has a subset find the glyphs of its characters. The subsetting
// library names one character for a glyph, and now and then takes a glyph that
// is out of line for one in line, so that a letter comes out as the next one.
// Where it did well its table stays.
func (f Face) mapCharacters(part *font.SFNT, glyphs []uint16, letters []rune) {
	codes := make(map[rune]uint16)
	wrong := f >= secondRegular
	for i, g := range glyphs {
		if r := f.font().Cmap.ToUnicode(g); r != 0 {
			codes[r] = uint16(i)
			wrong = wrong || part.GlyphIndex(r) != uint16(i)
		}
	}
	for _, r := range letters {
		codes[r] = uint16(slices.Index(glyphs, f.font().GlyphIndex(r)))
	}
	if wrong {
		part.Tables["cmap"] = characterMap(codes)
	}
}

// characterMap is a table cmap with the glyphs of characters, of format 12
// (OpenType 1.9.1, "Character to glyph index mapping table").
func characterMap(codes map[rune]uint16) []byte {
	type group struct{ first, last, glyph uint32 }
	var groups []group
	for _, r := range slices.Sorted(maps.Keys(codes)) {
		code, glyph := uint32(r), uint32(codes[r])
		if n := len(groups); n > 0 && code == groups[n-1].last+1 && glyph == groups[n-1].glyph+code-groups[n-1].first {
			groups[n-1].last = code
		} else {
			groups = append(groups, group{code, code, glyph})
		}
	}
	const header, records, subtable = 4, 2 * 8, 16 // bytes
	table := bytesOf([]uint16{0, 2,
		0, 4, 0, header + records, // Unicode
		3, 10, 0, header + records, // Windows, Unicode
		12, 0})
	for _, v := range []uint32{subtable + 12*uint32(len(groups)), 0, uint32(len(groups))} {
		table = binary.BigEndian.AppendUint32(table, v)
	}
	for _, g := range groups {
		for _, v := range []uint32{g.first, g.last, g.glyph} {
			table = binary.BigEndian.AppendUint32(table, v)
		}
	}
	return table
}
