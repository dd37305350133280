package ingest

import (
	"fmt"

	"github.com/paulmach/orb"
)

// A trackLog gathers the fixes of one file.
type trackLog struct {
	source  string
	limit   int      // of fixes
	fixes   fixStore // of all tracks, in order
	tracks  []loggedTrack
	starts  int // of segments, in all tracks
	found   []trackFinding
	dropped int    // fixes that cannot be used
	over    *fault // the limit that the file goes beyond, if it does
	stopped int    // line at which the file could not be read on, else 0
}

// A loggedTrack is a track whose fixes stand in the log.
type loggedTrack struct {
	name   string
	line   int
	closed bool
	route  bool  // set by hand: counts only where nothing was recorded
	aside  bool  // does not count
	starts []int // of its segments among the fixes
}

// begin opens a track, and its first segment. A track that has stayed without
// fixes gives way.
func (l *trackLog) begin(line int) {
	track := loggedTrack{line: line, starts: []int{l.fixes.n}}
	n := l.count()
	if n == len(l.tracks) {
		l.start()
	}
	l.tracks = append(l.tracks[:n], track)
}

// count is how many tracks have fixes.
func (l *trackLog) count() int {
	n := len(l.tracks)
	if n > 0 && l.tracks[n-1].starts[0] == l.fixes.n {
		n--
	}
	return n
}

// pause begins another segment of the open track.
func (l *trackLog) pause() {
	if t := l.track(); t.starts[len(t.starts)-1] < l.fixes.n {
		t.starts = append(t.starts, l.fixes.n)
		l.start()
	}
}

// mostSegments is how many segments the tracks of a file may have.
const mostSegments = 100_000

func (l *trackLog) start() {
	if l.starts++; l.starts > mostSegments {
		l.exceed("limit_features", mostSegments, "tracks and segments")
	}
}

// exceed stops a file that has too much of something.
func (l *trackLog) exceed(code string, limit int, of string) {
	l.over = &fault{
		code: code, limit: true,
		text: fmt.Sprintf("has more than %d %s, the limit for one file", limit, of),
		hint: "split it into smaller files",
	}
}

// full reports whether no more is wanted.
func (l *trackLog) full() bool { return l.over != nil }

// track is the open one.
func (l *trackLog) track() *loggedTrack { return &l.tracks[len(l.tracks)-1] }

// add takes a fix of the open track, unless it cannot be right.
func (l *trackLog) add(f Fix, line int) {
	if f.At == (orb.Point{}) {
		l.leaveOut(finding{code: "fix_zero", text: "position is 0, 0, as receivers write that have none"}, line)
		return
	}
	if rule := checkDegrees(f.At); rule == pastAntimeridian {
		l.note(rule.finding(f.At), line)
		f.At[0] = rounded(wrap(f.At[0]))
	} else if rule != nil {
		l.leaveOut(finding{code: rule.code, text: offGlobe(f.At, rule.axis), hint: rule.remedy(), near: &f.At}, line)
		return
	}
	if l.fixes.n == l.limit {
		l.exceed("limit_positions", l.limit, "fixes")
		return
	}
	l.fixes.add(f)
}

// settleRoutes puts the routes aside where there are tracks, and says so.
func (l *trackLog) settleRoutes() {
	recorded := false
	for i, t := range l.tracks {
		recorded = recorded || !t.route && t.starts[0] < l.end(i)
	}
	text := "route was set by hand and not walked, took it as there is no track"
	if recorded {
		text = "route was set by hand and not walked, passed over"
	}
	for i := range l.tracks {
		if t := &l.tracks[i]; t.route && t.starts[0] < l.end(i) {
			t.aside = recorded
			l.note(finding{severity: Note, code: "routes", text: text, plural: "routes"}, t.line)
		}
	}
}

// end is where the fixes of a track end.
func (l *trackLog) end(i int) int {
	if i+1 < len(l.tracks) {
		return l.tracks[i+1].starts[0]
	}
	return l.fixes.n
}

// cut takes the fixes out of the log and returns the tracks that have some.
func (l *trackLog) cut() []Track {
	ends := make([]int, len(l.tracks))
	for i := range l.tracks {
		ends[i] = l.end(i)
	}
	var all []Track
	for i, t := range l.tracks {
		segments := l.segments(t.starts, ends[i])
		if len(segments) > 0 && !t.aside {
			place := l.place(t.line)
			place.Label = t.name
			all = append(all, Track{Name: t.name, Segments: segments, Place: place, Closed: t.closed})
		}
	}
	return all
}

// segments takes the next fixes, up to end, cut where segments start.
func (l *trackLog) segments(starts []int, end int) [][]Fix {
	var all [][]Fix
	for i, from := range starts {
		to := end
		if i+1 < len(starts) {
			to = starts[i+1]
		}
		if from < to {
			all = append(all, l.fixes.take(to-from))
		}
	}
	return all
}
