// Package calendar writes days of work as a calendar file of RFC 5545, for any
// calendar that reads it.
//
// An [Event] lasts whole days, both its first and its last included; a
// [Calendar] writes events in their order. Nothing is taken from a clock: the
// same events give the same bytes.
package calendar
