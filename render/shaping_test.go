package render

import (
	"bytes"
	"sync"
	"testing"
)

// Sheets with shaped names may be written by many goroutines; the race detector
// looks on in CI.
func TestShapedAtOnce(t *testing.T) {
	_, sheet := drafted(t, terrace(), MapOptions{})
	want := written(t, SVG, sheet)
	shaper.Lock()
	clear(shaper.lines) // so that they are laid out anew
	shaper.Unlock()
	var group sync.WaitGroup
	for range 4 {
		group.Go(func() {
			if got, err := SVG(sheet); err != nil || !bytes.Equal(got, want) {
				t.Errorf("the drawing differs, or %v", err)
			}
			if _, err := PDF(sheet); err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
}
