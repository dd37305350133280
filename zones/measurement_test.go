package zones

import (
	"reflect"
	"runtime"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestMeasurementOfTheSameBytesIsTheSame(t *testing.T) {
	check(t, 50, func(t *rapid.T) {
		file := drawProperty(t).file(home, "")
		p := platOf(t, file)
		want := p.Measurement()
		rows := p.FeedRows(want, "x")
		for _, processors := range []int{runtime.GOMAXPROCS(0), 1} {
			before := runtime.GOMAXPROCS(processors)
			again := platOf(t, file)
			got := again.Measurement()
			runtime.GOMAXPROCS(before)
			if !reflect.DeepEqual(got, want) {
				t.Fatalf("with %d processors\n%s\nwant\n%s", processors, asJSON(t, got), asJSON(t, want))
			}
			if !reflect.DeepEqual(again.FeedRows(got, "x"), rows) {
				t.Fatalf("feed differs with %d processors", processors)
			}
		}
	})
}

// The names of the measure document are relied upon.
func TestMeasurementAsJSON(t *testing.T) {
	m := sketch{lawn, covering(Bed, "bed", rectangle(1, 1, 2, 2)), covering(ZoneKind, "z", rectangle(40, 0, 50, 10))}.measure(t)
	text := asJSON(t, m)
	for _, name := range []string{
		`"id":"yard"`, `"name":"yard"`, `"center":[-93.`, `"cell":"`, `"outline":null`, `"traced_turf":{"from":"turf","area_m2":200`, `"outside_outline_m2":0`,
		`"covers":{"bed":{"area_m2":`, `"turf":{"area_m2":`, `"area_ft2":`, `"perimeter_m":`, `"sigma_m2":`, `"ci95_m2":`, `"pieces":1`, `"unknown":{"area_m2":0}`,
		`"deductions":[{"feature":"bed","kind":"bed","area_m2":`, `"zones":[{"id":"zone/turf","name":"Turf","exposure":"","species":"","apply":true,`, `"surface_area_m2":`,
		`"edges":{"turf_hardscape_m":0,"turf_bed_m":`, `"trim_m":0`, `"warnings":[{"code":"zone_without_turf","text":"yard.geojson: features[2] \"z\": zone lies on no turf","feature":"z"}]`,
	} {
		if !strings.Contains(text, name) {
			t.Errorf("no %s in %s", name, text)
		}
	}
}

func TestEmptyListsAreListsInJSON(t *testing.T) {
	text := asJSON(t, sketch{covering(Outline, "lot", rectangle(0, 0, 30, 20)), covering(Hardscape, "yard", rectangle(-1, -1, 31, 21))}.measure(t))
	for _, name := range []string{`"zones":[]`, `"turf":{"area_m2":0,`} {
		if !strings.Contains(text, name) {
			t.Errorf("no %s in %s", name, text)
		}
	}
	text = asJSON(t, sketch{lawn}.measure(t))
	for _, name := range []string{`"deductions":[]`, `"warnings":[]`} {
		if !strings.Contains(text, name) {
			t.Errorf("no %s in %s", name, text)
		}
	}
}
