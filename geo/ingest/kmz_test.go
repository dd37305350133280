package ingest

import (
	"archive/zip"
	"bytes"
	"fmt"
	"strings"
	"testing"
)

// zipped packs entries of name and text.
func zipped(t testing.TB, entries ...[2]string) string {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, e := range entries {
		w, err := z.Create(e[0])
		if err == nil {
			_, err = w.Write([]byte(e[1]))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestKMZ(t *testing.T) {
	at := func(position string) string {
		return inKML(placemark("<LineString><coordinates>" + position + "</coordinates></LineString>"))
	}
	whole := zipped(t, [2]string{"doc.kml", at("1,1")})
	damaged := []byte(whole)
	damaged[strings.Index(whole, "doc.kml")+10] ^= 0xff
	checkTrackRules(t, "x.kmz", "KMZ", []trackRule{
		{"one document", whole, []string{`"back lawn" [1 1]`}},
		{"doc.kml among others", zipped(t, [2]string{"files/a.png", "\x89PNG"}, [2]string{"other.kml", at("2,2")}, [2]string{"doc.kml", at("1,1")}), []string{`"back lawn" [1 1]`}},
		{"the first of others", zipped(t, [2]string{"readme.txt", "x"}, [2]string{"files/Walk.KML", at("2,2")}, [2]string{"b.kml", at("3,3")}), []string{`"back lawn" [2 2]`}},
		{"no document", zipped(t, [2]string{"a.shp", "x"}), []string{"error kmz_empty: x.kmz: is a zip archive without a .kml file"}},
		{"a document that is no KML", zipped(t, [2]string{"doc.kml", "lawn"}), []string{"error track_empty: x.kmz: holds no fix that can be used"}},
		{"bad XML", zipped(t, [2]string{"doc.kml", "<kml>\n</Kml>"}), []string{"error xml_syntax: x.kmz: line 2: is not valid XML: element <kml> closed by </Kml>"}},
		{"cut off", whole[:len(whole)-30], []string{"error zip_damaged: x.kmz: zip archive cannot be unpacked"}},
		{"damaged", string(damaged), []string{"error zip_damaged: x.kmz: zip archive cannot be unpacked"}},
	})
}

// TestKMZBomb: blanks pack far better than tracks.
func TestKMZBomb(t *testing.T) {
	bomb := zipped(t, [2]string{"doc.kml", "<kml>" + strings.Repeat(" ", 20<<20)})
	z, err := zip.NewReader(strings.NewReader(bomb), int64(len(bomb)))
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name   string
		limits Limits
		want   int // bytes
	}{
		{"by the limit", Limits{Bytes: 100_000}, 100_000},
		{"by the ratio", Limits{}, kmzExpansion * int(z.File[0].CompressedSize64)},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got := toldTracks(readTracks(bomb, "x", tt.limits))
			want := fmt.Sprintf("KMZ\nerror limit_bytes: x: \"doc.kml\" expands to more than %d bytes, the limit", tt.want)
			if got != want {
				t.Errorf("got %s, want %s", got, want)
			}
		})
	}
}
