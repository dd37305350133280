package ingest

import (
	"encoding/binary"
	"strings"
	"testing"
)

// fitFile puts header and checksum to messages.
func fitFile(messages ...string) string {
	data := strings.Join(messages, "")
	head := binary.LittleEndian.AppendUint32([]byte{14, 0x20, 0, 0}, uint32(len(data)))
	head = append(head, ".FIT"...)
	head = binary.LittleEndian.AppendUint16(head, fitSum(0, head))
	all := string(head) + data
	return all + string(binary.LittleEndian.AppendUint16(nil, fitSum(0, []byte(all))))
}

// fitDefine defines local type 0, 1 or 2 as a little-endian message of fields
// of number, size and type.
func fitDefine(local, message byte, fields ...[3]byte) string {
	b := []byte{0x40 | local, 0, 0, message, 0, byte(len(fields))}
	for _, f := range fields {
		b = append(b, f[:]...)
	}
	return string(b)
}

var (
	fitFields3  = [][3]byte{{253, 4, 0x86}, {0, 4, 0x85}, {1, 4, 0x85}}
	fitRecords  = fitDefine(0, 20, fitFields3...)
	fitPlaces   = fitDefine(1, 20, fitFields3[1:]...) // without a time
	fitTimer    = fitDefine(2, 21, [3]byte{0, 1, 0}, [3]byte{1, 1, 0})
	fitBigRec   = "\x40\x00\x01\x00\x14\x03\xfd\x04\x86\x00\x04\x85\x01\x04\x85"
	fitDevelop  = "\x60" + fitRecords[1:] + "\x02\x00\x03\x00\x01\x01\x00"
	fitNowhere  = string([]byte{1}) + "\xff\xff\xff\x7f\xff\xff\xff\x7f"
	fitStop     = "\x02\x00\x04"
	fitStart    = "\x02\x00\x00"
	fitSomewhat = fitRec(0, 1_000_000_000, 45, 90)
)

// fitRec is a record of local type 0 in whole degrees that semicircles hold
// exactly.
func fitRec(local byte, clock uint32, lat, lon float64) string {
	return string(appendFIT(binary.LittleEndian, local, clock, lat, lon))
}

type appender interface {
	AppendUint32([]byte, uint32) []byte
}

func appendFIT(order appender, local byte, clock uint32, lat, lon float64) []byte {
	b := order.AppendUint32([]byte{local}, clock)
	b = order.AppendUint32(b, uint32(int32(lat*(1<<31)/180)))
	return order.AppendUint32(b, uint32(int32(lon*(1<<31)/180)))
}

// fitPlace is a record without a time, under a header byte.
func fitPlace(head byte, lat, lon float64) string { return string(head) + fitRec(0, 0, lat, lon)[5:] }

var fitRules = []trackRule{
	{"records", fitFile(fitRecords, fitSomewhat, fitRec(0, 1_000_000_001, -45, -90)),
		[]string{`"" [90 45 2021-09-08T01:46:40] [-90 -45 2021-09-08T01:46:41]`}},
	{"big-endian", fitFile(fitBigRec, string(appendFIT(binary.BigEndian, 0, 1_000_000_000, 45, -90))),
		[]string{`"" [-90 45 2021-09-08T01:46:40]`}},
	{"fields of developers", fitFile(fitDevelop, fitSomewhat+"abcd", fitSomewhat+"abcd"),
		[]string{`"" [90 45 2021-09-08T01:46:40] [90 45 2021-09-08T01:46:40]`}},
	// 1000000000 ends in the bits 00000.
	{"compressed timestamps", fitFile(fitRecords, fitPlaces, fitSomewhat, "\xbf"+fitPlace(0, 45, 45)[1:], "\xa2"+fitPlace(0, 45, 22.5)[1:], "\xa2"+fitPlace(0, 45, 11.25)[1:]),
		[]string{`"" [90 45 2021-09-08T01:46:40] [45 45 2021-09-08T01:47:11] [22.5 45 2021-09-08T01:47:14] [11.25 45 2021-09-08T01:47:14]`}},
	{"no time", fitFile(fitPlaces, fitPlace(1, 45, 90)), []string{`"" [90 45]`}},
	{"no position", fitFile(fitPlaces, fitNowhere, fitPlace(1, 45, 90)),
		[]string{`"" [90 45]`, "note fix_none: x: receiver had no position, passed over"}},
	{"stops of the timer", fitFile(fitRecords, fitTimer, fitStart, fitSomewhat, fitStop, fitStart, fitSomewhat, fitStop),
		[]string{`"" [90 45 2021-09-08T01:46:40] / [90 45 2021-09-08T01:46:40]`}},
	{"other messages", fitFile(fitDefine(3, 18, [3]byte{0, 4, 0x86}), "\x03abcd", fitRecords, fitSomewhat), []string{`"" [90 45 2021-09-08T01:46:40]`}},
	{"activities in a row", fitFile(fitRecords, fitSomewhat) + fitFile(fitPlaces, fitPlace(1, 45, 45)),
		[]string{`"" [90 45 2021-09-08T01:46:40]`, `"" [45 45]`}},

	{"more bytes", fitFile(fitRecords, fitSomewhat) + "padding of any kind",
		[]string{`"" [90 45 2021-09-08T01:46:40]`, "warning fit_trailing: x: has more bytes after the activity, passed over"}},
	{"another checksum", fitFile(fitRecords, fitSomewhat)[:fitLen(fitRecords, fitSomewhat)-2] + "ab",
		[]string{`"" [90 45 2021-09-08T01:46:40]`, "warning fit_checksum: x: does not match its checksum, some fixes may be wrong"}},
	{"no checksum", fitFile(fitRecords, fitSomewhat)[:fitLen(fitRecords, fitSomewhat)-1],
		[]string{`"" [90 45 2021-09-08T01:46:40]`, "warning input_short: x: ends early, kept what stands before"}},
	{"cut in a record", fitFile(fitRecords, fitSomewhat, fitSomewhat)[:fitLen(fitRecords, fitSomewhat)+3],
		[]string{`"" [90 45 2021-09-08T01:46:40]`, "warning input_short: x: ends early, kept what stands before"}},
	{"a message not defined", fitFile(fitRecords, fitSomewhat, "\x05"),
		[]string{"error fit_damaged: x: FIT data is damaged: a message was not defined before"}},
	{"data shorter than its message", fitFile(fitRecords, fitSomewhat[:7]),
		[]string{"error fit_damaged: x: FIT data is damaged: data ends within a message"}},
	{"a header too short", "\x05" + fitFile()[1:],
		[]string{"error fit_damaged: x: FIT data is damaged: header is damaged"}},
	{"no record", fitFile(), []string{"error track_empty: x: holds no fix that can be used"}},
}

func fitLen(messages ...string) int { return len(fitFile(messages...)) }

func TestFIT(t *testing.T) { checkTrackRules(t, "x", "FIT", fitRules) }

// TestFITSum: the check value of CRC-16/ARC, from memory of the catalogue of
// parametrised CRC algorithms.
func TestFITSum(t *testing.T) {
	if got := fitSum(0, []byte("123456789")); got != 0xbb3d {
		t.Errorf("got %#x", got)
	}
}
