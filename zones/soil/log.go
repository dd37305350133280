package soil

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
)

// A Log holds readings of soil and air, by station and sensor.
type Log struct {
	Source   string
	stations []*Station // by name
}

// A Station is a place where sensors stand.
type Station struct {
	Name    string // "" if the log does not tell stations apart
	sensors []*sensor
	last    int64 // the moment of the last reading
}

// A sensor is a column of the log at a station.
type sensor struct {
	column   *sensorColumn
	readings []reading // in order of time, one a moment
	step     int64     // the usual time from one to the next, in seconds
}

// A reading is a temperature at a moment of local time.
type reading struct {
	at    int64 // seconds from the beginning of 1970, as the local clock shows them
	value material.Temperature
	line  int
}

func (r reading) day() time.Time { return midnight(r.at) }

const daySeconds = 24 * 60 * 60

// midnight is the day of a moment.
func midnight(at int64) time.Time {
	day := at / daySeconds
	if at%daySeconds < 0 {
		day--
	}
	return time.Unix(day*daySeconds, 0).UTC()
}

// Stations are the names of the stations, in order.
func (l *Log) Stations() []string {
	names := make([]string, len(l.stations))
	for i, s := range l.stations {
		names[i] = s.Name
	}
	return names
}

// Station finds a station by name; "" is the only one. The error says which
// there are.
func (l *Log) Station(name string) (*Station, error) {
	if name == "" && len(l.stations) == 1 {
		return l.stations[0], nil
	}
	for _, s := range l.stations {
		if s.Name == name && name != "" {
			return s, nil
		}
	}
	names := strings.Join(l.firstNames(), ", ")
	switch {
	case len(l.stations) == 0:
		return nil, fmt.Errorf("the log has no readings")
	case len(l.stations) == 1 && l.stations[0].Name == "":
		return nil, fmt.Errorf("the log names no stations, so there is no %s: leave the station out", ingest.Quoted(name))
	case name == "":
		return nil, fmt.Errorf("the log has %d stations: choose one of %s", len(l.stations), names)
	}
	return nil, fmt.Errorf("the log has no station %s: choose one of %s", ingest.Quoted(name), names)
}

// firstNames are those of the first stations, for a message.
func (l *Log) firstNames() []string {
	const most = 10
	var names []string
	for _, s := range l.stations[:min(most, len(l.stations))] {
		names = append(names, ingest.Quoted(s.Name))
	}
	if more := len(l.stations) - most; more > 0 {
		names = append(names, fmt.Sprintf("%d more", more))
	}
	return names
}

// Last is the day of the station's last reading.
func (s *Station) Last() time.Time { return midnight(s.last) }

// Depths are those at which the station has sensors, shallowest first.
func (s *Station) Depths() []geo.Length {
	var depths []geo.Length
	for _, sensor := range s.sensors {
		if sensor.column.medium == ground {
			depths = append(depths, sensor.column.depth)
		}
	}
	slices.Sort(depths)
	return slices.Compact(depths)
}
