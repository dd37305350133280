package ingest

import (
	"bufio"
	"bytes"
	"cmp"
	"io"
)

// ReadTracks reads the walked tracks of a file: GPX, NMEA 0183, KML, KMZ, FIT,
// TCX, a CSV table of fixes or an RTKLIB position log, told by its content;
// the ending of source, the name of the input, only decides where the content
// leaves it open. The file is refused if it is none of them or holds no fix.
//
// Positions are taken as they stand, as WGS 84. Fixes that cannot be right are
// left out and counted, the others stay in the order recorded: nothing is
// sorted, thinned or smoothed. Times without a zone are taken as UTC.
//
// Beside the problems an input can have, there are, by [Problem.Code]:
//
//   - refusals: format_unknown, format_foreign, xml_syntax, xml_encoding,
//     zip_damaged, kmz_empty, fit_damaged, csv_header, pos_columns, track_empty
//   - fixes left out, a warning: position_missing, position_text, fix_zero,
//     latitude_range, longitude_range, axes_swapped, degrees_projected,
//     polygon_rings
//   - other warnings: input_short, line_long, nmea_checksum, nmea_sentence,
//     fit_checksum, fit_trailing, times_count, longitude_wrapped, and for
//     what cannot be read: time_text, hdop_text, accuracy_text, sigma_text,
//     satellites_text, fix_text
//   - notes: fix_none, time_zone, time_scale, date_none, nmea_bare, routes,
//     waypoints
//
// Each code occurs once for a file, at the first place, with a count. Beside
// [Limits], a file may have 100,000 tracks and segments, a tag or text in XML
// 32 MiB, and a KMZ archive 64 MiB.
func ReadTracks(r io.Reader, source string, limits Limits) *Tracks {
	limits = limits.filled()
	t := newTape(r, limits.Bytes)
	b := bufio.NewReaderSize(t, 1<<16)
	head := Beginning(b)
	if bytes.HasPrefix(head, byteOrderMark) {
		b.Discard(len(byteOrderMark))
	}
	log := &trackLog{source: source, limit: limits.Positions}
	form, f := trackFormOf(head, source)
	if f == nil {
		f = form.read(b, log, limits)
	}
	return log.done(form, t, f)
}

// IsTrack reports whether an input is a file of tracks, by its first bytes (a
// few thousand are enough) and, where they leave it open, by its name.
func IsTrack(head []byte, source string) bool {
	_, f := trackFormOf(head, source)
	return f == nil
}

// done returns what was read from a tape, and the fault that stopped it.
func (l *trackLog) done(form trackForm, t *tape, f *fault) *Tracks {
	tracks := &Tracks{Source: l.source, Format: form.name, Problems: l.problems(), Digest: t.digest()}
	if f = cmp.Or(t.fault(), f, l.fault()); f == nil {
		tracks.Tracks = l.cut()
		f = tracks.fault(l.dropped)
	}
	if f != nil {
		tracks.Tracks = nil
		refusal := Problem{Severity: Refusal, Code: f.code, Place: l.place(l.stopped), Text: f.text, Hint: f.hint}
		tracks.Problems = append(tracks.Problems, refusal)
	}
	return tracks
}

// fault is that of a log with too many fixes.
func (l *trackLog) fault() *fault { return l.over }

// fault is that of tracks without a fix, where some were left out.
func (t *Tracks) fault(dropped int) *fault {
	empty := &fault{code: "track_empty", text: "holds no fix that can be used"}
	switch {
	case t.Fixes() > 0:
		return nil
	case dropped == 0: // else the reasons are told
		empty.hint = "export the track itself, not its waypoints or its summary"
	}
	return empty
}
