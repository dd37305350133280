package ingest

import "testing"

func inTCX(activity string) string {
	return `<TrainingCenterDatabase xmlns="http://example.org/v2"><Activities><Activity Sport="Other"><Id>2024-05-01</Id>` + "\n" +
		activity + "</Activity></Activities></TrainingCenterDatabase>"
}

// trackpoint is a point of a TCX track.
func trackpoint(lat, lon string) string {
	return "<Trackpoint><Time>2024-05-01T12:00:00Z</Time><Position><LatitudeDegrees>" + lat + "</LatitudeDegrees><LongitudeDegrees>" +
		lon + "</LongitudeDegrees></Position><AltitudeMeters>3</AltitudeMeters></Trackpoint>\n"
}

const sec = "2024-05-01T12:00:00"

var tcxRules = []trackRule{
	{"laps go on, pauses within a lap do not",
		inTCX("<Lap><BeginPosition><LatitudeDegrees>9</LatitudeDegrees></BeginPosition><Track>" + trackpoint("1", "2") + "</Track></Lap><Lap><Track>" +
			trackpoint("3", "4") + "</Track><Track>" + trackpoint("5", "6") + "</Track></Lap>"),
		[]string{`"2024-05-01" [2 1 ` + sec + `] [4 3 ` + sec + `] / [6 5 ` + sec + `]`}},
	{"a course", `<TrainingCenterDatabase><Courses><Course><Name>loop</Name><Lap/><Track>` + trackpoint("1", "2") + `</Track><CoursePoint><Position><LatitudeDegrees>7</LatitudeDegrees><LongitudeDegrees>7</LongitudeDegrees></Position></CoursePoint></Course></Courses></TrainingCenterDatabase>`,
		[]string{`"loop" [2 1 ` + sec + `]`}},
	{"activities", inTCX("<Lap><Track>" + trackpoint("1", "2") + "</Track></Lap></Activity><Activity><Id>b</Id><Lap><Track>" + trackpoint("3", "4") + "</Track></Lap>"),
		[]string{`"2024-05-01" [2 1 ` + sec + `]`, `"b" [4 3 ` + sec + `]`}},
	{"no position", inTCX("<Lap><Track>\n<Trackpoint><Time>x</Time></Trackpoint><Trackpoint/>" + trackpoint("1", "2") + "</Track></Lap>"),
		[]string{`"2024-05-01" [2 1 ` + sec + `]`,
			`warning time_text: x: line 3: time "x" cannot be read, did without`,
			"note fix_none: x: line 3: receiver had no position, passed over (2 times)"}},
	{"half a position", inTCX("<Lap><Track><Trackpoint><Position><LatitudeDegrees>1</LatitudeDegrees></Position></Trackpoint>" + trackpoint("1", "2") + "</Track></Lap>"),
		[]string{`"2024-05-01" [2 1 ` + sec + `]`, "warning position_missing: x: line 2: fix has no longitude, left out"}},
	{"no number", inTCX("<Lap><Track>" + trackpoint("north", "2") + trackpoint("1", "2") + "</Track></Lap>"),
		[]string{`"2024-05-01" [2 1 ` + sec + `]`, `warning position_text: x: line 2: latitude "north" is not a number, left out`}},
	{"no track", inTCX("<Lap/>"), []string{"error track_empty: x: holds no fix that can be used"}},
}

func TestTCX(t *testing.T) { checkTrackRules(t, "x", "TCX", tcxRules) }
