package main

import (
	"iter"
	"runtime"
)

// inOrder does something with each item, with as many at a time as there are
// cores, and yields the results in the order of the items.
func inOrder[T, R any](items iter.Seq[T], do func(T) R) iter.Seq[R] {
	return func(yield func(R) bool) {
		queue := make(chan chan R, runtime.GOMAXPROCS(0)-1)
		stop := make(chan struct{})
		defer close(stop)
		go work(items, do, queue, stop)
		for next := range queue {
			if !yield(<-next) {
				return
			}
		}
	}
}

func work[T, R any](items iter.Seq[T], do func(T) R, queue chan<- chan R, stop <-chan struct{}) {
	defer close(queue)
	for item := range items {
		next := make(chan R, 1)
		select {
		case queue <- next:
		case <-stop:
			return
		}
		go func() { next <- do(item) }()
	}
}
