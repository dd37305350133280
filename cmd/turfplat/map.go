package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/render"
)

func mapCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "map",
		CustomHelpTemplate: mapHelp,
		OnUsageError:       onUsageError,
		Flags: readingFlags(outputFlag(), &cli.StringFlag{Name: "paper"}, &cli.StringFlag{Name: "scale"},
			&cli.BoolFlag{Name: "mono"}, &cli.BoolFlag{Name: "fixes"}),
		Action: func(c *cli.Context) error {
			o, err := d.order(c)
			if err != nil {
				return err
			}
			draw, err := o.drawing(c)
			if err != nil {
				return err
			}
			return o.drawMap(draw)
		},
	}
}

// A drawing is how a map is to be drawn.
type drawing struct {
	options render.MapOptions
	write   func(*render.Sheet) ([]byte, error)
}

// writers are the forms of a sheet by the ending of the file's name.
var writers = map[string]func(*render.Sheet) ([]byte, error){
	".svg": render.SVG,
	".pdf": func(s *render.Sheet) ([]byte, error) { return render.PDF(s) },
	".png": func(s *render.Sheet) ([]byte, error) { return render.PNG(s, 150) },
}

func (o *order) drawing(c *cli.Context) (drawing, error) {
	d := drawing{options: render.MapOptions{Mono: c.Bool("mono"), Fixes: c.Bool("fixes")}, write: render.SVG}
	if o.output != "" {
		var known bool
		if d.write, known = writers[strings.ToLower(filepath.Ext(o.output))]; !known {
			return d, usageErrorf("-o %s: a map is written as .pdf, .svg or .png", o.output)
		}
	}
	var err error
	if paper := c.String("paper"); paper != "" {
		if d.options.Paper, err = render.PaperNamed(paper); err != nil {
			return d, usageErrorf("--paper: %v", err)
		}
	}
	if scale := c.String("scale"); scale != "" {
		if d.options.Scale, err = render.ParseScale(scale); err != nil {
			return d, usageErrorf("--scale: %v", err)
		}
	}
	if o.json && o.output == "" {
		return d, usageErrorf("map --json tells of the file written: name it with -o")
	}
	return d, nil
}

// drawnMap is the machine form of what map did.
type drawnMap struct {
	Schema   string  `json:"schema"`
	Site     string  `json:"site"`
	File     string  `json:"file"`
	WidthMM  float64 `json:"width_mm"`
	HeightMM float64 `json:"height_mm"`
	Scale    int     `json:"scale"`
	Text     string  `json:"scale_text"`
}

func (o *order) drawMap(d drawing) error {
	var drawn drawnMap
	err := o.write(func(w io.Writer) error {
		count := 0
		return o.each(func(s surveyed) error {
			if count++; count > 1 {
				return fmt.Errorf("map draws one site, and there are more: give it one")
			}
			d.options.Units = s.site.Units
			if d.options.Fixes && !s.site.HasFixes() {
				o.tell("warning", fmt.Sprintf("%s: nothing in it was walked, so --fixes has none to draw", s.site.ID))
			}
			sheet, err := render.SiteMap(s.plat, s.measure, d.options)
			if err != nil {
				return fmt.Errorf("%s: %w", s.site.ID, err)
			}
			if len(sheet.Missing) > 0 {
				o.tell("warning", fmt.Sprintf("%s: the map's typeface has no %q, drawn as ?", s.site.ID, string(sheet.Missing)))
			}
			picture, err := d.write(sheet)
			if err != nil {
				return fmt.Errorf("%s: %w", s.site.ID, err)
			}
			drawn = drawnMap{"turfplat/map/1", s.site.ID, o.output, sheet.Width, sheet.Height, int(sheet.Scale), sheet.Scale.String()}
			_, err = w.Write(picture)
			return err
		})
	})
	if err == nil && o.json {
		return writeJSON(o.out, drawn, "")
	}
	return err
}

const mapHelp = `turfplat map draws the site map of one property, north up and true to scale.

Usage:
    turfplat map [flags] [FILE]

The form follows the ending of the output: .pdf, .svg or .png (150 dpi);
without -o it is SVG. The scale is the largest standard one at which the
property fits the sheet, upright or across.

Flags:
    --paper P      letter, tabloid, a4 or a3; default: letter, or a4 in metric
    --scale S      1:240, 20ft (1 in = 20 ft)
    --mono         black, white and grey only
    --fixes        the fixes that walked edges were found from, as dots
` + readingHelp + outHelp + `
Example:
    $ turfplat map yard.geojson -o yard.pdf
`
