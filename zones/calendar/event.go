package calendar

import "time"

// An Event is something that lasts one or more whole days.
type Event struct {
	UID         string    // the same in every version of the event, and no other's (RFC 5545 3.8.4.7)
	First, Last time.Time // days, both included; of a time only its date counts
	Summary     string
	Description string // may have several lines
	Location    string
	Categories  []string
}

// A Calendar is a file of events.
type Calendar struct {
	Product string    // what made it, for PRODID
	Name    string    // a title for people; may be empty
	Stamp   time.Time // when this state of things was made, for DTSTAMP
	Events  []Event
}
