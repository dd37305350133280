package material

import (
	"fmt"
)

// An InputError says what is wrong with what was written, and what to write
// instead.
type InputError struct {
	Text string // what is wrong, with what was written in quotes
	Hint string // something to do; may be empty
}

func (e *InputError) Error() string {
	if e.Hint == "" {
		return e.Text
	}
	return e.Text + " (" + e.Hint + ")"
}

func inputErrorf(hint, format string, v ...any) error {
	return &InputError{fmt.Sprintf(format, v...), hint}
}
