package program

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"time"

	"go.yaml.in/yaml/v3"

	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
)

const (
	mostMowings   = 100
	mostTrailing  = 60  // days of a trailing mean
	mostAfter     = 400 // days after another step
	mostDegreeSum = 1e5 // degree days
)

func (d *document) whenKeys(w *When) []key {
	return []key{
		{"window", func(n *yaml.Node) { d.window(n, w) }},
		{"soil", func(n *yaml.Node) { d.soil(n, w) }},
		{"degree_days", func(n *yaml.Node) { d.degreeDays(n, w) }},
		{"after", func(n *yaml.Node) { d.after(n, w) }},
		value(d, "before", &w.Before, asID),
		value(d, "mowings", &w.Mowings, whole(mostMowings)),
	}
}

// longestWinter is how many days a window over the turn of the year may well
// have: nine months (own convention).
const longestWinter = 274

// window reads a window, and doubts one that is likely the wrong way round.
func (d *document) window(n *yaml.Node, w *When) {
	window, ok := scalar(d, n, "window", asWindow)
	if !ok {
		return
	}
	w.Window = window
	const year = 2001
	from, to := onCalendar(year, window.From), onCalendar(year, window.To)
	if !to.Before(from) {
		return
	}
	if days := 1 + int(onCalendar(year+1, window.To).Sub(from)/(24*time.Hour)); days > longestWinter {
		d.warn(n, "window_long", fmt.Sprintf("window %s runs over the turn of the year, for %d days", n.Value, days), "are its days the wrong way round?")
	}
}

func (d *document) soil(n *yaml.Node, w *When) {
	t := &SoilTrigger{Days: defaultTrailing, Depth: defaultDepth}
	w.Soil = t
	before := len(d.problems)
	d.mapping(n, "soil", d.soilKeys(t))
	switch {
	case len(d.problems) > before:
	case (t.AtLeast == nil) == (t.AtMost == nil):
		d.refuse(n, "program_value", "soil needs one of at_least and at_most", "write such as {at_least: 55 F, depth: 2 in, days: 5}")
	case t.closesBeforeItOpens():
		d.refuse(n, "program_value", "soil closes before it opens", "a window that opens as soil warms closes at a higher temperature, one that opens as it cools at a lower one")
	}
}

func (d *document) soilKeys(t *SoilTrigger) []key {
	return []key{
		value(d, "at_least", &t.AtLeast, asTemperature),
		value(d, "at_most", &t.AtMost, asTemperature),
		value(d, "depth", &t.Depth, asDepth),
		value(d, "days", &t.Days, whole(mostTrailing)),
		value(d, "closes", &t.Closes, asTemperature),
		value(d, "statistic", &t.Lowest, func(text string) (bool, error) {
			word, err := oneOf([]string{"mean", "min"})(text)
			return word == "min", err
		}),
	}
}

func (d *document) degreeDays(n *yaml.Node, w *When) {
	g := &DegreeDays{From: MonthDay{time.January, 1}}
	w.DegreeDays = g
	at := d.mapping(n, "degree_days", d.degreeDayKeys(g))
	if n.Kind == yaml.MappingNode && (at["base"] == nil || at["at_least"] == nil) {
		d.refuse(n, "program_key", "degree_days needs base and at_least", "write such as {base: 50 F, from: 02-15, at_least: 150}")
	}
}

func (d *document) degreeDayKeys(g *DegreeDays) []key {
	return []key{
		value(d, "base", &g.Base, asDegrees),
		value(d, "from", &g.From, asMonthDay),
		value(d, "at_least", &g.AtLeast, asDegreeSum),
		value(d, "closes", &g.Closes, asDegreeSum),
	}
}

func (d *document) after(n *yaml.Node, w *When) {
	a := &After{Most: -1}
	w.After = a
	at := d.mapping(n, "after", d.afterKeys(a))
	if n.Kind == yaml.MappingNode && at["step"] == nil {
		d.refuse(n, "program_key", "after needs the step that it comes after", "write such as {step: core, days: 0..3}")
	}
}

func (d *document) afterKeys(a *After) []key {
	return []key{
		value(d, "step", &a.Step, asID),
		value(d, "days", a, func(text string) (After, error) { return asDays(a.Step, text) }),
	}
}

var daysForm = regexp.MustCompile(`^(\d{1,3})(?:\.\.(\d{1,3}))?$`)

// asDays reads 3 or 0..3; a single number has no end.
func asDays(step, text string) (After, error) {
	m := daysForm.FindStringSubmatch(text)
	if m == nil {
		return After{}, errors.New(ingest.Quoted(text) + " is no number of days such as 3 or 0..3")
	}
	a := After{Step: step, Most: -1}
	a.Least, _ = strconv.Atoi(m[1])
	if m[2] != "" {
		a.Most, _ = strconv.Atoi(m[2])
	}
	if a.Most >= 0 && a.Most < a.Least || max(a.Least, a.Most) > mostAfter {
		return After{}, fmt.Errorf("%s runs backwards or over more than %d days", ingest.Quoted(text), mostAfter)
	}
	return a, nil
}

func asTemperature(text string) (*material.Quantity, error) {
	q, err := asDegrees(text)
	return &q, err
}

func asDegrees(text string) (material.Quantity, error) {
	q, err := material.Parse(text)
	if err == nil {
		_, err = q.Temperature()
	}
	return q, err
}

func asDepth(text string) (material.Quantity, error) {
	q, err := material.Parse(text)
	if err == nil {
		_, err = q.Length()
	}
	return q, err
}

func asDegreeSum(text string) (float64, error) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v > 0 && v <= mostDegreeSum) {
		return 0, errors.New(ingest.Quoted(text) + " is no sum of degree days above 0")
	}
	return v, nil
}

var monthDayForm = regexp.MustCompile(`^(\d\d)-(\d\d)$`)

func asMonthDay(text string) (MonthDay, error) {
	m := monthDayForm.FindStringSubmatch(text)
	if m != nil {
		month, _ := strconv.Atoi(m[1])
		day, _ := strconv.Atoi(m[2])
		const leap = 2000
		if month >= 1 && month <= 12 && day >= 1 && day <= daysIn(leap, time.Month(month)) {
			return MonthDay{time.Month(month), day}, nil
		}
	}
	return MonthDay{}, errors.New(ingest.Quoted(text) + " is no day of the year such as 04-15 (month, day)")
}

var windowForm = regexp.MustCompile(`^(\d\d-\d\d)\.\.(\d\d-\d\d)$`)

func asWindow(text string) (*Window, error) {
	m := windowForm.FindStringSubmatch(text)
	if m == nil {
		return nil, errors.New(ingest.Quoted(text) + " is no window such as 03-01..04-15")
	}
	from, err := asMonthDay(m[1])
	if err != nil {
		return nil, err
	}
	to, err := asMonthDay(m[2])
	return &Window{from, to}, err
}
