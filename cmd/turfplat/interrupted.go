package main

import (
	"fmt"
	"os"
	"os/signal"
	"sync"
	"syscall"
	"time"
)

// An underway is the file that a command is writing, for when it is interrupted.
type underway struct {
	busy      sync.Mutex // while files are moved, and for good once interrupted
	part      string     // "" = none
	keepsPart bool       // a later run can go on with it
}

// begin says that a part file is being written.
func (u *underway) begin(part string, keeps bool) {
	u.busy.Lock()
	defer u.busy.Unlock()
	u.part, u.keepsPart = part, keeps
}

// settle lets the part file go to its place or away.
func (u *underway) settle(settled func()) {
	u.busy.Lock()
	defer u.busy.Unlock()
	settled()
	u.part = ""
}

// heed waits for signals that end the program, tells what it leaves, and lets
// it end by them. Signals that its parent has it ignore stay ignored.
func (d *desk) heed() {
	signals := make(chan os.Signal, 1)
	for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
		if !signal.Ignored(s) {
			signal.Notify(signals, s)
		}
	}
	go func() {
		s := <-signals
		d.interrupted()
		endBy(s)
	}()
}

// interrupted tells what is left of the work, and lets none go on: nothing is
// moved to its place from here on, and nothing told after it. A part that nobody
// can go on with is removed.
func (d *desk) interrupted() {
	d.underway.busy.Lock()
	d.talking.Lock()
	if isTerminal(d.messages) {
		fmt.Fprint(d.messages, "\r\x1b[K") // the line of progress
	}
	part := d.underway.part
	switch {
	case part == "":
		d.say("error", "interrupted")
	case d.underway.keepsPart:
		d.say("error", fmt.Sprintf("interrupted: %s holds what is done", part))
		d.say("hint", "to go on with it, give the same input and flags, and --resume")
	default:
		os.Remove(part)
		d.say("error", "interrupted: nothing was written")
	}
}

// endBy ends the program by a signal, so that a script that called it ends too.
func endBy(s os.Signal) {
	signal.Reset(s)
	if self, err := os.FindProcess(os.Getpid()); err == nil && self.Signal(s) == nil {
		time.Sleep(time.Second) // until it arrives
	}
	const interrupted = 128 + int(syscall.SIGINT)
	os.Exit(interrupted)
}
