package zones

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/turfplat/geo/ingest"
)

// codesOf are the codes of the warnings about attributes, in order.
func codesOf(problems []ingest.Problem) string {
	var codes []string
	for _, p := range problems {
		if strings.HasSuffix(p.Code, "_range") || strings.HasSuffix(p.Code, "_unread") || p.Code == "attribute_misplaced" {
			codes = append(codes, p.Code)
		}
	}
	return strings.Join(codes, " ")
}

func TestValuesOfAttributes(t *testing.T) {
	for _, tt := range []struct{ geometry, props, want string }{
		{"LineString", `"kind":"hedge","width_m":"3 ft"`, "width_range"},
		{"LineString", `"kind":"hedge","width_m":-1`, "width_range"},
		{"LineString", `"kind":"hedge","width_m":[3]`, "width_range"},
		{"LineString", `"kind":"hedge","width_m":true`, "width_range"},
		{"LineString", `"kind":"hedge","width_m":"0.9"`, ""},
		{"LineString", `"kind":"hedge","width_m":0,"height_m":0`, ""},
		{"LineString", `"kind":"hedge","width_m":null,"height_m":""`, ""},
		{"LineString", `"kind":"hedge","height_ft":1641`, "height_range"},
		{"LineString", `"kind":"hedge","height_ft":1640`, ""},
		{"Point", `"kind":"tree","height_m":"tall","crown_m":"wide"`, "height_range crown_range"},
		{"Point", `"kind":"tree","transmittance":"20 %"`, "transmittance_range"},
		{"Point", `"kind":"tree","species":["Acer"],"leaf":{}`, "species_unread leaf_unread"},
		{"Point", `"kind":"hazard","setback_m":"10 ft"`, "setback_range"},
		{"Point", `"kind":"hazard","setback_m":301`, "setback_range"},
		{"Polygon", `"kind":"zone","slope_percent":"steep","aspect_deg":"south"`, "slope_range aspect_range"},
		{"Polygon", `"kind":"zone","slope_percent":101`, "slope_range"},
		{"Polygon", `"kind":"zone","aspect_deg":361`, "aspect_range"},
		{"Polygon", `"kind":"zone","apply":0,"irrigated":"Yes, drip"`, "apply_unread irrigated_unread"},
		{"Polygon", `"kind":"zone","apply":"no","irrigated":true`, ""},
		{"Polygon", `"kind":"zone","exposure":["full"]`, "exposure_unread"},
		{"Polygon", `"kind":"turf","slope_percent":30,"exposure":"full","apply":false,"irrigated":true`, "attribute_misplaced attribute_misplaced attribute_misplaced attribute_misplaced"},
		{"Polygon", `"kind":"turf","apply":true,"irrigated":false,"species":"tall fescue"`, ""},
		{"Polygon", `"kind":"pool","setback_m":3`, "attribute_misplaced"},
		{"Polygon", `"kind":"bed","irrigated":true`, ""},
		{"Polygon", `"landuse":"grass","sigma_m":"good"`, "sigma_range"},
	} {
		if got := codesOf(siteOf(t, collection(geometries[tt.geometry](tt.props))).Problems); got != tt.want {
			t.Errorf("%s: warned of %q, want %q", tt.props, got, tt.want)
		}
	}
}

// A setback that cannot be read refuses the site; of a zone it is taken that
// nothing may be applied there.
func TestSafetyIsNotGuessed(t *testing.T) {
	for _, tt := range []struct {
		geometry, props string
		refused         bool
	}{
		{"Point", `"kind":"hazard","setback_m":"10 ft"`, true},
		{"Polygon", `"kind":"water","setback_ft":"thirty"`, true},
		{"Polygon", `"kind":"water","setback_m":""`, false},
		{"Polygon", `"kind":"water","setback_m":0`, false},
		{"Polygon", `"kind":"pool","setback_m":"10 ft"`, false}, // not read of a pool
		{"Polygon", `"kind":"zone","apply":"perhaps"`, false},
	} {
		if s := siteOf(t, collection(geometries[tt.geometry](tt.props))); s.Refused() != tt.refused {
			t.Errorf("%s: refused %v: %v", tt.props, s.Refused(), s.Problems)
		}
	}
	for props, want := range map[string]bool{`"apply":0`: false, `"apply":1`: false, `"apply":"perhaps"`: false, `"apply":"no"`: false, `"apply":""`: true, `"apply":null`: true, `"apply":"yes"`: true} {
		p := sketch{covering(Turf, "lawn", rectangle(0, 0, 40, 20)), polygon(kind(ZoneKind, "z", props), rectangle(0, 0, 10, 20))}.plat(t)
		at := slices.IndexFunc(p.Zones, func(z Zone) bool { return z.ID == "zone/z" })
		if at < 0 || p.Zones[at].Apply != want {
			t.Errorf("%s: %+v, want apply %v", props, p.Zones, want)
		}
	}
}

