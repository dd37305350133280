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
// the receiver was off. No segment is empty.
type Track struct {
	Name     string
	Segments [][]Fix
	Place    Place
	Closed   bool // drawn as a polygon, not walked: the first segment is its edge, the others are holes
}

// Tracks is what one file of fixes holds; nothing if it is refused.
type Tracks struct {
	Source   string
	Format   string // GPX, NMEA 0183, KML, KMZ, FIT, TCX, CSV or RTKLIB; empty if it is none
	Tracks   []Track
	Problems []Problem
	Digest   [32]byte // SHA-256 of the bytes read
}

// Refused reports whether the file as a whole cannot be used.
func (t *Tracks) Refused() bool {
	for _, p := range t.Problems {
		if p.Severity == Refusal {
			return true
		}
	}
	return false
}

// Fixes counts the fixes of all tracks.
func (t *Tracks) Fixes() int {
	n := 0
	for _, track := range t.Tracks {
		for _, segment := range track.Segments {
			n += len(segment)
		}
	}
	return n
}
