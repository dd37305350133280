package ingest

import (
	"math"
	"time"

	"github.com/paulmach/orb"
)

// A fixStore keeps the fixes of a file, in blocks and packed: a slice of fixes
// that grew to millions would take twice the memory.
type fixStore struct {
	blocks [][]packedFix
	n      int
}

// A packedFix is a fix in two thirds of the bytes. Times are kept to the
// microsecond.
type packedFix struct {
	at          orb.Point
	hdop, sigma float64
	micro       int64 // from the beginning of 1970, or noTime
	satellites  int16
	quality     int8
}

const noTime = math.MinInt64

// packTime gives the microseconds of a time.
func packTime(t time.Time) int64 {
	if t.IsZero() {
		return noTime
	}
	return t.UnixMicro()
}

func unpackTime(micro int64) time.Time {
	if micro == noTime {
		return time.Time{}
	}
	return time.UnixMicro(micro).UTC()
}

func (p *packedFix) unpack() Fix {
	return Fix{
		At: p.at, Time: unpackTime(p.micro), HDOP: p.hdop, Sigma: p.sigma,
		Satellites: int(p.satellites), Quality: int(p.quality),
	}
}

const (
	firstBlock = 1 << 8  // fixes
	mostBlock  = 1 << 16 // fixes
)

func (s *fixStore) add(f Fix) {
	last := len(s.blocks) - 1
	if last < 0 || len(s.blocks[last]) == cap(s.blocks[last]) {
		s.blocks = append(s.blocks, make([]packedFix, 0, min(max(s.n, firstBlock), mostBlock)))
		last++
	}
	s.blocks[last] = append(s.blocks[last], packedFix{
		at: f.At, micro: packTime(f.Time), hdop: f.HDOP, sigma: f.Sigma,
		satellites: int16(f.Satellites), quality: int8(f.Quality),
	})
	s.n++
}

// shift moves the times of all fixes.
func (s *fixStore) shift(by time.Duration) {
	for _, block := range s.blocks {
		for i := range block {
			if block[i].micro != noTime {
				block[i].micro += by.Microseconds()
			}
		}
	}
}

// take removes the first n fixes and returns them. Blocks are let go as they
// run out.
func (s *fixStore) take(n int) []Fix {
	fixes := make([]Fix, 0, n)
	s.n -= n
	for len(fixes) < n {
		block := s.blocks[0]
		part := min(n-len(fixes), len(block))
		for i := range block[:part] {
			fixes = append(fixes, block[i].unpack())
		}
		s.blocks[0] = block[part:]
		if part == len(block) {
			s.blocks[0] = nil
			s.blocks = s.blocks[1:]
		}
	}
	return fixes
}
