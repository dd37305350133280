package main

import (
	"bytes"
	"io"
	"iter"
	"runtime"

	"example.org/turfplat/cmd/turfplat/packing"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// A route makes a stretch of output of each of many items, in their order.
type route[T any] struct {
	items iter.Seq[T]
	make  func(T) product
	head  []byte // what the output begins with

	// to go on where a run broke off:
	id      func(T) string                    // of an item, as it stands in what is made of it
	mark    func(line []byte) mark            // of a line of the output
	records func(packing.Lines) packing.Lines // of lines, if one may take several
	single  bool                              // each item makes one line
}

// slack is how many bytes of garbage may pile up beyond the usual, which is as
// many as live: of a site nothing does once its line is written, and to collect
// after every few sites takes a fifth of the time of two cores.
const slack = 16 << 20

// letGarbagePile lets garbage pile up until what it returns is called. It holds
// memory that nothing touches: that takes none of the machine's, but counts as
// living when it is decided how much garbage may be.
func letGarbagePile() (asBefore func()) {
	untouched := make([]byte, slack)
	return func() { runtime.KeepAlive(untouched) }
}

// A product is what became of an item.
type product struct {
	problems []ingest.Problem
	text     []byte // nil if there is none
	refused  bool
	counted  func() // called in the order of the items; may be nil
	err      error  // ends the route
}

// surveying is the route that surveys the sites of an order's files.
func (o *order) surveying(text func(surveyed) ([]byte, error)) route[*ingest.Collection] {
	return route[*ingest.Collection]{
		items: o.sites(), id: zones.IDOf, single: true,
		make: func(c *ingest.Collection) product {
			s := o.survey(c)
			if s.plat == nil {
				return product{problems: s.site.Problems, refused: true}
			}
			t, err := text(s)
			if err != nil {
				s.site.Refuse("not_made", err.Error(), "")
				tellSite(s.site)
				return product{problems: s.site.Problems, refused: true}
			}
			return product{problems: s.site.Problems, text: t}
		},
	}
}

// siteLines is the route that makes a site file of each site.
func (o *order) siteLines(file func(surveyed) (*ingest.Collection, error)) route[*ingest.Collection] {
	r := o.surveying(func(s surveyed) ([]byte, error) {
		c, err := file(s)
		if err != nil {
			return nil, err
		}
		return siteText(c, s.site.ID)
	})
	r.mark = siteLine
	return r
}

// siteText is a site file on a line. It has an id, for its line has another
// number than that which it was read from.
func siteText(c *ingest.Collection, id string) ([]byte, error) {
	if zones.IDOf(&ingest.Collection{Members: c.Members}) != id {
		c.SetWithin("site", "id", id)
	}
	var b bytes.Buffer
	err := c.WriteGeoJSONLine(&b)
	return b.Bytes(), err
}

// do makes all of it and writes it as the order says.
func (r route[T]) do(o *order) error {
	defer letGarbagePile()()
	items := tapped(r.items)
	defer items.close()
	var done standing
	if o.resume {
		var err error
		if done, err = r.standing(o, items.next); err != nil {
			return err
		}
	}
	o.resumable = true
	return o.writeTo(o.output, done.at, func(w io.Writer) error {
		if done.at == 0 {
			done.rest = r.head
		}
		out := &written{w: w}
		if len(done.rest) > 0 {
			if _, err := out.Write(done.rest); err != nil {
				return err
			}
		}
		err := r.pour(o, out, items.left(), done)
		if done.whole && o.keeps(err) && out.bytes == 0 {
			o.tell("hint", o.output+" was whole already")
		}
		return err
	})
}

// A written output counts its bytes.
type written struct {
	w     io.Writer
	bytes int
}

func (o *written) Write(p []byte) (int, error) {
	n, err := o.w.Write(p)
	o.bytes += n
	return n, err
}

// pour makes and writes items. Those that are refused are told and left out.
func (r route[T]) pour(o *order, w io.Writer, items iter.Seq[T], done standing) error {
	roll := o.roll()
	defer roll.progress.hide()
	roll.count, roll.refused = done.sites+done.refused, done.refused
	for p := range inOrder(items, r.make) {
		if p.err != nil {
			return p.err
		}
		roll.add(p.problems, p.refused)
		if p.counted != nil {
			p.counted()
		}
		if p.text != nil {
			if _, err := w.Write(p.text); err != nil {
				return err
			}
		}
	}
	return roll.end()
}
