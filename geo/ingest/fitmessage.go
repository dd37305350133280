package ingest

import "encoding/binary"

// A fitDefinition says how the data messages of a local type are laid out.
type fitDefinition struct {
	message uint16 // its global number
	order   binary.ByteOrder
	fields  []fitField
}

// A fitField is one field of a data message.
type fitField struct {
	number int // -1 for those of developers
	size   byte
}

// define reads a definition message: a reserved byte, the byte order (1 is
// big-endian), the number of the message, and three bytes a field: number,
// size, type. The fields of developers follow likewise.
func (f *fitReader) define(into **fitDefinition, developers bool) error {
	head := f.value[:5]
	if err := f.take(head); err != nil {
		return err
	}
	d := &fitDefinition{order: binary.ByteOrder(binary.LittleEndian)}
	if head[1] == 1 {
		d.order = binary.BigEndian
	}
	d.message = d.order.Uint16(head[2:])
	if err := f.fields(d, int(head[4]), false); err != nil {
		return err
	}
	if developers {
		count := f.value[:1]
		if err := f.take(count); err != nil {
			return err
		}
		if err := f.fields(d, int(count[0]), true); err != nil {
			return err
		}
	}
	*into = d
	return nil
}

func (f *fitReader) fields(d *fitDefinition, count int, developers bool) error {
	for range count {
		field := f.value[:3]
		if err := f.take(field); err != nil {
			return err
		}
		number := int(field[0])
		if developers {
			number = -1
		}
		d.fields = append(d.fields, fitField{number, field[1]})
	}
	return nil
}

// fitFields are the fields of a data message of which something is wanted.
type fitFields struct {
	clock  uint32
	timed  bool
	place  [2]int32 // fields 0 and 1 as semicircles
	placed [2]bool
	enum   [2]byte // fields 0 and 1 as enumerations
}

// take keeps a field, unless it has the value that stands for none.
func (fs *fitFields) take(number int, value []byte, order binary.ByteOrder) {
	const noTime, noPlace = 1<<32 - 1, 1<<31 - 1
	switch {
	case number == fitTimestamp && len(value) == 4:
		fs.clock = order.Uint32(value)
		fs.timed = fs.clock != noTime
	case (number == 0 || number == 1) && len(value) == 4:
		fs.place[number] = int32(order.Uint32(value))
		fs.placed[number] = fs.place[number] != noPlace
	case (number == 0 || number == 1) && len(value) == 1:
		fs.enum[number] = value[0]
	}
}

// event notes when the timer is stopped, so that the next fix begins another
// segment.
func (f *fitReader) event(fields fitFields) {
	const timer = 0
	if fields.enum[fitEventKind] != timer {
		return
	}
	switch fields.enum[fitEventType] {
	case 1, 4, 8, 9:
		f.stopped = true
	}
}

// fitSum goes on with the checksum over more bytes: CRC-16 with the polynomial
// x^16 + x^15 + x^2 + 1, lowest bit first, from 0.
func fitSum(sum uint16, bytes []byte) uint16 {
	for _, b := range bytes {
		sum = sum>>8 ^ fitSums[byte(sum)^b]
	}
	return sum
}

var fitSums = func() (table [256]uint16) {
	for i := range table {
		sum := uint16(i)
		for range 8 {
			if sum&1 != 0 {
				sum = sum>>1 ^ 0xa001
			} else {
				sum >>= 1
			}
		}
		table[i] = sum
	}
	return table
}()
