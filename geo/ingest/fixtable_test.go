package ingest

import (
	"strings"
	"testing"
)

var fixTableRules = []trackRule{
	{"all columns", "time,lat,lon,hdop,quality,sats,sigma\n2024-05-01T12:00:00Z,44.9,-93.1,0.8,4,12,0.02\n",
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:00 h0.8 s0.02 n12 q4]`}},
	{"names as recorders have them", "%time,field.header.seq,field.Latitude,field.longitude\n1714564800123456789,1,44.9,-93.1\n",
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:00.123]`}},
	{"names with units", "\"Latitude (deg)\"\tLNG [°]\tAccuracy (m)\tFix\n44.9\t-93.1\t3.0192\t3D\n",
		[]string{`"" [-93.1 44.9 s2 q1]`}},
	{"an accuracy in feet is not one in metres", "lat,lon,accuracy (ft)\n44.9,-93.1,10\n", []string{`"" [-93.1 44.9]`}},
	{"semicolons and decimal commas", "sep=;\r\nLat;Lon;Time;HDOP\r\n44,9;-93,1;2024-05-01 12:00:00,5Z;0,8\r\n",
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:00.5 h0.8]`}},
	{"quotes", "lat,lon,note,time\n\"44.9\",\"-93.1\",\"gate, left\",\"2024-05-01T12:00:00Z\"\n",
		[]string{`"" [-93.1 44.9 2024-05-01T12:00:00]`}},
	{"date and time apart", "date,time,lat,lon\n2024/05/01,12:00:00Z,44.9,-93.1\n", []string{`"" [-93.1 44.9 2024-05-01T12:00:00]`}},
	{"lines before the names", "Device: x\n\n# walked\nlat,lon\n1,2\n\n3,4", []string{`"" [2 1] [4 3]`}},
	{"more and fewer cells", "lat,lon,hdop\n1,2\n3,4,5,6,7\n8\n", []string{`"" [2 1] [4 3 h5]`, "warning position_missing: x.csv: line 4: fix has no longitude, left out"}},
	{"rows without a position", "lat,lon,hdop\n,,1\n1,2,3\n", []string{`"" [2 1 h3]`, "note fix_none: x.csv: line 2: receiver had no position, passed over"}},
	{"no number", "lat,lon\nnan,2\n1,2 E\n1,2\n", []string{`"" [2 1]`, `warning position_text: x.csv: line 2: latitude "nan" is not a number, left out (2 fixes)`}},
	{"seconds and their fractions", "lat,lon,time\n1,2,1714564800.5\n1,2,1714564800500\n1,2,1714564800500000\n1,2,0\n1,2,12.25\n",
		[]string{`"" [2 1 2024-05-01T12:00:00.5] [2 1 2024-05-01T12:00:00.5] [2 1 2024-05-01T12:00:00.5] [2 1 1970-01-01T00:00:00] [2 1 1970-01-01T00:00:12.25]`}},
	{"digits that are no seconds", "lat,lon,time\n1,2,20240501120000\n1,2,-5\n1,2,45413.5e40\n",
		[]string{`"" [2 1] [2 1] [2 1]`, `warning time_text: x.csv: line 2: time "20240501120000" cannot be read, did without (3 fixes)`}},
	{"two columns of one kind", "lat,latitude,lon\n1,5,2\n", []string{`"" [2 1]`}},
	{"no names", "44.9,-93.1\n44.9,-93.2\n", []string{"error csv_header: x.csv: has no line that names its columns, with lat and lon among them"}},
	{"names of something else", "x,y\n1,2\n", []string{"error csv_header: x.csv: has no line that names its columns, with lat and lon among them"}},
	{"names alone", "lat,lon\n", []string{"error track_empty: x.csv: holds no fix that can be used"}},
	{"projected", "lat,lon\n4977000,478000\n", []string{"warning degrees_projected: x.csv: line 2: longitude 478000 is outside -180..180, left out near [478000, 4977000]", "error track_empty: x.csv: holds no fix that can be used"}},
}

func TestFixTable(t *testing.T) { checkTrackRules(t, "x.csv", "CSV", fixTableRules) }

const posHeader = "% program   : RTKLIB ver.2.4.2\n%  GPST                  latitude(deg) longitude(deg)  height(m)   Q  ns   sdn(m)   sde(m)\n"

var posRules = []trackRule{
	{"week and seconds", "%  UTC latitude(deg) longitude(deg) height(m) Q ns sdn(m) sde(m)\n2137 422922.500   40.5 -105.5 1578.7   2  11   3.0  4.0\n",
		[]string{`"" [-105.5 40.5 2020-12-24T21:28:42.5 s3.536 n11 q5]`}},
	{"date and time of day", posHeader + "2020/12/24 21:28:42.000   40.5 -105.5 1578.7   1  11   0.01  0.01\n",
		[]string{`"" [-105.5 40.5 2020-12-24T21:28:42 s0.01 n11 q4]`,
			`note time_scale: x: line 2: times are "GPST", not UTC, kept as they stand (GPS time is 18 s ahead since 2017)`}},
	{"a time that cannot be read", "% UTC latitude(deg) longitude(deg) height(m) Q\n2137 noon 40.5 -105.5 1 1\n",
		[]string{`"" [-105.5 40.5 q4]`, `warning time_text: x: line 2: time "2137 noon" cannot be read, did without`}},
	{"bad rows", "% UTC latitude(deg) longitude(deg) height(m) Q\n2137 1 40.5\n2137 2 abc -105.5 1 1\n2137 3 40.5 -105.5 1 9\n",
		[]string{`"" [-105.5 40.5 2020-12-20T00:00:03]`,
			"warning position_missing: x: line 2: fix has no longitude, left out",
			`warning position_text: x: line 3: latitude "abc" is not a number, left out`,
			`warning fix_text: x: line 4: fix "9" cannot be read, did without`}},
	{"not in degrees", "%  GPST  x-ecef(m)  y-ecef(m)  z-ecef(m) Q\n2137 1 1 2 3 1\n",
		[]string{"error pos_columns: x: position log does not name columns of latitude and longitude in degrees"}},
	{"degrees and minutes", "%  GPST latitude(d'\") longitude(d'\")\n",
		[]string{"error pos_columns: x: position log does not name columns of latitude and longitude in degrees"}},
}

func TestPosLog(t *testing.T) { checkTrackRules(t, "x", "RTKLIB", posRules) }

func TestColumnName(t *testing.T) {
	for cell, want := range map[string]string{
		"lat": "lat", " Latitude (deg)": "latitude", "%time": "time", "field.header.Latitude": "latitude", "Horizontal-Accuracy [m]": "horizontal_accuracy",
		"m": "m", "": "", "Breite": "breite", strings.Repeat("a", 101): "",
	} {
		if got := columnName([]byte(cell)); got != want {
			t.Errorf("%q: got %q, want %q", cell, got, want)
		}
	}
}
