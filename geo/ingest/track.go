package ingest

import (
	"time"

	"github.com/paulmach/orb"
)

// A Fix is one position of a receiver.
type Fix struct {
	At         orb.Point // longitude, latitude in degrees on WGS 84
	Time       time.Time // UTC; zero if the file gives none
	HDOP       float64   // 0 = not given
	Sigma      float64   // 1-sigma horizontal error on one axis in metres as the receiver states it; 0 = not given
	Satellites int       // 0 = not given
	Quality    int       // as NMEA 0183 GGA: 0 invalid, 1 autonomous, 2 differential, 4 RTK fixed, 5 RTK float; -1 = not given
}

// A Track is one walk: fixes in the order recorded, in segments between which
// the receiver was off.
type Track struct {
	Name     string
	Segments [][]Fix
	Place    Place
	Closed   bool // drawn as a ring (a KML Polygon): not a walk
}

// Tracks is what one file of fixes holds.
type Tracks struct {
	Source   string
	Format   string // such as GPX or NMEA 0183
	Tracks   []Track
	Problems []Problem
	Digest   [32]byte // SHA-256 of the file
}
