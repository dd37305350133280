package soil

import (
	"io"
	"strconv"
	"time"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
)

func quoted(s string) string { return strconv.Quote(s) }

// Options say how to read a log.
type Options struct {
	Columns   Columns
	Longitude float64 // degrees east; places days of moments in UTC, by the sun
}

// ReadLog reads a log of readings. The Log is nil if a problem is a Refusal.
func ReadLog(r io.Reader, source string, o Options) (*Log, []ingest.Problem) { return nil, nil }

// ParseColumns reads "time=...,temp=...,unit=c,depth=5cm,missing=-9999".
func ParseColumns(text string) (Columns, error) { return Columns{}, nil }

// Soil gives the days of the sensor nearest to a depth.
func (s *Station) Soil(depth geo.Length, stat Statistic) (Series, error) { return Series{}, nil }

// Air gives the days of air temperature.
func (s *Station) Air(stat Statistic) (Series, error) { return Series{}, nil }

// Window looks from a day, up to and with another.
func (r Rule) Window(s Series, from, upTo time.Time) Window { return Window{} }

// SumDegrees adds up the heat of days from one on, up to and with another.
func SumDegrees(highest, lowest Series, base material.Temperature, from, upTo time.Time) DegreeDays {
	return DegreeDays{}
}
