package ingest

import "testing"

func TestParseMoment(t *testing.T) {
	const noon = "2024-05-01T12:00:00"
	for _, tt := range []struct {
		text, want string // empty if it cannot be read
		zoned      bool
	}{
		{"2024-05-01T12:00:00Z", noon, true},
		{"2024-05-01T12:00:00.25Z", noon + ".25", true},
		{"2024-05-01T12:00:00,250Z", noon + ".25", true},
		{"2024-05-01T14:00:00+02:00", noon, true},
		{"2024-05-01T14:00:00+0200", noon, true},
		{"2024-05-01T07:00:00-05", noon, true},
		{"2024-05-01 14:00:00 +02:00", noon, true},
		{" 2024-05-01t12:00:00 ", noon, false},
		{"2024-05-01T12:00Z", noon, true},
		{"2024-05-01 12:00", noon, false},
		{"2024/05/01 12:00:00.5", noon + ".5", false},
		{"2024-05-01 12:00:00 UTC", noon, true},
		{"2024-05-01", "", false},
		{"2024-13-01T12:00:00Z", "", false},
		{"2024-05-01T25:00:00Z", "", false},
		{"2024-05-01x12:00:00", "", false},
		{"01/05/2024 12:00:00", "", false},
		{"", "", false},
	} {
		got, zoned, ok := parseMoment(tt.text)
		if ok != (tt.want != "") || zoned != tt.zoned || ok && got.Format("2006-01-02T15:04:05.999") != tt.want {
			t.Errorf("%q: got %v, zoned %v, ok %v", tt.text, got, zoned, ok)
		}
	}
}
