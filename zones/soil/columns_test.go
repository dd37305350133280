package soil

import (
	"errors"
	"strings"
	"testing"

	"example.org/turfplat/zones/material"
)

// TestParseColumns: each thing that can be wrong is told with what to write.
func TestParseColumns(t *testing.T) {
	for _, good := range []string{
		"time=t,temp=a,unit=c,depth=5cm,missing=-9999",
		"unit=F, temp=a, depth=2 in, temp=b, depth=4in, statistic=min, air=x, air_min=y, air_max=z, station=s, missing=-99, missing=NA",
		"time=year+day_of_year+hour,temp=soil,unit=c,depth=10 cm",
		"missing=-9999", "time=date", "temp=soil_2in_f",
	} {
		if _, err := ParseColumns(good); err != nil {
			t.Errorf("%s: %v", good, err)
		}
	}
	tests := []struct{ text, want string }{
		{"", `"" names no column (write KEY=COLUMN, parted by commas)`},
		{"time", `"time" names no column (write KEY=COLUMN, parted by commas)`},
		{"time=", `"time=" names no column (write KEY=COLUMN, parted by commas)`},
		{"when=t", `"when" is no key of columns (keys are time, station, temp, depth, statistic, air, air_min, air_max, unit and missing)`},
		{"time=a+b+c+d", "time is made of at most three columns, not 4 (write time=date+clock or time=year+day_of_year+hour)"},
		{"time=a+", `"time=a+" lacks a name`},
		{"temp=a,depth=5cm", `columns do not say the unit of "a" (add unit=c or unit=f)`},
		{"temp=a,unit=c", `columns do not say how deep the sensor of "a" is (add depth=5cm or the like after its temp=...)`},
		{"depth=5cm,temp=a,unit=c", "depth speaks of no column (write temp=COLUMN before it)"},
		{"temp=a,air=b,depth=5cm,unit=c", "depth speaks of no column (write temp=COLUMN before it)"},
		{"temp=a,unit=c,depth=5", `"5" is no depth of a sensor (write it as in depth=2in or depth=5cm, at most 2 m)`},
		{"temp=a,unit=c,depth=0cm", `"0cm" is no depth of a sensor (write it as in depth=2in or depth=5cm, at most 2 m)`},
		{"temp=a,unit=c,depth=5m", `"5m" is no depth of a sensor (write it as in depth=2in or depth=5cm, at most 2 m)`},
		{"temp=a,unit=lb,depth=5cm", `"lb" is no unit of temperature (write unit=c or unit=f)`},
		{"temp=a,unit=c,depth=5cm,statistic=median", `"median" is no statistic (write mean, min or max)`},
	}
	for _, tt := range tests {
		_, err := ParseColumns(tt.text)
		var wrong *material.InputError
		if !errors.As(err, &wrong) || err.Error() != tt.want {
			t.Errorf("%q: %v, want %s", tt.text, err, tt.want)
		}
	}
}

// TestNames: the names of columns that say what they hold, and those that do
// not quite.
func TestNames(t *testing.T) {
	tests := []struct {
		name  string
		depth float64 // m; 0 = it is no name of soil
		stat  Statistic
	}{
		{"soil_2in_f", 0.0508, Mean}, {"SOIL_2IN_F", 0.0508, Mean}, {"soil_5cm_c", 0.05, Mean}, {"soil_50mm_c", 0.05, Mean},
		{"soil_2.5cm_c", 0.025, Mean}, {"soil_4in_min_f", 0.1016, Lowest}, {"soil_4in_max_f", 0.1016, Highest}, {"soil_4in_avg_f", 0.1016, Mean},
		{"soil_2_in_f", 0.0508, Mean}, {"soil_2in", 0, 0}, {"soil_f", 0, 0}, {"soil_2in_k", 0, 0}, {"soil_0in_f", 0, 0}, {"soil_999in_f", 0, 0}, {"soil_moisture_5cm_c", 0, 0}, {"air_f", 0, 0},
	}
	for _, tt := range tests {
		c, ok := sensorOfName(tt.name)
		if isSoil := ok && c.medium == ground; isSoil != (tt.depth > 0) || isSoil && (float64(c.depth) != tt.depth || c.statistic != tt.stat) {
			t.Errorf("%s: %v, %+v", tt.name, ok, c)
		}
	}
	if c, ok := sensorOfName("air_max_f"); !ok || c.medium != air || c.statistic != Highest || !strings.EqualFold(c.unit.String(), "f") {
		t.Errorf("air_max_f: %v, %+v", ok, c)
	}
}
