package render

import "encoding/binary"

// pinDates sets the day on which a TrueType file was last modified to the day
// on which the typeface was made, and mends the checksums. The subsetting
// library stamps each file with the current time, which would make the bytes
// of a sheet differ from day to day (OpenType 1.9.1, "head" and "Table
// directory").
func pinDates(file []byte) {
	const (
		directory, record        = 12, 16 // bytes: where table records begin, length of one
		adjustment               = 8      // in head: checkSumAdjustment, modified, created
		created, modified, until = 20, 28, 36
		magic                    = 0xB1B0AFBA
	)
	for i := range int(binary.BigEndian.Uint16(file[4:])) {
		entry := file[directory+record*i:][:record]
		if string(entry[:4]) != "head" {
			continue
		}
		offset, length := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
		head := file[offset : offset+(length+3)&^3]
		copy(head[modified:until], head[created:modified])
		binary.BigEndian.PutUint32(head[adjustment:], 0)
		binary.BigEndian.PutUint32(entry[4:], checksum(head))
		binary.BigEndian.PutUint32(head[adjustment:], magic-checksum(file))
	}
}

// checksum adds up big-endian words; the length must be a multiple of four.
func checksum(words []byte) (sum uint32) {
	for ; len(words) >= 4; words = words[4:] {
		sum += binary.BigEndian.Uint32(words)
	}
	return sum
}
