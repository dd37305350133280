package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"example.org/turfplat/zones"
)

// explain tells of one spot which obstacle takes which hours of sun.
func (o *order) explain(text string) error {
	at, err := spot(text)
	if err != nil {
		return err
	}
	return o.write(func(w io.Writer) error {
		several := usageErrorf("--explain tells of a spot on one site: name one file")
		return o.one(several, func(s surveyed) error {
			reason, err := reasonAt(s, at)
			if err != nil {
				return err
			}
			if o.json {
				return writeJSON(w, reason, " ")
			}
			return reason.print(w)
		})
	})
}

// spot reads a place, longitude first.
func spot(text string) (orb.Point, error) {
	lon, lat, two := strings.Cut(text, ",")
	x, err1 := strconv.ParseFloat(strings.TrimSpace(lon), 64)
	y, err2 := strconv.ParseFloat(strings.TrimSpace(lat), 64)
	if !two || err1 != nil || err2 != nil || !(math.Abs(x) <= 180 && math.Abs(y) <= 90) {
		return orb.Point{}, usageErrorf("--explain %q is not a place: write LON,LAT in degrees", text)
	}
	return orb.Point{x, y}, nil
}

// String names it, and how high it stands if that is not known.
func (c caster) String() string {
	text := c.Name
	if text == "" {
		text = strings.TrimSpace(string(c.Kind) + " " + c.ID)
	}
	if c.HeightFrom == zones.Assumed {
		text += ", height assumed"
	}
	return text
}

// print tells it in words: the sum first, then an example of each month.
func (r *sunReason) print(w io.Writer) error {
	fmt.Fprintf(w, "%s, %.6f,%.6f%s\n%s, sun above %g degrees\n\n", r.Site, r.Place.Lon(), r.Place.Lat(), lying(r.Zone), r.Season, r.MinElevation)
	sum := newTable("lr")
	sum.row("hours of direct sun a day", "")
	sum.row("the sun is up", fmt.Sprintf("%.1f", r.Possible))
	for _, l := range r.Losses {
		if l.Hours >= 0.05 {
			sum.row("taken by "+l.String(), fmt.Sprintf("-%.1f", l.Hours))
		}
	}
	sum.row("left, "+r.Exposure, fmt.Sprintf("%.1f", r.Got))
	if _, err := sum.WriteTo(w); err != nil {
		return err
	}
	if r.SunLimits != nil {
		fmt.Fprintf(w, "\n%s there; %s\n", r.SunFit, needText(*r.SunLimits))
	}
	for _, d := range r.Days {
		fmt.Fprintf(w, "\n%s: sun from %s to %s, %.1f h of it left\n", d.Date, clock(d.Rise), clock(d.Set), d.Got)
		for _, shade := range d.Shades {
			fmt.Fprintf(w, "    %s to %s  %s%s\n", clock(shade.From), clock(shade.To), shade.caster, passing(shade.Pass))
		}
	}
	_, err := fmt.Fprintln(w, "\ntimes are of the sun, which stands highest at 12:00")
	return err
}

func lying(zone string) string {
	if zone == "" {
		return ", off the turf"
	}
	return ", in zone " + strconv.Quote(zone)
}

func passing(share float64) string {
	if share == 0 {
		return ""
	}
	return fmt.Sprintf(", lets %.0f %% through", 100*share)
}

// clock writes an hour of the day to the minute.
func clock(hour float64) string {
	minutes := int(math.Round(60 * hour))
	return fmt.Sprintf("%d:%02d", minutes/60, minutes%60)
}
