package ingest

import (
	"bufio"
	"time"
)

// A nmeaReader reads sentences of NMEA 0183 (fields as the public descriptions
// of versions 2.3 to 4.1 have them): positions from GGA, or from RMC until
// there is a GGA; the date from RMC or ZDA; the error from GST. Sentences with
// the same time of day are one epoch. Other sentences are passed over.
type nmeaReader struct {
	log *trackLog

	epoch epoch
	gga   bool // there has been one

	day   int           // of the last epoch, from 1970; from its first epoch until there is a date
	clock time.Duration // of the last epoch
	timed bool          // there was a last epoch
	dated bool          // there was a date
}

// An epoch is what the sentences of one moment tell.
type epoch struct {
	begun    bool
	line     int           // of its first sentence
	clock    time.Duration // since midnight UTC; -1 = not given
	day      int           // from 1970; -1 = not given
	gga, rmc bool          // sentences it has
	fix      Fix
	placed   bool // the fix has a position
	void     bool // a sentence said that there is none
}

func readNMEA(r *bufio.Reader, log *trackLog, _ Limits) *fault {
	log.begin(0)
	n := &nmeaReader{log: log}
	lines := &textLines{r: r, log: log}
	for line, ok := lines.next(); ok; line, ok = lines.next() {
		n.line(line, lines.number)
	}
	n.flush()
	if n.timed && !n.dated {
		log.note(finding{
			severity: Note, code: "date_none",
			text: "gives times of day but no date, counted the days from 1970-01-01",
		}, 0)
	}
	return nil
}

// line takes the sentence of a line, if it is one of those wanted.
func (n *nmeaReader) line(line []byte, number int) {
	s, state := parseSentence(line)
	switch state {
	case sentenceNone:
		return
	case sentenceDamaged:
		n.log.note(finding{
			severity: Warning, code: "nmea_checksum", text: "sentence does not match its checksum, passed over", plural: "sentences",
		}, number)
		return
	case sentenceBare:
		n.log.note(finding{severity: Note, code: "nmea_bare", text: "sentence has no checksum, took it as it stands", plural: "sentences"}, number)
	}
	read, wanted := sentenceReaders[s.kind]
	if !wanted {
		return
	}
	clock, ok := s.clock(1)
	if ok {
		n.at(clock, s.kind, number)
		ok = read(n, s, number)
	}
	if !ok {
		n.log.note(finding{severity: Warning, code: "nmea_sentence", text: s.kind + " sentence cannot be read, passed over", plural: "sentences"}, number)
	}
}

// at goes over to the epoch of a sentence.
func (n *nmeaReader) at(clock time.Duration, kind string, number int) {
	again := kind == "GGA" && n.epoch.gga || kind == "RMC" && n.epoch.rmc && !n.epoch.gga
	if n.epoch.begun && n.epoch.clock == clock && !again {
		return
	}
	n.flush()
	n.epoch = epoch{begun: true, line: number, clock: clock, day: -1, fix: Fix{Quality: -1}}
}

// flush adds the fix of the epoch at hand.
func (n *nmeaReader) flush() {
	e := n.epoch
	n.epoch = epoch{}
	if !e.begun {
		return
	}
	e.fix.Time = n.moment(e)
	switch {
	case e.placed:
		n.log.add(e.fix, e.line)
	case e.void:
		n.log.nowhere(e.line)
	}
}

// moment is the time of an epoch: the clock runs over midnight where it goes
// back by more than half a day.
func (n *nmeaReader) moment(e epoch) time.Time {
	const day = 24 * time.Hour
	if e.clock < 0 {
		return time.Time{}
	}
	if n.timed && e.clock < n.clock-day/2 {
		n.day++
	}
	if e.day >= 0 {
		if !n.dated {
			n.log.fixes.shift(time.Duration(e.day-n.day) * day)
		}
		n.day, n.dated = e.day, true
	}
	n.clock, n.timed = e.clock, true
	return time.Unix(int64(n.day)*86400, 0).UTC().Add(e.clock)
}