// A value that is left aside leaves the object as if nothing had been stated.
func TestValueLeftAside(t *testing.T) {
	for _, tt := range []struct{ geometry, with, without string }{
		{"Point", `"kind":"tree","height_m":"tall","crown_m":-3`, `"kind":"tree"`},
		{"Point", `"kind":"tree","crown_m":61,"height_ft":2000`, `"kind":"tree"`},
		{"Polygon", `"kind":"building","height_m":-4,"sigma_m":101`, `"kind":"building"`},
	} {
		with := siteOf(t, collection(geometries[tt.geometry](tt.with))).Objects[0]
		without := siteOf(t, collection(geometries[tt.geometry](tt.without))).Objects[0]
		read := func(o *Object) string { return fmt.Sprint(o.Stature, o.Crown, o.Error) }
		if read(with) != read(without) {
			t.Errorf("%s: %s, want %s", tt.with, read(with), read(without))
		}
	}
}

func TestMisspeltKeys(t *testing.T) {
	for _, tt := range []struct{ geometry, props, meant string }{
		{"Polygon", `"kind":"zone","speceis":"tall fescue"`, "species"},
		{"Polygon", `"kind":"zone","Species":"tall fescue"`, "species"},
		{"Polygon", `"kind":"zone","slope":30`, "slope_percent"},
		{"Polygon", `"kind":"zone","slope_deg":20`, "slope_percent"},
		{"Polygon", `"kind":"zone","slopePercent":20`, "slope_percent"},
		{"Polygon", `"kind":"turf","slope":30`, "slope_percent"},
		{"Polygon", `"kind":"zone","aspect":"south"`, "aspect_deg"},
		{"Polygon", `"kind":"zone","irigated":true`, "irrigated"},
		{"Polygon", `"kind":"zone","aply":false`, "apply"},
		{"Polygon", `"kind":"building","heigth_m":3`, "height_m"},
		{"Polygon", `"kind":"building","height_in":90`, "height_m"},
		{"LineString", `"kind":"hedge","width":0.9`, "width_m"},
		{"Polygon", `"kind":"water","setback":3`, "setback_m"},
		{"Polygon", `"kind":"turf","grass":"tall fescue"`, "species"},

		{"Polygon", `"kind":"zone","slope":30,"slope_percent":30`, ""},
		{"LineString", `"kind":"hedge","width":0.9,"width_ft":3`, ""},
		{"Polygon", `"kind":"building","height":"12","height_source":"lidar"`, ""},
		{"Polygon", `"kind":"building","slope":30,"width":12`, ""},
		{"Polygon", `"kind":"zone","slope":null`, ""},
		{"Polygon", `"kind":"turf","size":"large","owner":"town","service":"weekly","weight_m":3,"FID":7,"":1,"s":2`, ""},
		{"Point", `"kind":"tree","species:de":"Ahorn","leaf_type":"broadleaved","genus":"Acer","taxon":"Acer rubrum","diameter_crown":"5"`, ""},
		{"Polygon", `"landuse":"grass","slope":30,"speceis":"tall fescue"`, ""},
	} {
		s := siteOf(t, collection(geometries[tt.geometry](tt.props)))
		meant := ""
		for _, p := range s.Problems {
			if p.Code == "key_unread" {
				meant += strings.TrimPrefix(p.Hint, "did you mean ")
			}
		}
		if want := tt.meant + "?"; tt.meant != "" && !strings.HasPrefix(meant, want) || tt.meant == "" && meant != "" {
			t.Errorf("%s: %q perhaps meant, want %q", tt.props, meant, tt.meant)
		}
	}
}

// A key that many objects have is told of once.
func TestMisspeltKeyIsToldOnce(t *testing.T) {
	many := []string{geometries["Polygon"](`"kind":"zone","slope":3`)}
	many = append(many, many[0], many[0])
	s := siteOf(t, collection(many...))
	want := `warning: yard.geojson: features[0]: "slope" is not read, here and on 2 more objects (did you mean slope_percent?)`
	if got := told(s.Problems); got != want {
		t.Errorf("told\n%s\nwant\n%s", got, want)
	}
}

// A code under a key of its own is not printed, and told where it belongs.
func TestCodesUnderOtherKeys(t *testing.T) {
	for _, key := range []string{"code", "Code", "pin", "keypad_code", "lockbox", "combination"} {
		s := siteOf(t, sketch{lawn}.file(home, fmt.Sprintf(`"site":{"access":{%q:"1234"}}`, key)))
		want := fmt.Sprintf("warning: yard.geojson: site access %q is not read (did you mean gate_code?)", key)
		if got := told(s.Problems); got != want {
			t.Errorf("%s: told %q, want %q", key, got, want)
		}
	}
	for _, access := range []string{`"gate_code":"1","code":"2"`, `"encoded":"x"`, `"pinned":"x"`} {
		s := siteOf(t, sketch{lawn}.file(home, `"site":{"access":{`+access+`}}`))
		if got := told(s.Problems); got != "" {
			t.Errorf("%s: told %q", access, got)
		}
	}
}

func TestMisspeltKeysOfTheSite(t *testing.T) {
	s := siteOf(t, sketch{lawn}.file(home, `"site":{"id":"a","speceis":"tall fescue","unit":"metric","client":"7","access":{"gatecode":"12","water":"tap"}}`))
	want := `warning: yard.geojson: site access "gatecode" is not read (did you mean gate_code?)
warning: yard.geojson: site "speceis" is not read (did you mean species?)
warning: yard.geojson: site "unit" is not read (did you mean units?)`
	if got := told(s.Problems); got != want {
		t.Errorf("told\n%s\nwant\n%s", got, want)
	}
}
