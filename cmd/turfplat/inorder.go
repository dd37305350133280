package main

import (
	"iter"
	"runtime"
)

// ahead is how many items for each core may be done or waiting while the next
// one in order is not: enough that one long item holds up no core, few enough
// that memory stays flat.
const ahead = 16

// begun is how many for each core may be read and not done: enough that a core
// which has done one finds the next at hand.
const begun = 4

// inOrder does something with each item, with several at a time, and yields the results in the order of the items.
func inOrder[T, R any](items iter.Seq[T], do func(T) R) iter.Seq[R] {
	return func(yield func(R) bool) {
		cores := runtime.GOMAXPROCS(0)
		queue := make(chan chan R, ahead*cores)
		stop := make(chan struct{})
		defer close(stop)
		go work(items, do, cores, queue, stop)
		for next := range queue {
			if !yield(<-next) {
				return
			}
		}
	}
}

func work[T, R any](items iter.Seq[T], do func(T) R, cores int, queue chan<- chan R, stop <-chan struct{}) {
	defer close(queue)
	free := make(chan struct{}, begun*cores)
	for item := range items {
		next := make(chan R, 1)
		select {
		case queue <- next:
		case <-stop:
			return
		}
		free <- struct{}{}
		go func() {
			next <- do(item)
			<-free
		}()
	}
}
