package ingest

import (
	"bufio"
	"encoding/xml"
)

// A gpxReader reads the tracks of GPX 1.0 and 1.1 (GPX 1.1 schema
// documentation), or its routes where there are no tracks. Waypoints and
// extensions are passed over.
type gpxReader struct {
	log *trackLog

	fix  Fix
	line int // of the fix
	bad  bool
}

func readGPX(r *bufio.Reader, log *trackLog, limits Limits) *fault {
	f := walkXML(r, log, &gpxReader{log: log}, limits.Depth)
	log.settleRoutes()
	return f
}

func (g *gpxReader) open(path []string, attrs []xml.Attr, line int) {
	switch {
	case within(path, "gpx", "trk"):
		g.log.begin(line)
	case within(path, "gpx", "rte"):
		g.log.begin(line)
		g.log.track().route = true
	case within(path, "gpx", "trk", "trkseg"):
		g.log.pause()
	case within(path, "gpx", "trk", "trkseg", "trkpt"), within(path, "gpx", "rte", "rtept"):
		g.point(attrs, line)
	case within(path, "gpx", "wpt"):
		g.log.waypoint(line)
	}
}

// point opens a point.
func (g *gpxReader) point(attrs []xml.Attr, line int) {
	at, ok := g.log.position(attribute(attrs, "lon"), attribute(attrs, "lat"), line)
	g.fix, g.line, g.bad = Fix{At: at, Quality: -1}, line, !ok
}

func (g *gpxReader) close(path []string, text []byte, line int) {
	switch {
	case within(path, "gpx", "trk", "trkseg", "trkpt"), within(path, "gpx", "rte", "rtept"):
		if !g.bad {
			g.log.add(g.fix, g.line)
		}
	case within(path, "gpx", "trk", "name"), within(path, "gpx", "rte", "name"):
		g.log.track().name = string(text)
	default:
		last := len(path) - 1
		if point := path[:last]; within(point, "trkseg", "trkpt") || within(point, "rte", "rtept") {
			g.detail(path[last], text, line)
		}
	}
}

// detail reads what a point says beside its position.
func (g *gpxReader) detail(name string, text []byte, line int) {
	if len(text) == 0 {
		return
	}
	switch name {
	case "time":
		g.fix.Time = g.log.moment(string(text), line)
	case "hdop":
		g.fix.HDOP = g.log.positive("hdop", text, line)
	case "sat":
		g.fix.Satellites = g.log.satellites(text, line)
	case "fix":
		g.fix.Quality = g.log.quality(text, line)
	}
}
