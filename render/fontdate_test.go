package render

import (
	"encoding/binary"
	"testing"
)

// fontTable returns a table of a TrueType file and its checksum as recorded.
func fontTable(t *testing.T, file []byte, tag string) (table []byte, recorded uint32) {
	t.Helper()
	for i := range int(binary.BigEndian.Uint16(file[4:])) {
		entry := file[12+16*i:]
		if string(entry[:4]) == tag {
			offset, length := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
			return file[offset : offset+(length+3)&^3], binary.BigEndian.Uint32(entry[4:])
		}
	}
	t.Fatalf("font has no table %q", tag)
	return nil, 0
}

func TestSubsetHasFixedDateAndRightChecksums(t *testing.T) {
	for f := range cuts {
		file, err := Face(f).subset(usedOfFace{letters: []rune("Back bed é ½")})
		if err != nil {
			t.Fatal(err)
		}
		checkPinned(t, file)
	}
}

func checkPinned(t *testing.T, file []byte) {
	t.Helper()
	head, recorded := fontTable(t, file, "head")
	created, modified := binary.BigEndian.Uint64(head[20:]), binary.BigEndian.Uint64(head[28:])
	if created != modified {
		t.Errorf("font was created at %d but modified at %d", created, modified)
	}
	if sum := checksum(file); sum != 0xB1B0AFBA {
		t.Errorf("font sums up to %#x", sum)
	}
	without := append([]byte{}, head...)
	copy(without[8:12], make([]byte, 4))
	if sum := checksum(without); sum != recorded {
		t.Errorf("head sums up to %#x, recorded %#x", sum, recorded)
	}
}

func TestSubsetLeavesTheFaceAlone(t *testing.T) {
	before := Regular.width("Back bed", 9)
	if _, err := Regular.subset(usedOfFace{letters: []rune("x")}); err != nil {
		t.Fatal(err)
	}
	if after := Regular.width("Back bed", 9); after != before {
		t.Errorf("width was %g, is %g", before, after)
	}
}
