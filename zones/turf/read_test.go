package turf

import (
	"fmt"
	"strings"
	"testing"
)

func TestRead(t *testing.T) {
	table := "\ufeffname,also,season,shade_rank,least_sun_h,mow_mm,n_year_g_per_m2\n" +
		"couch,green couch,,,5 own trial,,\n" +
		"Velvet lawn,,cool,1,1.5,20-30 invented; <=40 another,<=10\n" +
		"\n"
	merged, err := Read(strings.NewReader(table))
	if err != nil {
		t.Fatal(err)
	}
	bermuda, _ := merged.Find("green couch")
	if bermuda.Name != "bermudagrass" || fmt.Sprint(bermuda.LeastSun) != "[{5 5 own trial}]" || len(bermuda.Sun) != 3 || bermuda.Season != Warm {
		t.Errorf("bermudagrass %+v", bermuda)
	}
	velvet, _ := merged.Find("velvet")
	if velvet.Name != "" {
		t.Errorf("found %+v by half a name", velvet)
	}
	velvet, _ = merged.Find("velvet lawns")
	if velvet.Season != Cool || fmt.Sprint(velvet.Mowing) != "[{0.02 0.03 invented} {0 0.04 another}]" || fmt.Sprint(velvet.YearN) != "[{0 0.01 }]" || velvet.LeastSun[0].Source != "" {
		t.Errorf("velvet lawn %+v", velvet)
	}
	if got := merged.Better(2, Cool); len(got) != 1 || got[0].Name != "Velvet lawn" {
		t.Errorf("better for 2 h: %v", got)
	}
	if s, _ := Default().Find("couch"); len(Default().Species()) != 13 || s.LeastSun[0].Source != "Georgia" || len(s.Also) != 6 {
		t.Errorf("the built-in table changed: %v", s)
	}
}

func TestBadTables(t *testing.T) {
	for _, tt := range []struct{ name, table, want string }{
		{"nothing", "", "line 1: there is no column name"},
		{"other columns", "name,height\n", `line 1: column "height" is not known; there are name, also, season,`},
		{"a column twice", "name,also,also\n", `line 1: column "also" stands twice`},
		{"no name", "name,season\n,cool\n", "line 2: the grass has no name"},
		{"too few columns", "name,season\nmoss\n", "line 2: there are 1 columns, not 2"},
		{"no season", "name,sun_h\nmoss,2\n", `line 2: moss: season "" is neither cool nor warm`},
		{"odd season", "name,season\nmoss,wet\n", `line 2: moss: season "wet" is neither cool nor warm`},
		{"rank in words", "name,season,shade_rank\nmoss,cool,best\n", `line 2: moss: shade_rank "best" is not a whole number`},
		{"rank 0", "name,season,shade_rank\nmoss,cool,0\n", `line 2: moss: shade_rank "0" is not a whole number`},
		{"words for a figure", "name,sun_h\ncouch,lots\n", `line 2: bermudagrass: sun_h "lots": write a number, a range such as 6-8, or a limit such as <=9, then the source`},
		{"backwards", "name,sun_h\ncouch,8-6 own\n", `line 2: bermudagrass: sun_h "8-6 own": the range runs backwards`},
		{"too long a day", "name,sun_h\ncouch,25\n", `line 2: bermudagrass: sun_h "25": is not above 0 and up to 24`},
		{"nothing at all", "name,mow_in\ncouch,0\n", `line 2: bermudagrass: mow_in "0": is not above 0 and up to 24`},
		{"hexadecimal", "name,sun_h\ncouch,0x5\n", `line 2: bermudagrass: sun_h "0x5": write a number`},
		{"boundless", "name,sun_h\ncouch,Inf\n", `line 2: bermudagrass: sun_h "Inf": write a number`},
		{"least sun above what it wants", "name,sun_h\nKBG,3\n", `line 2: Kentucky bluegrass: least_sun_h 4 is above sun_h 3: give both`},
		{"a name of another", "name,also\ncouch,fine fescue\n", `line 2: bermudagrass: "fine fescue" is a name of fine fescue already`},
		{"all of them", "name,season,sun_h\nmoss,wet,lots\ncouch,,\nclover,cool,-\n",
			"line 2: moss: season \"wet\" is neither cool nor warm\nline 2: moss: sun_h \"lots\": write a number, a range such as 6-8, or a limit such as <=9, then the source\nline 4: clover: sun_h \"-\": write a number"},
		{"something else", "name,season\n" + strings.Repeat("couch,\n", 160_000), "is larger than 1 MiB, which no table of grasses is: is it the right file?"},
		{"open quote", "name,season\nmoss,wet\n\"couch,\n", "line 2: moss: season \"wet\" is neither cool nor warm\nparse error on line 3"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			table, err := Read(strings.NewReader(tt.table))
			if err == nil || table != nil || !strings.HasPrefix(err.Error(), tt.want) {
				t.Errorf("error %v, want %s", err, tt.want)
			}
		})
	}
}

func FuzzRead(f *testing.F) {
	f.Add(speciesCSV)
	f.Add("name,also,season,sun_h\ncouch,green couch,,5 own; <=6\nmoss,,cool,2-3\n")
	f.Add("name,sun_h\n\"couch,1\n")
	f.Fuzz(func(t *testing.T, text string) {
		table, err := Read(strings.NewReader(text))
		if (err == nil) == (table == nil) {
			t.Fatalf("table %v with error %v", table, err)
		}
		if err != nil {
			return
		}
		for _, s := range table.Species() {
			if found, ok := table.Find(s.Name); !ok || found.Name != s.Name || s.Season == "" {
				t.Errorf("%q is found as %q, season %q", s.Name, found.Name, s.Season)
			}
			for _, c := range columns {
				for _, figure := range *c.figures(&s) {
					if !(0 <= figure.Least && figure.Least <= figure.Most && figure.Most > 0) {
						t.Errorf("%s: %s %v", s.Name, c.name, figure)
					}
				}
			}
		}
	})
}
