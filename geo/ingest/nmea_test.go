package ingest

import (
	"fmt"
	"strings"
	"testing"
)

// nmea puts $ and checksums to sentences, one a line.
func nmea(sentences ...string) string {
	var b strings.Builder
	for _, s := range sentences {
		var sum byte
		for i := range len(s) {
			sum ^= s[i]
		}
		fmt.Fprintf(&b, "$%s*%02X\r\n", s, sum)
	}
	return b.String()
}

// gga is a GGA sentence of a time of day.
func gga(clock string) string {
	return "GPGGA," + clock + ",4454.0,N,09306.0,W,1,08,0.9,250.1,M,-30.2,M,,"
}

// rmc is a RMC sentence of a time of day and a date.
func rmc(clock, date string) string {
	return "GNRMC," + clock + ",A,4454.0,N,09306.0,W,0.1,200.0," + date + ",,,A"
}

var nmeaRules = []trackRule{
	{"an epoch", nmea("GNRMC,120001.50,A,4454.00000,N,09306.00000,W,0.1,200.0,010524,,,A", "GPGSV,1,1,00", "GNGGA,120001.50,4454.00000,N,09306.00000,W,4,12,0.62,250.1,M,-30.2,M,1.0,0001", "GNGST,120001.50,9,0.5,0.4,12.0,0.3,0.4,0.9"),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01.5 h0.62 s0.3536 n12 q4]`}},
	{"the date after the fixes", nmea(gga("235958"), gga("235959"), gga("000000"), rmc("000000", "010124")),
		[]string{`"" [-93.1 44.9 2023-12-31T23:59:58 h0.9 n8 q1] [-93.1 44.9 2023-12-31T23:59:59 h0.9 n8 q1] [-93.1 44.9 2024-01-01T00:00:00 h0.9 n8 q1]`}},
	{"over midnight without another date", nmea(rmc("235959", "280224"), gga("235959"), gga("000000.2")),
		[]string{`"" [-93.1 44.9 2024-02-28T23:59:59 h0.9 n8 q1] [-93.1 44.9 2024-02-29T00:00:00.2 h0.9 n8 q1]`}},
	{"back by a little is not midnight", nmea(rmc("120001", "280224"), gga("120001"), gga("120000")),
		[]string{`"" [-93.1 44.9 2024-02-28T12:00:01 h0.9 n8 q1] [-93.1 44.9 2024-02-28T12:00:00 h0.9 n8 q1]`}},
	{"no date", nmea(gga("235959"), gga("000001")),
		[]string{`"" [-93.1 44.9 1970-01-01T23:59:59 h0.9 n8 q1] [-93.1 44.9 1970-01-02T00:00:01 h0.9 n8 q1]`,
			"note date_none: x: gives times of day but no date, counted the days from 1970-01-01"}},
	{"the date of ZDA", nmea("GPZDA,120001,09,11,1999,00,00", gga("120001")),
		[]string{`"" [-93.1 44.9 1999-11-09T12:00:01 h0.9 n8 q1]`}},
	{"dates left empty", nmea("GPZDA,120001,,,,,", "GNRMC,120001,A,4454.0,N,09306.0,W,,,,,,A", rmc("120002", "010524")),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01] [-93.1 44.9 2024-05-01T12:00:02]`}},
	{"the last century", nmea(rmc("120001", "310899"), gga("120001")),
		[]string{`"" [-93.1 44.9 1999-08-31T12:00:01 h0.9 n8 q1]`}},
	{"RMC alone", nmea(rmc("120001", "010524"), "GNRMC,120002,V,4455.0,N,09306.0,W,,,010524,,,N", rmc("120003", "010524")),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01] [-93.1 44.9 2024-05-01T12:00:03]`, "note fix_none: x: line 2: receiver had no position, passed over"}},
	{"RMC between GGA gives no positions", nmea(gga("120001"), rmc("120002", "010524"), gga("120003")),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01 h0.9 n8 q1] [-93.1 44.9 2024-05-01T12:00:03 h0.9 n8 q1]`}},
	{"two receivers", nmea("GPGGA,120001,4454.0,N,09306.0,W,1,,,,M,,M,,", "GNGGA,120001,4454.6,S,09306.0,E,5,,,,M,,M,,", rmc("120001", "010524")),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01 q1] [93.1 -44.91 2024-05-01T12:00:01 q5]`}},
	{"no fix", nmea("GPGGA,,,,,,0,,,,M,,M,,", "GPRMC,,V,,,,,,,,,,N", "GPGGA,,,,,,0,,,,M,,M,,", gga("120001"), "GPGGA,120002,4454.0,N,09306.0,W,0,00,99.9,,M,,M,,", rmc("120002", "010524")),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01 h0.9 n8 q1] [-93.1 44.9 2024-05-01T12:00:02 h99.9 q0]`, "note fix_none: x: line 1: receiver had no position, passed over (2 times)"}},
	{"semi-axes of the error", nmea(rmc("120001", "010524"), gga("120001"), "GPGST,120001,9,0.6,0.8,12.0,,,"),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01 h0.9 s0.7071 n8 q1]`}},

	{"garbage", "\xb5\x62\x01\x07$\n[12:00:01] " + nmea(rmc("120001", "010524")) + "# $note\n$PUBX,00*11\n\n" + strings.TrimSuffix(nmea(gga("120001")), "\r\n"),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01 h0.9 n8 q1]`}},
	{"a sentence within a sentence", "$GPGGA,120001,4454." + nmea(rmc("120001", "010524")),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01]`}},
	{"checksums that do not match", nmea(rmc("120001", "010524")) + "$GPGGA,120001,4454.0,N,09306.0,W,1,08,0.9,250.1,M,-30.2,M,,*00\n$GPGGA,120001*\n$GPGGA,120001*zz\n",
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01]`, "warning nmea_checksum: x: line 2: sentence does not match its checksum, passed over (3 sentences)"}},
	{"no checksums", "$" + rmc("120001", "010524") + "\n$" + gga("120001") + "\n",
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01 h0.9 n8 q1]`, "note nmea_bare: x: line 1: sentence has no checksum, took it as it stands (2 sentences)"}},
	{"sentences that cannot be read", nmea(rmc("120001", "010524"),
		"GPGGA,120002,4460.0,N,09306.0,W,1,08,0.9,,M,,M,,", // minutes
		"GPGGA,126000,4454.0,N,09306.0,W,1,08,0.9,,M,,M,,", // time
		"GPGGA,12000x,4454.0,N,09306.0,W,1,08,0.9,,M,,M,,",
		"GPGGA,120002,4454.0,X,09306.0,W,1,08,0.9,,M,,M,,", // half
		"GPGGA,120002,-4454.0,N,09306.0,W,1,08,0.9,,M,,M,,",
		"GPGGA,120002,4454.0,N,09306.0,W,77,08,0.9,,M,,M,,", // quality
		"GPGGA,120002,4454.0,N",
		"GPRMC,120002,A,4454.0,N,09306.0,W,,,320124,,", // date
		"GPZDA,120002,1,13,2024,,"),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01]`, "warning nmea_sentence: x: line 2: GGA sentence cannot be read, passed over (9 sentences)"}},
	{"off the globe", nmea(rmc("120001", "010524"), "GPGGA,120001,9900.0,N,09306.0,W,1,,,,M,,M,,"),
		[]string{"warning latitude_range: x: line 1: latitude 99 is outside -90..90, left out near [-93.1, 99]", "error track_empty: x: holds no fix that can be used"}},
	{"a long line", nmea(rmc("120001", "010524")) + strings.Repeat("x", 1<<17) + "\n" + nmea(gga("120001")),
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:01 h0.9 n8 q1]`, "warning line_long: x: line 2: line is too long, passed over"}},
	{"sentences without positions", nmea("GPGSV,1,1,00", "GPGLL,4454.0,N,09306.0,W,120001,A"),
		[]string{"error track_empty: x: holds no fix that can be used"}},
}

func TestNMEA(t *testing.T) { checkTrackRules(t, "x", "NMEA 0183", nmeaRules) }
