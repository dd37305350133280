package ingest

import (
	"fmt"
	"slices"
)

// A trackFinding is a finding with the line where it occurs first.
type trackFinding struct {
	finding
	line int
}

// note adds a finding, or counts it.
func (l *trackLog) note(f finding, line int) {
	i := slices.IndexFunc(l.found, func(known trackFinding) bool { return known.code == f.code })
	if i >= 0 {
		l.found[i].count++
		return
	}
	f.count = 1
	l.found = append(l.found, trackFinding{f, line})
}

// leaveOut notes a fix that cannot be used, and why.
func (l *trackLog) leaveOut(why finding, line int) {
	why.severity, why.plural = Warning, "fixes"
	why.text += ", left out"
	l.note(why, line)
	l.dropped++
}

// unread notes a value that cannot be read; the fix stays.
func (l *trackLog) unread(what, text string, line int) {
	l.note(finding{
		severity: Warning, code: what + "_text", plural: "fixes",
		text: fmt.Sprintf("%s %s cannot be read, did without", what, Quoted(text)),
	}, line)
}

// nowhere notes a time at which the receiver had no position.
func (l *trackLog) nowhere(line int) {
	l.note(finding{
		severity: Note, code: "fix_none", plural: "times",
		text: "receiver had no position, passed over",
	}, line)
}

// waypoint notes a point that was set by hand.
func (l *trackLog) waypoint(line int) {
	l.note(finding{
		severity: Note, code: "waypoints", plural: "waypoints",
		text: "waypoint belongs to no track, passed over",
	}, line)
}

// endsEarly notes that the file is cut off.
func (l *trackLog) endsEarly(line int) {
	l.note(finding{
		severity: Warning, code: "input_short", text: "ends early, kept what stands before",
		hint: "copy or export it again",
	}, line)
}

// place is that of a line, or of the file if line is 0.
func (l *trackLog) place(line int) Place { return Place{Source: l.source, Line: line, Feature: -1} }

// problems are the findings at their places.
func (l *trackLog) problems() []Problem {
	var all []Problem
	for _, f := range l.found {
		all = append(all, f.problem(l.place(f.line)))
	}
	return all
}
