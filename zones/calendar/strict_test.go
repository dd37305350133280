package calendar

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"
	"unicode/utf8"
)

// A strict reader of RFC 5545, which knows nothing of how we write: lines end
// in CRLF and have at most 75 octets (3.1), unfolding comes before all else,
// each content line follows the grammar (3.1), components hold what they must
// once and nothing that they may not (3.4, 3.6, 3.6.1).

// readEvent is an event as the strict reader understands it.
type readEvent struct {
	uid, summary, description, location string
	categories                          []string
	start, end                          time.Time
}

// readCalendar is a calendar as the strict reader understands it.
type readCalendar struct {
	product, name string
	stamps        []string
	events        []readEvent
}

type contentLine struct{ name, params, value string }

var (
	// contentForm is name *(";" param) ":" value without quoted parameters,
	// of which there are none here.
	contentForm = regexp.MustCompile(`^([A-Z][A-Z0-9-]*)((?:;[A-Z-]+=[^;:",]+)*):(.*)$`)
	stampForm   = regexp.MustCompile(`^\d{8}T\d{6}Z$`)
	dateOnly    = regexp.MustCompile(`^\d{8}$`)
)

// unfolded gives the content lines of a stream.
func unfolded(stream string) ([]contentLine, error) {
	if !strings.HasSuffix(stream, "\r\n") {
		return nil, fmt.Errorf("the stream does not end a line")
	}
	if !utf8.ValidString(stream) {
		return nil, fmt.Errorf("the stream is not UTF-8")
	}
	var whole []string
	for _, line := range strings.Split(strings.TrimSuffix(stream, "\r\n"), "\r\n") {
		switch {
		case len(line) > 75:
			return nil, fmt.Errorf("a line has %d octets: %q", len(line), line)
		case !utf8.ValidString(line):
			return nil, fmt.Errorf("a fold splits a character: %q", line)
		case strings.ContainsFunc(line, func(r rune) bool { return r < ' ' && r != '\t' || r == 0x7f }):
			return nil, fmt.Errorf("a line holds a control character: %q", line)
		case strings.HasPrefix(line, " ") && len(whole) > 0:
			whole[len(whole)-1] += line[1:]
		default:
			whole = append(whole, line)
		}
	}
	var lines []contentLine
	for _, line := range whole {
		m := contentForm.FindStringSubmatch(line)
		if m == nil {
			return nil, fmt.Errorf("%q is no content line", line)
		}
		lines = append(lines, contentLine{m[1], m[2], m[3]})
	}
	return lines, nil
}

// unescaped reads a list of TEXT (3.3.11): only the escapes of the standard are
// known, and what must be escaped must be.
func unescaped(value string) ([]string, error) {
	list, current := []string{}, ""
	for i := 0; i < len(value); i++ {
		switch value[i] {
		case ',':
			list, current = append(list, current), ""
		case ';':
			return nil, fmt.Errorf("a semicolon stands bare in %q", value)
		case '\\':
			i++
			if i == len(value) || !strings.ContainsRune(`\;,nN`, rune(value[i])) {
				return nil, fmt.Errorf("an escape is wrong in %q", value)
			}
			current += strings.NewReplacer("n", "\n", "N", "\n").Replace(value[i : i+1])
		default:
			current += value[i : i+1]
		}
	}
	return append(list, current), nil
}

func unescapedOne(value string) (string, error) {
	list, err := unescaped(value)
	if err == nil && len(list) != 1 {
		err = fmt.Errorf("a comma stands bare in %q", value)
	}
	if err != nil {
		return "", err
	}
	return list[0], nil
}

// strictRead reads a stream of one calendar.
func strictRead(stream string) (c readCalendar, err error) {
	lines, err := unfolded(stream)
	if err != nil {
		return c, err
	}
	n := len(lines)
	if n < 2 || lines[0] != (contentLine{"BEGIN", "", "VCALENDAR"}) || lines[n-1] != (contentLine{"END", "", "VCALENDAR"}) {
		return c, fmt.Errorf("it is not one VCALENDAR")
	}
	lines = lines[1 : n-1]
	first := slices.IndexFunc(lines, func(l contentLine) bool { return l.name == "BEGIN" })
	if first < 0 {
		return c, fmt.Errorf("there is no component")
	}
	if err := c.properties(lines[:first]); err != nil {
		return c, err
	}
	for lines = lines[first:]; len(lines) > 0; {
		end := slices.Index(lines, contentLine{"END", "", "VEVENT"})
		if lines[0] != (contentLine{"BEGIN", "", "VEVENT"}) || end < 0 {
			return c, fmt.Errorf("%v begins no whole event", lines[0])
		}
		if err := c.event(lines[1:end]); err != nil {
			return c, err
		}
		lines = lines[end+1:]
	}
	return c, nil
}

func (c *readCalendar) properties(lines []contentLine) error {
	values, err := once(lines, []string{"VERSION", "PRODID"}, []string{"CALSCALE", "NAME"})
	if err != nil {
		return err
	}
	if values["VERSION"] != "2.0" || values["CALSCALE"] != "" && values["CALSCALE"] != "GREGORIAN" {
		return fmt.Errorf("properties of the calendar are %v", values)
	}
	if c.product, err = unescapedOne(values["PRODID"]); err != nil {
		return err
	}
	c.name, err = unescapedOne(values["NAME"])
	return err
}

func (c *readCalendar) event(lines []contentLine) error {
	values, err := once(lines, []string{"UID", "DTSTAMP", "DTSTART;VALUE=DATE"}, []string{"DTEND;VALUE=DATE", "SUMMARY", "DESCRIPTION", "LOCATION", "CATEGORIES", "TRANSP"})
	if err != nil {
		return err
	}
	var e readEvent
	for name, to := range map[string]*string{"UID": &e.uid, "SUMMARY": &e.summary, "DESCRIPTION": &e.description, "LOCATION": &e.location} {
		if *to, err = unescapedOne(values[name]); err != nil {
			return err
		}
	}
	if e.categories, err = unescaped(values["CATEGORIES"]); err != nil {
		return err
	}
	if !stampForm.MatchString(values["DTSTAMP"]) || e.uid == "" {
		return fmt.Errorf("id %q, stamp %q", e.uid, values["DTSTAMP"])
	}
	c.stamps = append(c.stamps, values["DTSTAMP"])
	for name, to := range map[string]*time.Time{"DTSTART;VALUE=DATE": &e.start, "DTEND;VALUE=DATE": &e.end} {
		if *to, err = time.Parse("20060102", values[name]); err != nil || !dateOnly.MatchString(values[name]) {
			return fmt.Errorf("%s is %q", name, values[name])
		}
	}
	if !e.end.After(e.start) {
		return fmt.Errorf("%s ends on %s, and begins on %s", e.uid, e.end, e.start)
	}
	if slices.ContainsFunc(c.events, func(other readEvent) bool { return other.uid == e.uid }) {
		return fmt.Errorf("the id %s stands twice", e.uid)
	}
	c.events = append(c.events, e)
	return nil
}

// once reads properties by name and parameters: the ones that must be there,
// those that may, none of them twice.
func once(lines []contentLine, must, may []string) (map[string]string, error) {
	values := make(map[string]string)
	for _, l := range lines {
		key := l.name + l.params
		if _, twice := values[key]; twice || !slices.Contains(must, key) && !slices.Contains(may, key) {
			return nil, fmt.Errorf("%s does not belong here, or stands twice", key)
		}
		values[key] = l.value
	}
	for _, name := range must {
		if _, found := values[name]; !found {
			return nil, fmt.Errorf("%s is missing", name)
		}
	}
	return values, nil
}
