package render

import (
	"fmt"
	"strings"
)

const mmPerInch = 25.4

// Paper is a size of sheet in millimetres, upright unless turned.
type Paper struct {
	Name          string
	Width, Height float64
}

// Papers a crew's printer takes: ISO 216:2007 (A series) and ASME Y14.1
// (letter is ANSI A, tabloid is ANSI B); sizes from memory.
var (
	Letter  = Paper{"letter", 8.5 * mmPerInch, 11 * mmPerInch}
	Tabloid = Paper{"tabloid", 11 * mmPerInch, 17 * mmPerInch}
	A4      = Paper{"a4", 210, 297}
	A3      = Paper{"a3", 297, 420}
)

// PaperNamed returns the paper of a name, in either case of letters.
func PaperNamed(name string) (Paper, error) {
	for _, p := range []Paper{Letter, Tabloid, A4, A3} {
		if strings.EqualFold(p.Name, name) {
			return p, nil
		}
	}
	return Paper{}, fmt.Errorf("paper %q is not known: use letter, tabloid, a4 or a3", name)
}

// upright returns the paper with its long side up.
func (p Paper) upright() Paper {
	return Paper{p.Name, min(p.Width, p.Height), max(p.Width, p.Height)}
}

// landscape returns the paper with its long side across.
func (p Paper) landscape() Paper {
	return Paper{p.Name, max(p.Width, p.Height), min(p.Width, p.Height)}
}
