package main

import (
	"github.com/urfave/cli/v2"

	"example.org/turfplat/render"
	"example.org/turfplat/zones"
)

// packetFlags are the flags that make a packet of a map.
func packetFlags(more ...cli.Flag) []cli.Flag {
	return planningFlags(append([]cli.Flag{
		&cli.StringSliceFlag{Name: "step"},
		&cli.BoolFlag{Name: "with-codes"},
	}, more...)...)
}

// A packet is which sheets of a plan are drawn with a map; none without a
// planning.
type packet struct {
	*planning
	steps []string
	codes bool
}

// packet reads the flags of packets. They mean nothing without a program.
func (o *order) packet(c *cli.Context) (packet, error) {
	if !c.IsSet("program") {
		return packet{}, refuseIdle(c, "no program is given: add --program", "step", "with-codes", "soil", "columns", "station", "on", "year")
	}
	planning, err := o.planning(c)
	return packet{planning, c.StringSlice("step"), c.Bool("with-codes")}, err
}

// sheets lays the program on a site and draws its packet.
func (p packet) sheets(s surveyed) sheetmaker {
	return func(plat *zones.Plat, m zones.Measurement, options render.MapOptions) ([]*render.Sheet, error) {
		plan, err := p.planOn(s)
		if err != nil {
			return nil, err
		}
		return render.Packet(plat, m, plan, render.PacketOptions{
			MapOptions: options, Steps: p.steps, Sun: p.reading.Sun != nil, Codes: p.codes,
		})
	}
}
