package render

import (
	"fmt"
	"strings"
)

// sheets draws the site on one sheet where that is legible, or is the scale
// that was asked for; else on a key map with the tables, and on sheets of its
// parts at a larger scale, which follow it, if they are worth it: the parts are
// much larger, or have letters of zones for which the whole has no room.
func (d *draft) sheets() ([]*Sheet, error) {
	asked := d.options.Scale
	a, noRoom := d.arrange()
	if noRoom == nil && (asked != 0 || a.scale <= smallestLegible) {
		return d.onOne(a)
	}
	t, tooMany := d.tiled(asked)
	switch {
	case noRoom != nil && tooMany != nil:
		return nil, tooMany
	case noRoom != nil:
		return d.parts(t)
	case tooMany != nil: // nobody asked for them
		return d.onOne(a)
	case float64(a.scale) >= leastGain*float64(t.scale):
		return d.parts(t)
	}
	return d.forLetters(a, t)
}

// forLetters draws the site on one sheet, or on sheets of its parts if these have
// the letters of more zones.
func (d *draft) forLetters(a arrangement, t tiling) ([]*Sheet, error) {
	whole, err := d.onOne(a)
	if err != nil || len(whole[0].Unlabelled) == 0 {
		return whole, err
	}
	parts, err := d.parts(t)
	if err != nil || lettersLacking(parts[1:]) < len(whole[0].Unlabelled) {
		return parts, err
	}
	return d.onOne(a) // the draft is to be that of the sheet
}

// onOne draws all of the site on one sheet.
func (d *draft) onOne(a arrangement) ([]*Sheet, error) {
	sheet, err := d.whole(a)
	return []*Sheet{sheet}, err
}

// lettersLacking counts the zones of which some part has no room for the letter.
func lettersLacking(parts []*Sheet) int {
	lacking := make(map[string]bool)
	for _, s := range parts {
		for _, letter := range s.Unlabelled {
			lacking[letter] = true
		}
	}
	return len(lacking)
}

// parts draws the site on a key map and on sheets of its parts.
func (d *draft) parts(t tiling) ([]*Sheet, error) {
	d.joined = true
	defer func() { d.joined = false }()
	whole, err := d.arrangeAt(0, []lie{t.lie})
	if err != nil {
		return nil, err
	}
	return d.withTiles(whole, t)
}

// isKeyMap reports whether a view is that of the whole site, the parts of which
// are on other sheets.
func (d *draft) isKeyMap(v view) bool { return d.joined && v.part == nil }

// withTiles draws the key map and the tiles.
func (d *draft) withTiles(whole arrangement, t tiling) ([]*Sheet, error) {
	tiles := make([]*Sheet, len(t.tiles)) // to be pointed at before they are drawn
	for i := range tiles {
		tiles[i] = new(Sheet)
	}
	v, err := whole.view()
	if err != nil {
		return nil, err
	}
	d.laid = whole
	key, err := d.draw(page{
		arrangement: whole, view: v, blocks: d.blocks(whole.detail),
		words: fmt.Sprintf(" Its parts follow at %s, sheet by sheet: %d.", t.scale, len(tiles)),
		joins: func() []Element { return d.keyMap(t, v, tiles) },
	})
	if err != nil {
		return nil, err
	}
	for i, one := range t.tiles {
		sheet, err := d.tileSheet(t, i, one, tiles)
		if err != nil {
			return nil, err
		}
		*tiles[i] = *sheet
	}
	return append([]*Sheet{key}, tiles...), nil
}

const partWords = ", part %d"

func (d *draft) tileSheet(t tiling, i int, one tile, sheets []*Sheet) (*Sheet, error) {
	v, err := t.view(one)
	if err != nil {
		return nil, err
	}
	site, err := d.plat.Ground.Property()
	if err != nil {
		return nil, err
	}
	d.part = fmt.Sprintf(partWords, i+1)
	defer func() { d.part = "" }()
	sheet, err := d.draw(page{
		arrangement: t.arrangement, view: v,
		words:  fmt.Sprintf(" This sheet shows part %d of %d of the site.", i+1, len(sheets)),
		blocks: d.tileBlocks(locator{t, i, site, sheets}),
		joins:  func() []Element { return d.matchLines(t, one, v, sheets) },
	})
	if err == nil {
		sheet.ID = fmt.Sprintf("%s-part-%d", strings.TrimSuffix(sheet.ID, "-map"), i+1)
	}
	return sheet, err
}

// blocks are those of the subject; the key explains match lines where there are
// any.
func (d *draft) blocks(level detail) []block {
	blocks := d.subject.blocks(level)
	if !d.joined {
		return blocks
	}
	for i, b := range blocks {
		if key, ok := b.(legend); ok {
			entries := append(key.entries[:len(key.entries):len(key.entries)], legendEntry{lineSample(matchLine), "Match line"})
			key.entries = entries
			blocks[i] = key
		}
	}
	return blocks
}

// tileBlocks stand beside a tile: which sheet is where, and the key. The tables
// are on the key map.
func (d *draft) tileBlocks(where locator) []block {
	blocks := []block{where}
	for _, b := range d.blocks(detail{}) {
		if key, ok := b.(legend); ok {
			blocks = append(blocks, key)
		}
	}
	return append(blocks, paragraph{
		text: "Ground beyond a match line stands again on the sheet it joins: work it once. Figures are those of whole zones. Tables: on the key map.",
		size: mapSize, ink: black,
	})
}
