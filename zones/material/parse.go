package material

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/turfplat/geo/ingest"
)

// longest is how many characters a quantity may have.
const longest = 100

// Parse reads a quantity: a number, a unit and, if need be, what it is a
// quantity of, such as
//
//	50 lb    1,200 lb / yd3    1 1/2 in    55 F    65 %    14 weeks
//	0.75 lb N / 1000 ft2    3 fl oz/M    0.5 lb ai per acre    2 lb PLS / 1000 ft2
//
// Commas part thousands and a point the decimals. M is 1,000 ft2, m a metre;
// other capitals do not matter. A number without a unit is refused, and so is
// one below nothing unless it is a temperature. Errors are [InputError].
func Parse(text string) (Quantity, error) {
	if utf8.RuneCountInString(text) > longest {
		return Quantity{}, inputErrorf("write a number and its unit", "%s is too long for a quantity", ingest.Quoted(text))
	}
	p := phrase{written: text, rest: plain(text)}
	q, err := p.quantity()
	if err != nil {
		return Quantity{}, err
	}
	return q, q.check(text)
}

// ParseUnit reads a unit such as "lb" or "fl oz / 1000 ft2".
func ParseUnit(text string) (Unit, error) {
	q, err := Parse("1 " + text)
	if err == nil && (q.Of != Itself || q.Number != 1) {
		err = inputErrorf("write it as in lb or fl oz / 1000 ft2", "%s is more than a unit", ingest.Quoted(text))
	}
	return q.Unit, err
}

// plainSigns writes what typesetters and keyboards vary in one way.
var plainSigns = strings.NewReplacer(
	"\t", " ", "\u00a0", " ", "\u2007", " ", "\u2009", " ", "\u202f", " ",
	"²", "2", "³", "3", "₂", "2", "₅", "5", "⁄", "/", "∕", "/", "−", "-",
	"″", `"`, "”", `"`, "′", "'", "’", "'", "°", " ", "º", " ", "℃", " C", "℉", " F",
	"¼", " 1/4", "½", " 1/2", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// byVolumeOrWeight follows a share without changing it.
var byVolumeOrWeight = regexp.MustCompile(`(?i)% ?(v/v|w/w)`)

func plain(text string) string {
	return strings.TrimSpace(byVolumeOrWeight.ReplaceAllString(plainSigns.Replace(text), "%"))
}

// A phrase is a quantity being read.
type phrase struct {
	written string
	rest    string
}

func (p *phrase) quantity() (Quantity, error) {
	negative := p.take("-")
	value, err := p.number()
	if err != nil {
		return Quantity{}, err
	}
	if negative {
		value = -value
	}
	q := Quantity{Number: value}
	if q.Unit.over, err = p.unit(); err != nil {
		return q, err
	}
	q.Of = p.substance()
	if p.take("/") || p.takeWord("per") {
		if err := p.under(&q.Unit); err != nil {
			return q, err
		}
	}
	if q.Of == Itself {
		q.Of = p.substance()
	}
	if p.rest != "" {
		return q, inputErrorf("write a number, a unit and at most one / or per", "%s: %s is not understood", ingest.Quoted(p.written), ingest.Quoted(p.rest))
	}
	return q, nil
}

// under reads what comes after the stroke.
func (p *phrase) under(u *Unit) error {
	u.count = 1
	if beginsNumber(p.rest) {
		var err error
		if u.count, err = p.number(); err != nil {
			return err
		}
		if u.count == 0 {
			return inputErrorf("", "%s is divided by nothing", ingest.Quoted(p.written))
		}
	}
	var err error
	u.under, err = p.unit()
	return err
}

func (p *phrase) number() (float64, error) {
	value, rest, whole := takeNumber(p.rest)
	if whole {
		p.rest = strings.TrimLeft(rest, " ")
		return value, nil
	}
	if !beginsNumber(p.rest) {
		return 0, inputErrorf("write a number and its unit, such as 3 lb / 1000 ft2", "%s begins with no number", ingest.Quoted(p.written))
	}
	if fractionForm.MatchString(p.rest) {
		return 0, inputErrorf("write 1/4 or 1 1/2, and a unit before a / that means per", "%s: the fraction is not understood", ingest.Quoted(p.written))
	}
	return 0, inputErrorf("write 1200, 1,200 or 0.75, of at most 15 digits", "%s: the number is not understood", ingest.Quoted(p.written))
}

// wordForm is a word that may be part of a unit: letters and digits, or a sign.
var wordForm = regexp.MustCompile(`^(?:\pL[\pL\d.]*|%|"|')`)

const mostWords = 3 // in the name of a unit, as in imperial fluid ounce

// unit reads the longest name of a unit that the rest begins with.
func (p *phrase) unit() (*simpleUnit, error) {
	var found *simpleUnit
	name, rest, after := "", p.rest, ""
	for range mostWords {
		word := wordForm.FindString(rest)
		if word == "" {
			break
		}
		rest = strings.TrimLeft(rest[len(word):], " ")
		name = strings.TrimLeft(name+" "+strings.ReplaceAll(word, ".", ""), " ")
		if u, known := findUnit(name); known {
			found, after = u, rest
		}
	}
	if found == nil {
		return nil, p.noUnit()
	}
	p.rest = after
	return found, nil
}

func (p *phrase) noUnit() error {
	word := wordForm.FindString(p.rest)
	switch one := strings.TrimRight(strings.ToLower(word), "s."); one {
	case "":
		return inputErrorf("write it with its unit, such as lb, fl oz, ft2, lb / 1000 ft2, in, h or %", "%s has a number without a unit", ingest.Quoted(p.written))
	case "month", "year":
		return inputErrorf("write days or weeks, which are always as long", "%s: %s differ in length", ingest.Quoted(p.written), one+"s")
	case "bag", "pack", "sack", "jug", "bottle":
		return inputErrorf("write what it holds, such as 50 lb", "%s: a %s is no measure", ingest.Quoted(p.written), one)
	}
	return inputErrorf("weights are lb, oz, kg, g; liquids fl oz, gal, L, mL; bulk yd3, ft3, m3; lengths in, ft, mm, m; areas ft2, M, acre, m2, ha; times min, h, d, weeks; temperatures F, C; shares %",
		"%s: unit %s is not known", ingest.Quoted(p.written), ingest.Quoted(word))
}

// substance reads what a quantity is of, if that is said.
func (p *phrase) substance() Substance {
	rest := p.rest
	p.takeWord("of")
	word := wordForm.FindString(p.rest)
	bare := strings.ReplaceAll(word, ".", "")
	for _, name := range []string{bare, strings.ToUpper(bare), strings.ToLower(bare)} {
		if isSubstance(name) {
			p.rest = strings.TrimLeft(p.rest[len(word):], " ")
			return Substance(name)
		}
	}
	p.rest = rest
	return Itself
}

func (p *phrase) take(sign string) bool {
	rest, there := strings.CutPrefix(p.rest, sign)
	if there {
		p.rest = strings.TrimLeft(rest, " ")
	}
	return there
}

func (p *phrase) takeWord(word string) bool {
	rest, there := strings.CutPrefix(p.rest, word)
	if !there || rest != "" && (unicode.IsLetter(rune(rest[0])) || unicode.IsDigit(rune(rest[0]))) {
		return false
	}
	p.rest = strings.TrimLeft(rest, " ")
	return true
}
