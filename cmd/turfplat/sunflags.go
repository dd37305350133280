package main

import (
	"fmt"
	"strconv"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/zones"
	"example.org/turfplat/zones/sun"
	"example.org/turfplat/zones/turf"
)

// sunFlags are the flags of commands that work out hours of direct sun.
func sunFlags(more ...cli.Flag) []cli.Flag {
	return append([]cli.Flag{
		&cli.BoolFlag{Name: "sun"},
		&cli.StringFlag{Name: "season"},
		&cli.StringFlag{Name: "limits"},
		&cli.StringFlag{Name: "min-elevation"},
	}, more...)
}

// grassFlag names a table of grasses; all commands that lay zones have it.
func grassFlag() cli.Flag { return &cli.StringFlag{Name: "species", TakesFile: true} }

// readSun settles whether and how hours of sun are worked out. The flags that
// say how mean nothing without --sun.
func (o *order) readSun(c *cli.Context) error {
	if !c.Bool("sun") {
		for _, f := range sunFlags(&cli.StringFlag{Name: "explain"})[1:] {
			if name := f.Names()[0]; c.IsSet(name) {
				return usageErrorf("--%s says how hours of sun are worked out: add --sun", name)
			}
		}
		return nil
	}
	request := zones.SunRequest{Limits: sun.DefaultLimits(), MinElevation: sun.LeastElevation}
	var err error
	if request.Season, err = seasonNamed(c.String("season")); err != nil {
		return usageErrorf("--season: %w", err)
	}
	if text := c.String("limits"); text == "species" {
		request.ByGrass = true
	} else if c.IsSet("limits") {
		if request.Limits, err = sun.ParseLimits(text); err != nil {
			return usageErrorf("--limits: %w, or species", err)
		}
	}
	if text := c.String("min-elevation"); c.IsSet("min-elevation") {
		if request.MinElevation, err = elevation(text); err != nil {
			return err
		}
	}
	o.reading.Sun = &request
	return nil
}

// seasonNamed returns the season asked for at a latitude; nil if none is.
func seasonNamed(text string) (func(latitude float64) sun.Season, error) {
	switch text {
	case "":
		return nil, nil
	case "cool":
		return sun.Cool, nil
	case "warm":
		return sun.Warm, nil
	}
	season, err := sun.ParseSeason(text)
	if err != nil {
		return nil, fmt.Errorf("%w, or cool or warm", err)
	}
	return func(float64) sun.Season { return season }, nil
}

func elevation(text string) (sun.Degrees, error) {
	degrees, err := strconv.ParseFloat(text, 64)
	if err != nil || !(degrees >= 0 && degrees < 90) {
		return 0, usageErrorf("--min-elevation %q is not a number of degrees from 0 to 90", text)
	}
	return sun.Degrees(degrees), nil
}

// grasses reads a user's table of grasses; the built-in ones if there is none.
func grasses(file string) (*turf.Table, error) {
	if file == "" {
		return turf.Default(), nil
	}
	f, err := openNamed(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	table, err := turf.Read(f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	return table, nil
}

const sunHelp = `    --sun          work out the hours of direct sun a day
    --season S     of which season: FROM..TO as month-day, 04-15..10-15 (one
                   day: FROM = TO), cool or warm; default: that of the grasses
                   stated, else cool
    --limits H     least hours of full sun, part sun and shade, by which zones
                   are divided; default: 6,4,2. species: divide each zone where
                   its own grass has enough sun, is short of it, has too little
    --min-elevation D
                   sun counts from so many degrees above the horizon; default: 5
`

const grassHelp = `    --species FILE a table of grasses to use beside the built-in one, CSV: name,
                   and columns such as sun_h (enough) and least_sun_h
`
