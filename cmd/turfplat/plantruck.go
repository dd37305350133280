package main

import (
	"fmt"
	"io"
	"strings"

	"example.org/turfplat/zones/program"
)

// printTruck writes what one truck takes for all that is ready on several
// sites: the sum, the packs for it, and what each site gets.
func printTruck(w io.Writer, plans []*program.Plan) error {
	loads, err := program.Load(plans)
	if err != nil {
		return err
	}
	page := newPlanPage(plans[0])
	page.line("\n\nTHE TRUCK, one visit to %d sites for all that is ready", len(plans))
	if len(loads) == 0 {
		page.line("nothing is to be loaded")
	}
	t := newTable("lrrl")
	for _, b := range loads {
		var sites []string
		for _, s := range b.Sites {
			sites = append(sites, fmt.Sprintf("%s %s", s.Site, page.amounts.Amount(s.Needed)))
		}
		t.row(b.Product, page.amounts.Amount(b.ToLoad).String(), page.amounts.Packs(b), strings.Join(sites, ", "))
	}
	page.table(t)
	_, err = page.WriteTo(w)
	return err
}
