package main

import (
	"iter"
	"runtime"
)

// waiting is how many items may be read and not begun: for one core few, which
// are still in its cache when it comes to them; for several so many that none
// goes to sleep while another reads.
func waiting(cores int) int {
	if cores == 1 {
		return 4
	}
	return 32 * cores
}

// ahead is how many may be done or waiting while the next one in order is not:
// enough that one long item holds up no core, few enough that memory stays flat.
func ahead(cores int) int { return 4 * waiting(cores) }

// inOrder does something with each item, with several at a time, and yields the results in the order of the items.
func inOrder[T, R any](items iter.Seq[T], do func(T) R) iter.Seq[R] {
	return func(yield func(R) bool) {
		cores := runtime.GOMAXPROCS(0)
		queue := make(chan chan R, ahead(cores))
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
	type job struct {
		item T
		done chan<- R
	}
	jobs := make(chan job, waiting(cores))
	defer close(jobs)
	for range cores {
		go func() {
			for j := range jobs {
				j.done <- do(j.item)
			}
		}()
	}
	for item := range items {
		next := make(chan R, 1)
		select {
		case queue <- next:
		case <-stop:
			return
		}
		jobs <- job{item, next}
	}
}
