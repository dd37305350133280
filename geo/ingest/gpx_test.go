package ingest

import "testing"

// inGPX puts track segments into a document of which they begin line 2.
func inGPX(segments string) string {
	return `<gpx version="1.1"><trk><name>walk</name>` + "\n" + segments + "</trk></gpx>"
}

// gpxPoint is a point with all that is read of it.
const gpxPoint = `<trkpt lat="44.9" lon="-93.1"><ele>30</ele><time>2024-05-01T12:00:00Z</time><fix>3d</fix><sat>9</sat><hdop>0.8</hdop></trkpt>`

var gpxRules = []trackRule{
	{"all of a point", inGPX("<trkseg>" + gpxPoint + "</trkseg>"),
		[]string{`"walk" [-93.1 44.9 2024-05-01T12:00:00 h0.8 n9 q1]`}},
	{"only a position", inGPX(`<trkseg><trkpt lat=" +44.9 " lon="-931e-1"/></trkseg>`),
		[]string{`"walk" [-93.1 44.9]`}},
	{"segments", inGPX(`<trkseg><trkpt lat="1" lon="1"/></trkseg><trkseg/><trkseg><trkpt lat="2" lon="2"/><trkpt lat="3" lon="3"/></trkseg>`),
		[]string{`"walk" [1 1] / [2 2] [3 3]`}},
	{"tracks, one of them empty", `<gpx><trk><name>a</name><trkseg><trkpt lat="1" lon="1"/></trkseg></trk><trk><name>b</name></trk><trk><trkseg><trkpt lat="2" lon="2"/></trkseg></trk></gpx>`,
		[]string{`"a" [1 1]`, `"" [2 2]`}},
	{"name after the fixes", `<gpx><trk><trkseg><trkpt lat="1" lon="1"/></trkseg><name>a &amp; b</name></trk></gpx>`,
		[]string{`"a & b" [1 1]`}},
	{"name spaces", `<?xml version="1.0"?><!DOCTYPE gpx><g:gpx xmlns:g="http://www.topografix.com/GPX/1/1"><g:trk><g:trkseg><g:trkpt lat="1" lon="1"><g:sat>4</g:sat></g:trkpt></g:trkseg></g:trk></g:gpx>`,
		[]string{`"" [1 1 n4]`}},
	{"extensions do not count", inGPX(`<trkseg><trkpt lat="1" lon="1"><extensions><x:hdop xmlns:x="x">9</x:hdop><name>x</name></extensions></trkpt></trkseg><extensions><name>y</name></extensions>`),
		[]string{`"walk" [1 1]`}},
	{"words for the fix", inGPX(`<trkseg><trkpt lat="1" lon="1"><fix>none</fix></trkpt><trkpt lat="2" lon="2"><fix>2d</fix></trkpt><trkpt lat="3" lon="3"><fix>DGPS</fix></trkpt><trkpt lat="4" lon="4"><fix>pps</fix></trkpt><trkpt lat="5" lon="5"><fix>rtk_float</fix></trkpt></trkseg>`),
		[]string{`"walk" [1 1 q0] [2 2 q1] [3 3 q2] [4 4 q3] [5 5 q5]`}},

	{"no latitude", inGPX("<trkseg>\n<trkpt lat=\"1\" lon=\"1\"/>\n<trkpt lon=\"2\"/>\n<trkpt lat=\"\" lon=\"2\"/>\n</trkseg>"),
		[]string{`"walk" [1 1]`, "warning position_missing: x: line 4: fix has no latitude, left out (2 fixes)"}},
	{"no number", inGPX("<trkseg>\n<trkpt lat=\"abc\" lon=\"1\"/><trkpt lat=\"2\" lon=\"2\"/></trkseg>"),
		[]string{`"walk" [2 2]`, `warning position_text: x: line 3: latitude "abc" is not a number, left out`}},
	{"no number of ours", inGPX(`<trkseg><trkpt lat="NaN" lon="1"/><trkpt lat="0x1" lon="1"/><trkpt lat="1_0" lon="1"/><trkpt lat="44,9" lon="1"/><trkpt lat="1e999" lon="1"/><trkpt lat="2" lon="2"/></trkseg>`),
		[]string{`"walk" [2 2]`, `warning position_text: x: line 2: latitude "NaN" is not a number, left out (5 fixes)`}},
	{"off the globe", inGPX(`<trkseg><trkpt lat="91" lon="100"/><trkpt lat="1" lon="361"/><trkpt lat="101" lon="45"/><trkpt lat="4977000" lon="478000"/><trkpt lat="2" lon="2"/></trkseg>`),
		[]string{`"walk" [2 2]`,
			"warning latitude_range: x: line 2: latitude 91 is outside -90..90, left out near [100, 91]",
			"warning longitude_range: x: line 2: longitude 361 is outside -180..180, left out near [361, 1]",
			"warning axes_swapped: x: line 2: latitude 101 is outside -90..90, left out near [45, 101]",
			"warning degrees_projected: x: line 2: longitude 478000 is outside -180..180, left out near [478000, 4977000]"}},
	{"0, 0", inGPX(`<trkseg><trkpt lat="0" lon="-0.0"/><trkpt lat="0.00" lon="0"/><trkpt lat="0" lon="0.0001"/></trkseg>`),
		[]string{`"walk" [0.0001 0]`, "warning fix_zero: x: line 2: position is 0, 0, as receivers write that have none, left out (2 fixes)"}},
	{"past the antimeridian", inGPX(`<trkseg><trkpt lat="1" lon="180.5"/><trkpt lat="1" lon="180"/></trkseg>`),
		[]string{`"walk" [-179.5 1] [180 1]`, "warning longitude_wrapped: x: line 2: longitude 180.5 is outside -180..180, took off one turn near [180.5, 1]"}},

	{"times", inGPX(`<trkseg><trkpt lat="1" lon="1"><time>2024-05-01T12:00:00.25+02:00</time></trkpt><trkpt lat="1" lon="1"><time></time></trkpt></trkseg>`),
		[]string{`"walk" [1 1 2024-05-01T10:00:00.25] [1 1]`}},
	{"times without a zone", inGPX("<trkseg><trkpt lat=\"1\" lon=\"1\">\n<time>2024-05-01T12:00:00</time></trkpt><trkpt lat=\"1\" lon=\"1\"><time>2024-05-01 12:00:01</time></trkpt></trkseg>"),
		[]string{`"walk" [1 1 2024-05-01T12:00:00] [1 1 2024-05-01T12:00:01]`, "note time_zone: x: line 3: time has no zone, taken as UTC (2 times)"}},
	{"times that cannot be read", inGPX(`<trkseg><trkpt lat="1" lon="1"><time>noon</time></trkpt><trkpt lat="1" lon="1"><time>5/1/2024 12:00:00 PM</time></trkpt></trkseg>`),
		[]string{`"walk" [1 1] [1 1]`, `warning time_text: x: line 2: time "noon" cannot be read, did without (2 fixes)`}},
	{"details that cannot be read", inGPX(`<trkseg><trkpt lat="1" lon="1"><hdop>-1</hdop><sat>7.5</sat><fix>good</fix></trkpt><trkpt lat="1" lon="1"><hdop/><sat>7.0</sat></trkpt></trkseg>`),
		[]string{`"walk" [1 1] [1 1 n7]`,
			`warning hdop_text: x: line 2: hdop "-1" cannot be read, did without`,
			`warning satellites_text: x: line 2: satellites "7.5" cannot be read, did without`,
			`warning fix_text: x: line 2: fix "good" cannot be read, did without`}},

	{"a measure out of bounds", inGPX(`<trkseg><trkpt lat="1" lon="1"><hdop>1e7</hdop></trkpt></trkseg>`),
		[]string{`"walk" [1 1]`, `warning hdop_text: x: line 2: hdop "1e7" cannot be read, did without`}},

	{"routes alone", "<gpx>\n<rte><name>r</name><rtept lat=\"1\" lon=\"1\"><time>2024-05-01T12:00:00Z</time></rtept></rte></gpx>",
		[]string{`"r" [1 1 2024-05-01T12:00:00]`, "note routes: x: line 2: route was set by hand and not walked, took it as there is no track"}},
	{"routes beside a track", "<gpx>\n<rte><rtept lat=\"1\" lon=\"1\"/></rte><rte/><rte><rtept lat=\"2\" lon=\"2\"/></rte><trk><trkseg><trkpt lat=\"3\" lon=\"3\"/></trkseg></trk></gpx>",
		[]string{`"" [3 3]`, "note routes: x: line 2: route was set by hand and not walked, passed over (2 routes)"}},
	{"waypoints beside a track", "<gpx>\n<wpt lat=\"1\" lon=\"1\"><name>gate</name></wpt><wpt/><trk><trkseg><trkpt lat=\"3\" lon=\"3\"/></trkseg></trk></gpx>",
		[]string{`"" [3 3]`, "note waypoints: x: line 2: waypoint belongs to no track, passed over (2 waypoints)"}},
	{"waypoints alone", `<gpx><wpt lat="1" lon="1"/></gpx>`,
		[]string{"note waypoints: x: line 1: waypoint belongs to no track, passed over", "error track_empty: x: holds no fix that can be used"}},
	{"no fix that can be used", inGPX(`<trkseg><trkpt lat="0" lon="0"/></trkseg>`),
		[]string{"warning fix_zero: x: line 2: position is 0, 0, as receivers write that have none, left out", "error track_empty: x: holds no fix that can be used"}},

	{"byte order mark", "\ufeff" + inGPX(`<trkseg><trkpt lat="1" lon="1"/></trkseg>`), []string{`"walk" [1 1]`}},
	{"Latin-1", `<?xml version="1.0" encoding="ISO-8859-1"?><gpx><trk><name>Gr` + "\xfc" + `n</name><trkseg><trkpt lat="1" lon="1"/></trkseg></trk></gpx>`,
		[]string{`"Grün" [1 1]`}},
	{"Windows-1252", `<?xml version="1.0" encoding="windows-1252"?><gpx><trk><name>` + "\x80" + `</name><trkseg><trkpt lat="1" lon="1"/></trkseg></trk></gpx>`,
		[]string{`"€" [1 1]`}},
	{"ASCII", `<?xml version="1.0" encoding="US-ASCII"?><gpx><trk><trkseg><trkpt lat="1" lon="1"/></trkseg></trk></gpx>`,
		[]string{`"" [1 1]`}},
	{"a text that is not UTF-8", inGPX("<desc>Gr\xfcn</desc>"),
		[]string{"error xml_syntax: x: line 2: is not valid XML: invalid UTF-8"}},
	{"an encoding that is not known", `<?xml version="1.0" encoding="ebcdic"?><gpx/>`,
		[]string{`error xml_encoding: x: line 1: encoding "ebcdic" is unknown`}},
	{"ends early", "<gpx><trk><trkseg>" + gpxPoint + "\n<trkpt lat=\"1\" lo",
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:00 h0.8 n9 q1]`, "warning input_short: x: line 2: ends early, kept what stands before"}},
	{"elements that do not match", inGPX("<trkseg>" + gpxPoint + "\n</trk>"),
		[]string{"error xml_syntax: x: line 3: is not valid XML: element <trkseg> closed by </trk>"}},
	{"an entity of its own", "<!DOCTYPE gpx [<!ENTITY a \"b\">]>\n<gpx><trk><name>&a;</name></trk></gpx>",
		[]string{"error xml_syntax: x: line 2: is not valid XML: invalid character entity &a;"}},
}

func TestGPX(t *testing.T) { checkTrackRules(t, "x", "GPX", gpxRules) }
