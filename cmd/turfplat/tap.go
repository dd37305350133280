package main

import (
	"iter"
	"sync"
)

// A tap gives items one by one and then the others as a sequence.
type tap[T any] struct {
	busy sync.Mutex // while an item is waited for
	pull func() (T, bool)
	stop func()
	shut bool
}

func tapped[T any](items iter.Seq[T]) *tap[T] {
	t := new(tap[T])
	t.pull, t.stop = iter.Pull(items)
	return t
}

func (t *tap[T]) next() (item T, ok bool) {
	t.busy.Lock()
	defer t.busy.Unlock()
	if t.shut {
		return item, false
	}
	return t.pull()
}

// left are the items that were not given yet.
func (t *tap[T]) left() iter.Seq[T] {
	return func(yield func(T) bool) {
		for item, ok := t.next(); ok; item, ok = t.next() {
			if !yield(item) {
				return
			}
		}
	}
}

// close lets go of the items, unless another goroutine is waiting for one: an
// output that failed does not wait for an input that may never go on.
func (t *tap[T]) close() {
	if t.busy.TryLock() {
		defer t.busy.Unlock()
		t.shut = true
		t.stop()
	}
}
