package ingest

import (
	"bytes"
	"encoding/hex"
	"math"
	"time"
)

// A nmeaSentence is one sentence: its kind, such as GGA, whoever the talker
// is, and its fields, the first of which is the address.
type nmeaSentence struct {
	kind   string
	fields [][]byte
}

// mostFields is more than any sentence has of which something is wanted.
const mostFields = 24

// A sentenceState says what a line holds.
type sentenceState int

const (
	sentenceNone    sentenceState = iota // nothing that looks like a sentence
	sentenceSound                        // a sentence that matches its checksum
	sentenceBare                         // a sentence without a checksum
	sentenceDamaged                      // a sentence that does not match it
)

// parseSentence finds the sentence in a line. What stands before its $ does
// not count: loggers put times there, and receivers other protocols.
func parseSentence(line []byte) (s nmeaSentence, state sentenceState) {
	at := bytes.LastIndexByte(line, '$')
	if at < 0 {
		return s, sentenceNone
	}
	body, sum, summed := bytes.Cut(line[at+1:], []byte{'*'})
	address, _, _ := bytes.Cut(body, []byte{','})
	if len(address) != 5 || !isAddress(address) {
		return s, sentenceNone
	}
	if summed && !sumMatches(body, sum) {
		return s, sentenceDamaged
	}
	s = nmeaSentence{kind: string(address[2:]), fields: bytes.SplitN(body, []byte{','}, mostFields)}
	if !summed {
		return s, sentenceBare
	}
	return s, sentenceSound
}

func isAddress(address []byte) bool {
	for _, c := range address {
		if (c < 'A' || c > 'Z') && (c < '0' || c > '9') {
			return false
		}
	}
	return true
}

// sumMatches: the checksum is the exclusive or of all bytes between $ and *,
// in hexadecimal.
func sumMatches(body, sum []byte) bool {
	var want [1]byte
	sum = trimBlanks(sum)
	if len(sum) < 2 {
		return false
	}
	if _, err := hex.Decode(want[:], sum[:2]); err != nil {
		return false
	}
	var got byte
	for _, c := range body {
		got ^= c
	}
	return got == want[0]
}

// field returns a field by its number; empty if the sentence has none.
func (s nmeaSentence) field(i int) []byte {
	if i >= len(s.fields) {
		return nil
	}
	return trimBlanks(s.fields[i])
}

// clock reads hhmmss.ss, the time since midnight UTC; -1 if the field is empty.
func (s nmeaSentence) clock(i int) (time.Duration, bool) {
	text := s.field(i)
	if len(text) == 0 {
		return -1, true
	}
	whole, _, _ := bytes.Cut(text, []byte{'.'})
	v, ok := plainNumber(text)
	if !ok || len(whole) != 6 || text[0] == '-' || text[0] == '+' {
		return 0, false
	}
	hms := int(v)
	hour, minute, second := hms/10000, hms/100%100, hms%100
	if hour > 23 || minute > 59 || second > 60 { // 60 is a leap second
		return 0, false
	}
	const steps = 1e6 // of a second
	micro := time.Duration(math.Round((v - float64(hms)) * steps))
	return time.Duration(hour)*time.Hour + time.Duration(minute)*time.Minute +
		time.Duration(second)*time.Second + micro*time.Microsecond, true
}

// degrees reads an angle in degrees and minutes, such as 4220.2947808, and the
// letter of its half of the globe in the field after it.
func (s nmeaSentence) degrees(i int, positive, negative byte) (float64, bool) {
	v, ok := plainNumber(s.field(i))
	half := s.field(i + 1)
	if !ok || v < 0 || v > 18000 || len(half) != 1 {
		return 0, false
	}
	degrees := float64(int(v) / 100)
	minutes := v - degrees*100
	if minutes >= 60 {
		return 0, false
	}
	angle := degrees + minutes/60
	switch half[0] {
	case positive:
		return angle, true
	case negative:
		return -angle, true
	}
	return 0, false
}
