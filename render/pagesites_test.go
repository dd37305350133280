package render

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/turfplat/samples"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/lanes"
	"example.org/turfplat/zones/program"
)

// walkedFor lays lanes for each step of a plan, as commands do.
func walkedFor(t testing.TB, p *zones.Plat, w lanes.Work) func(*program.StepPlan) ([]StepLanes, error) {
	return func(step *program.StepPlan) ([]StepLanes, error) {
		on := *p
		on.Zones = append([]zones.Zone(nil), p.Zones...)
		worked := make(map[string]bool)
		for _, z := range step.Zones {
			worked[z.ID] = !z.Closed()
		}
		for i := range on.Zones {
			on.Zones[i].Apply = on.Zones[i].Apply && worked[on.Zones[i].ID]
		}
		w := w
		if w.Load == nil && step.Step.Passes > 1 {
			w.Load = &lanes.Load{Step: step.Step.ID, Material: step.Step.Product.Name, Passes: step.Step.Passes}
		}
		return walkedIn(t, &on, w), nil
	}
}

// walkedOn are the lanes of one pass over a property.
func walkedOn(t testing.TB, p *zones.Plat, w lanes.Work) *StepLanes {
	t.Helper()
	passes := walkedIn(t, p, w)
	if len(passes) == 0 {
		return new(StepLanes) // nothing is walked
	}
	return &passes[0]
}

func walkedIn(t testing.TB, p *zones.Plat, w lanes.Work) []StepLanes {
	t.Helper()
	yard, err := lanes.YardOf(p, w.Practice)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := lanes.Lay(yard, w)
	if err != nil {
		t.Fatal(err)
	}
	return PassesOf(plan, yard)
}

// crewPage is the page of the sample with its season, its lanes and its sun, on
// a day on which some of it waits.
func crewPage(t testing.TB) (*Sheet, []byte) {
	t.Helper()
	_, _, season := alderLane(t)
	p, m := lit(t, string(samples.AlderLane), samples.AlderLaneName)
	return pageOn(t, p, m, season, MapOptions{})
}

func pageOn(t testing.TB, p *zones.Plat, m zones.Measurement, season *program.Program, o MapOptions) (*Sheet, []byte) {
	t.Helper()
	plan := planned(t, p, m, season, time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC))
	s, file, err := Page(p, m, plan, PageOptions{PacketOptions: PacketOptions{
		MapOptions: o, Sun: p.Sun != nil, Lanes: walkedFor(t, p, spreadWork(t, 3.048, lanes.Tight)),
	}})
	if err != nil {
		t.Fatal(err)
	}
	return s, file
}

// sitePage is the page of a site alone.
func sitePage(t testing.TB, p *zones.Plat, m zones.Measurement, o PageOptions) (*Sheet, []byte) {
	t.Helper()
	s, file, err := Page(p, m, nil, o)
	if err != nil {
		t.Fatal(err)
	}
	return s, file
}

// onDisk keeps a page in a file, as a browser wants it.
func onDisk(t testing.TB, file []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "crew.html")
	if err := os.WriteFile(path, file, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// hostile is a name that is code wherever it is not kept as text.
const hostile = `"'</script></style></title><img src=x onerror="hit=1"><svg onload=hit=1>{{.}}]]>${hit=1}`

// hostileSite is a site and a program in which every name is hostile.
func hostileSite(t testing.TB) (*zones.Plat, zones.Measurement, *program.Program) {
	t.Helper()
	quoted, err := json.Marshal(hostile)
	if err != nil {
		t.Fatal(err)
	}
	text := regexp.MustCompile(`"(name|species|gate|parking|dog|water|power|contact|id)": *"[^"]*"`).ReplaceAllStringFunc(string(samples.AlderLane), func(member string) string {
		key, value, _ := strings.Cut(member, ":")
		if key == `"id"` {
			return key + ":" + strings.TrimSuffix(value, `"`) + string(quoted[1:])
		}
		return key + ":" + string(quoted)
	})
	p, m := surveyed(t, text, "hostile")
	file := regexp.MustCompile(`(?m)^( +(?:title|material|cautions|only_if|notes|stay_off)): .*$`).ReplaceAllString(string(samples.AlderLaneSeason), "$1: "+strings.ReplaceAll(string(quoted), "$", "$$"))
	file = regexp.MustCompile(`(?s)calibrations:.*?steps:`).ReplaceAllString(file, "steps:")
	file = regexp.MustCompile(`where: .*`).ReplaceAllString(file, "where: {}")
	season, problems := program.Read(strings.NewReader(file), "hostile.yaml")
	if season == nil {
		t.Fatal(problems)
	}
	return p, m, season
}
