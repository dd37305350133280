package ingest

import (
	"strings"
	"testing"
)

// foreignTracks are inputs that are no tracks.
var foreignTracks = []struct{ name, source, text, want string }{
	{"nothing", "x", "", "input_empty: x: is empty"},
	{"blanks", "x", "\ufeff \r\n", "input_empty: x: is empty"},
	{"a web page", "x.gpx", "<!DOCTYPE html>\n<html><body>sign in</body></html>", "format_foreign: x.gpx: is no walked track but looks like a web page"},
	{"a web page of another spelling", "x", "\n<HTML><P>", "format_foreign: x: is no walked track but looks like a web page"},
	{"map data", "x.gpx", "<?xml version='1.0'?><osm version=\"0.6\"/>", `format_foreign: x.gpx: is no walked track but looks like XML of another kind, its outermost element is "osm"`},
	{"XML without an element", "x", "<?xml version='1.0'?><!-- gpx -->", "format_foreign: x: is no walked track but looks like XML without an element"},
	{"GeoJSON", "x.gpx", `{"type":"FeatureCollection","features":[]}`, "format_foreign: x.gpx: is no walked track but looks like JSON"},
	{"UTF-16", "x.csv", "\xff\xfel\x00a\x00t\x00", "format_foreign: x.csv: is no walked track but looks like UTF-16 text"},
	{"gzip", "x.gpx.gz", "\x1f\x8b\x08\x00", "format_foreign: x.gpx.gz: is no walked track but looks like gzip-compressed data"},
	{"a zip archive of something else", "x.zip", "PK\x03\x04 shapes.shp", "format_foreign: x.zip: is no walked track but looks like a zip archive"},
	{"a text", "x", "lawn", "format_unknown: x: is no walked track: begins with l"},
}

func TestForeignTracks(t *testing.T) {
	for _, tt := range foreignTracks {
		t.Run(tt.name, func(t *testing.T) {
			tracks := readTracks(tt.text, tt.source, Limits{})
			if got, want := toldTracks(tracks), "\nerror "+tt.want; got != want {
				t.Errorf("got %q, want %q", got, want)
			}
			if !tracks.Refused() || tracks.Fixes() != 0 || IsTrack([]byte(tt.text), tt.source) {
				t.Error("is taken for a track")
			}
		})
	}
}

// TestIsTrack: the beginning of a file is enough; names decide only where it
// says nothing.
func TestIsTrack(t *testing.T) {
	for _, tt := range []struct {
		name, source, head string
		want               bool
	}{
		{"GPX cut in a tag", "x", "<?xml version=\"1.0\"?>\n<!-- a -->\n<gpx version=\"1.1\"><tr", true},
		{"GPX named otherwise", "x.geojson", "<gpx/>", true},
		{"GPX cut before its element", "x.gpx", "<?xml version=\"1.0\"?>\n<gp", false},
		{"KMZ by its name", "X.KMZ", "PK\x03\x04 images/a.png", true},
		{"KMZ by its content", "x", "PK\x03\x04 walk.KML", true},
		{"FIT", "x", "\x0e\x10\x00\x00\x00\x00\x00\x00.FIT", true},
		{"NMEA after garbage", "x", "\x00\xffboot\r\n$GPGSV,1,1,00*79\r\n", true},
		{"a table", "x", "time;lat;lon\n", true},
		{"a table without names", "x", "44.9,-93.1\n", false},
		{"a table without names, by its name", "x.csv", "44.9,-93.1\n", true},
		{"sentences of another talker, by their name", "x.nmea", "!AIVDM,1\r\n", true},
		{"a position log without names, by its name", "x.pos", "2137 1 40.5 -105.5\n", true},
		{"a soil log", "x", "time,soil_2in_f\n", false},
		{"a long line before the names", "x", strings.Repeat("x", 5000) + "\nlat,lon\n", true},
	} {
		if got := IsTrack([]byte(tt.head), tt.source); got != tt.want {
			t.Errorf("%s: got %v", tt.name, got)
		}
	}
}
