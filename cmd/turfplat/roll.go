package main

import (
	"fmt"

	"example.org/turfplat/geo/ingest"
)

// A roll keeps count of the sites that are done, tells what was found in them
// and shows how it goes on.
type roll struct {
	order          *order
	progress       *progress
	told           *sparing // of all sites together
	count, refused int
}

func (o *order) roll() *roll { return &roll{order: o, progress: o.progress(), told: o.sparing()} }

// add takes a site that is done. What was found in it is told sparingly: there
// may be a million.
func (r *roll) add(problems []ingest.Problem, refused bool) {
	if len(problems) > 0 {
		r.progress.hide()
		r.told.tell(problems)
	}
	if r.count++; refused {
		r.refused++
	}
	r.progress.step()
}

// end tells the sum, and returns errRefused if a site was.
func (r *roll) end() error {
	r.progress.hide()
	if r.order.lines {
		r.told.sum("")
	} else {
		r.told.sum(checkLists)
	}
	if r.refused == 0 {
		return nil
	}
	if r.order.lines && r.count > 1 {
		r.order.tell("error", fmt.Sprintf("%d of %s refused", r.refused, plural(r.count, "site")))
	}
	return errRefused
}
