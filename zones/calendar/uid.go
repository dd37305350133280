package calendar

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
)

// UID makes the id of an event from what tells it apart, such as the property,
// the program and the step: the same each time, and another one for other
// parts. Nobody can read the parts back from it.
func UID(parts ...string) string {
	var whole strings.Builder
	for _, part := range parts {
		whole.WriteString(strings.ReplaceAll(part, "\x00", "\x00\x01"))
		whole.WriteString("\x00\x00")
	}
	sum := sha256.Sum256([]byte(whole.String()))
	return hex.EncodeToString(sum[:16]) + "@turfplat"
}
