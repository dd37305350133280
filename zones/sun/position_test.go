package sun

import (
	"encoding/json"
	"math"
	"os"
	"testing"
	"time"
)

func utc(t *testing.T, s string) time.Time {
	t.Helper()
	moment, err := time.Parse(time.RFC3339, s)
	if err != nil {
		t.Fatal(err)
	}
	return moment
}

// apart is how far two positions lie apart in the sky, degrees; near the zenith
// azimuths may differ widely.
func apart(p Position, elevation, azimuth float64) float64 {
	across := math.Remainder(float64(p.Azimuth)-azimuth, 360) * math.Cos(elevation*degree)
	return math.Hypot(float64(p.Elevation)-elevation, across)
}

func TestPositionPublished(t *testing.T) {
	data, err := os.ReadFile("../../../shared/checks/solar_positions.json")
	if err != nil {
		t.Skip("no table of solar positions beside the repository: ", err)
	}
	var table struct {
		Rows []struct {
			Site, UTC   string
			Lat, Lon    float64
			Geometric   float64 `json:"elevation_geometric_deg"`
			Elevation   float64 `json:"elevation_apparent_deg"`
			Azimuth     float64 `json:"azimuth_deg"`
			Declination float64 `json:"declination_deg"`
		}
	}
	if err := json.Unmarshal(data, &table); err != nil {
		t.Fatal(err)
	}
	if len(table.Rows) != 40 {
		t.Errorf("%d rows, want 40", len(table.Rows))
	}
	for _, row := range table.Rows {
		p := At(row.Lon, row.Lat, utc(t, row.UTC))
		if off := apart(p, row.Elevation, row.Azimuth); off > 0.002 {
			t.Errorf("%s %s: %.4f, %.4f; want %.4f, %.4f: %.4f degrees off", row.Site, row.UTC, p.Elevation, p.Azimuth, row.Elevation, row.Azimuth, off)
		}
		if math.Abs(float64(p.Geometric)-row.Geometric) > 0.002 || math.Abs(float64(p.Declination)-row.Declination) > 0.004 { // the table's is seen from the ground
			t.Errorf("%s %s: without air %.4f, declination %.4f; want %.4f, %.4f", row.Site, row.UTC, p.Geometric, p.Declination, row.Geometric, row.Declination)
		}
	}
}

// The worked example of Reda & Andreas, Solar Position Algorithm for Solar
// Radiation Applications, NREL/TP-560-34302, 2008, and the same site and clock
// a year later (a test of pvlib-python). Their air is thinner, so elevations
// are compared without air; parallax from 1,830 m up is below 1e-6 degrees.
func TestPositionSPA(t *testing.T) {
	for _, tt := range []struct {
		utc                             string
		geometric, azimuth, declination float64
	}{
		{"2003-10-17T19:30:30Z", 39.872046, 194.340241, -9.31434},
		{"2004-10-17T19:30:30Z", 39.592095, 194.311962, math.NaN()},
	} {
		p := At(-105.1786, 39.742476, utc(t, tt.utc))
		const tolerance = 0.001
		if math.Abs(float64(p.Geometric)-tt.geometric) > tolerance || math.Abs(float64(p.Azimuth)-tt.azimuth) > tolerance || math.Abs(float64(p.Declination)-tt.declination) > tolerance {
			t.Errorf("%s: %+v, want %+v", tt.utc, p, tt)
		}
	}
}

// Meeus, Astronomical Algorithms, 2nd ed. 1998, example 25.b: the declination
// at 0h of even time on 13 October 1992, by the full theory.
func TestDeclinationMeeus(t *testing.T) {
	at := utc(t, "1992-10-13T00:00:00Z").Add(-59 * time.Second)
	want := -(7 + 47/60.0 + 1.74/3600)
	if got := float64(At(0, 0, at).Declination); math.Abs(got-want) > 0.0003 {
		t.Errorf("declination %.5f, want %.5f", got, want)
	}
}

// Rows of a run of 20,000 against astronomy-engine 2.1.19, one a decade and
// more: elevation without and with air, azimuth. Over the whole run the worst
// was 0.0017 degrees, in 2100, nearly all of it the even time assumed.
func TestPositionAcrossYears(t *testing.T) {
	for _, tt := range []struct {
		utc                           string
		lat, lon                      float64
		geometric, elevation, azimuth float64
	}{
		{"1951-06-05T16:26:20Z", -34.1467, -0.8118, 5.3663, 5.5191, 301.8980},
		{"1967-08-10T08:27:30Z", 5.3677, -31.8794, 4.9474, 5.1099, 74.6175},
		{"1973-06-22T10:47:48Z", 77.1981, 126.2044, 19.0318, 19.0799, 292.3837},
		{"1982-09-18T20:24:31Z", -3.2916, -96.9288, 58.9223, 58.9325, 278.9085},
		{"1996-04-10T02:43:41Z", 52.2376, 147.6002, 45.2686, 45.2853, 191.5580},
		{"2002-09-26T10:57:02Z", 70.6587, -52.5012, 6.5067, 6.6378, 113.0909},
		{"2017-09-27T06:19:37Z", -37.1484, 60.9028, 49.2141, 49.2287, 34.8762},
		{"2020-07-15T19:00:32Z", 16.3407, -170.6875, 26.7831, 26.8163, 73.9169},
		{"2036-02-26T01:53:50Z", -39.1923, 159.5496, 59.4311, 59.4411, 350.7085},
		{"2045-07-31T16:08:29Z", 60.3615, -126.582, 27.3809, 27.4133, 101.8382},
		{"2054-05-08T05:26:49Z", 70.5309, -140.1115, 6.1476, 6.2848, 305.8114},
		{"2069-03-15T01:16:37Z", 6.0309, -178.052, 69.5030, 69.5093, 247.5875},
		{"2079-04-29T18:16:15Z", -52.9027, -117.1525, 19.6973, 19.7437, 23.0790},
		{"2083-07-04T19:39:16Z", -22.8261, -93.9965, 40.5414, 40.5611, 335.9286},
		{"2095-05-23T12:49:53Z", -2.3561, -40.1142, 55.0086, 55.0204, 47.5064},
		{"2100-11-04T22:31:25Z", -38.5774, 122.0202, 20.4739, 20.5184, 93.9864},
	} {
		p := At(tt.lon, tt.lat, utc(t, tt.utc))
		if off := apart(p, tt.elevation, tt.azimuth); off > 0.002 || math.Abs(float64(p.Geometric)-tt.geometric) > 0.002 {
			t.Errorf("%s: %.4f, %.4f, %.4f; want %+v", tt.utc, p.Geometric, p.Elevation, p.Azimuth, tt)
		}
	}
}

func TestRefractionIsSteady(t *testing.T) {
	before := Degrees(-90)
	for e := Degrees(-89.9); e <= 90; e += 0.01 {
		lifted := e + refraction(e)
		if lifted <= before {
			t.Fatalf("a body at %.2f appears at %.4f, not above %.4f", e, lifted, before)
		}
		if back := withoutAir(lifted); math.Abs(float64(back-e)) > 1e-6 {
			t.Fatalf("a body at %.2f comes back as %.8f", e, back)
		}
		before = lifted
	}
}
