package main

import (
	"bufio"
	"io"
	"sync"
	"time"
)

// linger is how long what is written may be held back: long enough that lines
// of a file go out many at a time, too short for whoever waits for one.
const linger = 20 * time.Millisecond

// A lingering writer holds back what is written until that is much, or has
// waited for a moment.
type lingering struct {
	mu    sync.Mutex
	held  *bufio.Writer
	alarm *time.Timer
	armed bool
}

func newLingering(to io.Writer) *lingering {
	l := &lingering{held: bufio.NewWriterSize(to, 1<<16), armed: true}
	l.alarm = time.AfterFunc(linger, l.letGo)
	return l
}

// letGo writes what was held back; an error comes back on the next write.
func (l *lingering) letGo() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.armed = false
	l.held.Flush()
}

func (l *lingering) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	n, err := l.held.Write(p)
	if !l.armed && l.held.Buffered() > 0 {
		l.armed = true
		l.alarm.Reset(linger)
	}
	return n, err
}

// close writes what is left; nothing may be written after it.
func (l *lingering) close() error {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.alarm.Stop()
	return l.held.Flush()
}
