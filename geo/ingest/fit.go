package ingest

import (
	"bufio"
	"encoding/binary"
	"errors"
	"io"
	"time"

	"github.com/paulmach/orb"
)

// A fitReader reads the records of a FIT activity. The layout of the file and
// the numbers of messages and fields are from memory of the public description
// of the protocol.
type fitReader struct {
	r    *bufio.Reader
	log  *trackLog
	left int    // bytes of data still to come
	sum  uint16 // of the bytes read

	definitions [16]*fitDefinition // by local message type
	clock       uint32             // seconds of the last timestamp; compressed ones build on it
	stopped     bool               // the timer stands
	value       [255]byte          // of the field at hand
}

var (
	errFITShort   = errors.New("data ends within a message")
	errFITUnknown = errors.New("a message was not defined before")
	errFITHeader  = errors.New("header is damaged")
)

// readFIT reads the activities of a file, of which there may be several in a
// row.
func readFIT(r *bufio.Reader, log *trackLog, _ Limits) *fault {
	for {
		f := &fitReader{r: r, log: log}
		switch err := f.activity(); err {
		case nil:
		case io.EOF, io.ErrUnexpectedEOF:
			log.endsEarly(0)
			return nil
		default:
			return &fault{code: "fit_damaged", text: "FIT data is damaged: " + err.Error(), hint: "copy or export it again"}
		}
		if log.full() {
			return nil
		}
		next, _ := r.Peek(fitHeaderBytes)
		if len(next) == 0 {
			return nil
		}
		if !beginsFIT(next) {
			log.note(finding{severity: Warning, code: "fit_trailing", text: "has more bytes after the activity, passed over"}, 0)
			_, _ = io.Copy(io.Discard, r) // the tape tells of errors
			return nil
		}
	}
}

const fitHeaderBytes = 12

// beginsFIT reports whether a header of FIT stands here.
func beginsFIT(head []byte) bool { return len(head) >= fitHeaderBytes && string(head[8:12]) == ".FIT" }

// activity reads one header, the data it announces, and their checksum.
func (f *fitReader) activity() error {
	f.log.begin(0)
	if err := f.header(); err != nil {
		return err
	}
	for f.left > 0 && !f.log.full() {
		if err := f.message(); err != nil {
			return err
		}
	}
	if f.log.full() {
		return nil
	}
	f.left = 2
	sum := f.sum
	if err := f.take(f.value[:2]); err != nil {
		return err
	}
	if sum != binary.LittleEndian.Uint16(f.value[:]) {
		f.log.note(finding{
			severity: Warning, code: "fit_checksum",
			text: "does not match its checksum, some fixes may be wrong", hint: "copy or export it again",
		}, 0)
	}
	return nil
}

// header: its size (12, or 14 with a checksum of its own), versions, size of
// the data, and the mark .FIT.
func (f *fitReader) header() error {
	f.left = fitHeaderBytes
	head := f.value[:fitHeaderBytes]
	if err := f.take(head); err != nil {
		return err
	}
	size, data := int(head[0]), binary.LittleEndian.Uint32(head[4:])
	if !beginsFIT(head) || size < fitHeaderBytes {
		return errFITHeader
	}
	f.left = size - fitHeaderBytes
	if err := f.take(f.value[:f.left]); err != nil {
		return err
	}
	f.left = int(data)
	return nil
}

// take reads the next bytes of the data.
func (f *fitReader) take(into []byte) error {
	if len(into) > f.left {
		return errFITShort
	}
	if _, err := io.ReadFull(f.r, into); err != nil {
		return err
	}
	f.left -= len(into)
	f.sum = fitSum(f.sum, into)
	return nil
}

// message reads one definition or data message. The bits of its first byte:
// 0x80 data with a compressed timestamp (0x60 local type, 0x1f seconds), else
// 0x40 definition, 0x20 with developer fields, 0x0f local type.
func (f *fitReader) message() error {
	if err := f.take(f.value[:1]); err != nil {
		return err
	}
	switch head := f.value[0]; {
	case head&0x80 != 0:
		f.clock += uint32(head-byte(f.clock)) & 0x1f // at most 31 seconds on
		return f.data(f.definitions[head>>5&3])
	case head&0x40 != 0:
		return f.define(&f.definitions[head&0x0f], head&0x20 != 0)
	default:
		return f.data(f.definitions[head&0x0f])
	}
}

// Numbers of messages and fields.
const (
	fitRecord = 20
	fitEvent  = 21

	fitTimestamp = 253
	fitLat       = 0 // of a record, in semicircles
	fitLon       = 1
	fitEventKind = 0 // of an event; 0 is the timer
	fitEventType = 1 // 0 start; 1, 4, 8 and 9 stop
)

// data reads a data message, and takes what it tells of the walk.
func (f *fitReader) data(d *fitDefinition) error {
	if d == nil {
		return errFITUnknown
	}
	var fields fitFields
	for _, field := range d.fields {
		value := f.value[:field.size]
		if err := f.take(value); err != nil {
			return err
		}
		fields.take(field.number, value, d.order)
	}
	if fields.timed {
		f.clock = fields.clock
	}
	switch d.message {
	case fitRecord:
		f.record(fields)
	case fitEvent:
		f.event(fields)
	}
	return nil
}

// record adds a fix.
func (f *fitReader) record(fields fitFields) {
	const semicircle = 180.0 / (1 << 31) // degrees
	if !fields.placed[0] || !fields.placed[1] {
		f.log.nowhere(0)
		return
	}
	fix := Fix{Quality: -1, At: orb.Point{
		float64(fields.place[fitLon]) * semicircle,
		float64(fields.place[fitLat]) * semicircle,
	}}
	if f.clock != 0 {
		fix.Time = fitEpoch.Add(time.Duration(f.clock) * time.Second)
	}
	if f.stopped {
		f.log.pause()
		f.stopped = false
	}
	f.log.add(fix, 0)
}

var fitEpoch = time.Date(1989, 12, 31, 0, 0, 0, 0, time.UTC)
