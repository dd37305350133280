package ingest

import "testing"

// inKML puts placemarks into a document of which they begin line 2.
func inKML(placemarks string) string {
	return `<kml xmlns="http://www.opengis.net/kml/2.2" xmlns:gx="http://example.org/gx"><Document><name>all</name>` + "\n" + placemarks + "</Document></kml>"
}

func placemark(geometry string) string {
	return "<Placemark><name>back lawn</name>" + geometry + "</Placemark>"
}

func ring(coordinates string) string {
	return "<LinearRing><coordinates>" + coordinates + "</coordinates></LinearRing>"
}

var kmlRules = []trackRule{
	{"a line", inKML(placemark("<LineString><tessellate>1</tessellate><coordinates>\n\t-93.1,44.9,250\n\t-93.2,44.9\r\n</coordinates></LineString>")),
		[]string{`"back lawn" [-93.1 44.9] [-93.2 44.9]`}},
	{"lines of one placemark", inKML(placemark("<MultiGeometry><LineString><coordinates>1,1 2,2</coordinates></LineString><LineString><coordinates>3,3</coordinates></LineString></MultiGeometry>")),
		[]string{`"back lawn" [1 1] [2 2] / [3 3]`}},
	{"placemarks", inKML(placemark("<LineString><coordinates>1,1</coordinates></LineString>") + "<Folder><Placemark><LineString><coordinates>2,2</coordinates></LineString><name>late</name></Placemark></Folder>"),
		[]string{`"back lawn" [1 1]`, `"late" [2 2]`}},
	{"a polygon with a hole", inKML(placemark("<Polygon><outerBoundaryIs>" + ring("1,1 4,1 4,4 1,1") + "</outerBoundaryIs><innerBoundaryIs>" + ring("2,2 2,3 3,3 2,2") + "</innerBoundaryIs></Polygon>")),
		[]string{`"back lawn" closed [1 1] [4 1] [4 4] [1 1] / [2 2] [2 3] [3 3] [2 2]`}},
	{"polygons and a line", inKML(placemark("<MultiGeometry>" + ring("1,1 2,2") + "<Polygon><outerBoundaryIs>" + ring("3,3") + "</outerBoundaryIs></Polygon><LineString><coordinates>4,4</coordinates></LineString></MultiGeometry>")),
		[]string{`"back lawn" closed [1 1] [2 2]`, `"back lawn" closed [3 3]`, `"back lawn" [4 4]`}},
	{"a hole before the edge", inKML(placemark("<Polygon>\n<innerBoundaryIs>" + ring("2,2") + "</innerBoundaryIs><outerBoundaryIs>" + ring("3,3") + "</outerBoundaryIs></Polygon>")),
		[]string{`"back lawn" closed [3 3]`, "warning polygon_rings: x: line 3: hole stands before the edge of its polygon, left it out"}},
	{"two edges", inKML(placemark("<Polygon><outerBoundaryIs>" + ring("2,2") + ring("3,3") + "</outerBoundaryIs></Polygon>")),
		[]string{`"back lawn" closed [2 2]`, "warning polygon_rings: x: line 2: polygon has two edges, left it out"}},

	{"a track", inKML(placemark("<gx:Track><altitudeMode>absolute</altitudeMode><when>2024-05-01T12:00:00Z</when><when>2024-05-01T12:00:01Z</when><gx:coord>-93.1 44.9 250</gx:coord>\n<gx:coord>-93.2  44.9</gx:coord></gx:Track>")),
		[]string{`"back lawn" [-93.1 44.9 2024-05-01T12:00:00] [-93.2 44.9 2024-05-01T12:00:01]`}},
	{"tracks of one placemark", inKML(placemark("<gx:MultiTrack><gx:Track><gx:coord>1 1</gx:coord></gx:Track><gx:Track><when/><gx:coord>2 2</gx:coord></gx:Track></gx:MultiTrack>")),
		[]string{`"back lawn" [1 1] / [2 2]`}},
	{"a position the receiver did not have", inKML(placemark("<Track><when>2024-05-01T12:00:00Z</when><when>2024-05-01T12:00:01Z</when><coord/><coord>1 1</coord></Track>")),
		[]string{`"back lawn" [1 1 2024-05-01T12:00:01]`, "note fix_none: x: line 2: receiver had no position, passed over"}},
	{"fewer times than positions", inKML(placemark("\n<Track><when>2024-05-01T12:00:00Z</when><coord>1 1</coord><coord>2 2</coord>\n</Track>")),
		[]string{`"back lawn" [1 1 2024-05-01T12:00:00] [2 2]`, "warning times_count: x: line 3: track has 1 times for 2 positions, paired them in order"}},

	{"bad tuples", inKML(placemark("<LineString><coordinates>1,1\n2 3,x\n, 4,4</coordinates></LineString>")),
		[]string{`"back lawn" [1 1] [4 4]`,
			"warning position_missing: x: line 3: fix has no latitude, left out (2 fixes)",
			`warning position_text: x: line 3: latitude "x" is not a number, left out`}},
	{"points beside a line", inKML(placemark("<Point><coordinates>1,1</coordinates></Point>") + placemark("<LineString><coordinates>2,2</coordinates></LineString>")),
		[]string{`"back lawn" [2 2]`, "note waypoints: x: line 2: waypoint belongs to no track, passed over"}},
	{"points alone", inKML(placemark("<Point><coordinates>1,1</coordinates></Point>")),
		[]string{"note waypoints: x: line 2: waypoint belongs to no track, passed over", "error track_empty: x: holds no fix that can be used"}},
	{"a comment within", inKML(placemark("<LineString><coordinates>1,1 <!-- -->2,2<![CDATA[ 3,3]]></coordinates></LineString>")),
		[]string{`"back lawn" [1 1] [2 2] [3 3]`}},
}

func TestKML(t *testing.T) { checkTrackRules(t, "x", "KML", kmlRules) }
