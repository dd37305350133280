package render

import (
	"bytes"
	"errors"
	"flag"
	"image"
	"image/color"
	"image/png"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"testing"

	"example.org/turfplat/zones"
)

var update = flag.Bool("update", false, "rewrite the pictures in testdata/render")

const (
	pictureDPI = 90
	mostDiffer = 0.001 // share of the pixels
	visible    = 24    // of 255, in any channel; less is rounding at an edge
)

// Maps look as they did when somebody last looked at the pictures.
func TestMapsLookAsTheyDid(t *testing.T) {
	sheets := make(map[string]*Sheet)
	for _, name := range inventedNames() {
		_, sheets[name] = inventedMap(t, name)
	}
	p, m := lit(t, courtyard().geoJSON(t), "courtyard")
	for name, sheet := range map[string]mapCase{
		"courtyard-lit":      mapCaseOf(t, "lit", siteDraft, p, m, MapOptions{}),
		"courtyard-sun":      mapCaseOf(t, "sun", sunDraft, p, m, MapOptions{}),
		"courtyard-sun-mono": mapCaseOf(t, "mono", sunDraft, p, m, MapOptions{Mono: true, Units: zones.US}),
	} {
		sheets[name] = sheet.sheet
	}
	for _, name := range []string{"lanes-orchard-house", "lanes-u", "lanes-three"} {
		sheets[name] = laneSites[name].draw(t, name, Paper{}).sheet
	}
	parts := tiledCases(t)["site"]
	sheets["campus-key"], sheets["campus-part"] = parts[0].sheet, parts[2].sheet
	delete(sheets, "courtyard") // it is there for its sun
	maps.Copy(sheets, packetPictures(t))
	for name, sheet := range sheets {
		t.Run(name, func(t *testing.T) {
			file, err := PNG(sheet, pictureDPI)
			if err != nil {
				t.Fatal(err)
			}
			path := filepath.Join("..", "testdata", "render", name+".png")
			want, err := os.ReadFile(path)
			if missing := errors.Is(err, fs.ErrNotExist); *update || missing {
				if missing && !*update && os.Getenv("CI") == "true" {
					t.Fatalf("%s is missing: look at the map and run with -update", path)
				}
				if err := os.WriteFile(path, file, 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if share := differing(t, decoded(t, file), decoded(t, want)); share > mostDiffer {
				t.Errorf("%.2f %% of the pixels differ from %s; the new picture is %s (kept with -artifacts)", 100*share, path, kept(t, name, file))
			}
		})
	}
}

func decoded(t *testing.T, file []byte) image.Image {
	t.Helper()
	picture, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

func kept(t *testing.T, name string, file []byte) string {
	t.Helper()
	path := filepath.Join(t.ArtifactDir(), name+".png")
	if err := os.WriteFile(path, file, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// differing is the share of pixels that are seen to differ.
func differing(t *testing.T, a, b image.Image) float64 {
	t.Helper()
	size := a.Bounds().Size()
	if size != b.Bounds().Size() {
		t.Fatalf("the picture is %v pixels, it was %v", size, b.Bounds().Size())
	}
	n := 0
	for y := range size.Y {
		for x := range size.X {
			if differ(a.At(x, y), b.At(x, y)) {
				n++
			}
		}
	}
	return float64(n) / float64(size.X*size.Y)
}

func differ(a, b color.Color) bool {
	ar, ag, ab, _ := a.RGBA()
	br, bg, bb, _ := b.RGBA()
	far := func(x, y uint32) bool { return max(x, y)-min(x, y) > visible*0x101 }
	return far(ar, br) || far(ag, bg) || far(ab, bb)
}

func TestDifferingIsSeen(t *testing.T) {
	_, sheet := inventedMap(t, "paddock")
	a := decoded(t, written(t, writers["png"], sheet))
	sheet.Add(Path{Lines: box(50, 50, 12).lines(), Fill: black})
	if share := differing(t, a, decoded(t, written(t, writers["png"], sheet))); share <= mostDiffer {
		t.Errorf("a black square is %.4f %% of the pixels", 100*share)
	}
}
