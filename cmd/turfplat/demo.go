package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"github.com/urfave/cli/v2"

	"example.org/turfplat/render"
	"example.org/turfplat/samples"
	"example.org/turfplat/zones"
	"example.org/turfplat/zones/program"
)

func demoCommand(d *desk) *cli.Command {
	return &cli.Command{
		Name:               "demo",
		CustomHelpTemplate: demoHelp,
		OnUsageError:       onUsageError,
		Flags:              []cli.Flag{outputFlag(), &cli.BoolFlag{Name: "json"}},
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return usageErrorf("demo takes no files: the folder to write into is -o DIR")
			}
			folder := c.String("output")
			if folder == "" {
				folder = "turfplat-demo"
			}
			return d.demo(folder, c.Bool("json"))
		},
	}
}

// A demoFile is a file of the demo and what it is.
type demoFile struct {
	Name  string `json:"file"`
	About string `json:"about"`
	data  []byte
}

func (d *desk) demo(folder string, asJSON bool) error {
	files, err := d.demoFiles()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for i, f := range files {
		files[i].Name = filepath.ToSlash(filepath.Join(folder, f.Name))
		all := func(w io.Writer) error { _, err := w.Write(f.data); return err }
		if err := replaceFile(files[i].Name, all, func(err error) bool { return err == nil }); err != nil {
			return err
		}
	}
	if asJSON {
		return writeJSON(d.out, struct {
			Schema string     `json:"schema"`
			Files  []demoFile `json:"files"`
		}{"turfplat/demo/1", files}, " ")
	}
	t := newTable("ll")
	for _, f := range files {
		t.row(f.Name, f.About)
	}
	if _, err := t.WriteTo(d.out); err != nil {
		return err
	}
	_, err = fmt.Fprintf(d.out, "\nnow try: turfplat measure %s\n", files[0].Name)
	return err
}

// demoFiles makes all files of the demo before any is written.
func (d *desk) demoFiles() ([]demoFile, error) {
	o := &order{desk: &desk{in: bytes.NewReader(samples.AlderLane), messages: d.messages}, files: []string{"-"}, reading: zones.Reading{Key: zones.DefaultMapKey()}}
	var files []demoFile
	err := o.each(func(s surveyed) error {
		sheet, err := render.SiteMap(s.plat, s.measure, render.MapOptions{Units: s.site.Units})
		if err != nil {
			return err
		}
		pdf, err := render.PDF(sheet)
		if err != nil {
			return err
		}
		svg, err := render.SVG(sheet)
		if err != nil {
			return err
		}
		packet, page, err := demoPacket(s)
		if err != nil {
			return err
		}
		var feed bytes.Buffer
		rows := newCSVRows(&feed).head()
		if err := rows.write(s.plat.FeedRows(s.measure, software())); err != nil {
			return err
		}
		files = []demoFile{
			{samples.AlderLaneName, "the site file of an invented property", samples.AlderLane},
			{"alder-lane-map.pdf", "its site map, true to scale", pdf},
			{"alder-lane-map.svg", "the same, for a screen", svg},
			{samples.AlderLaneSeasonName, "a season's program for it", samples.AlderLaneSeason},
			{"alder-lane-packet.pdf", "the packet for its crew, as of " + program.LongDay(demoDay), packet},
			{"alder-lane-crew.html", "the same, for a phone", page},
			{"alder-lane-feed.csv", "its rows for a quoting tool", nil},
		}
		err = rows.finish()
		files[len(files)-1].data = feed.Bytes()
		return err
	})
	return files, err
}

// demoDay is a day on which much is due in the sample's season.
var demoDay = time.Date(2026, time.April, 20, 0, 0, 0, 0, time.UTC)

// demoPacket draws the packet of the sample, on paper and for a phone.
func demoPacket(s surveyed) (pdf, page []byte, err error) {
	season, problems := program.Read(bytes.NewReader(samples.AlderLaneSeason), samples.AlderLaneSeasonName)
	if season == nil {
		return nil, nil, fmt.Errorf("%v", problems)
	}
	plan, err := season.Plan(propertyOf(s), program.Occasion{Today: demoDay})
	if err != nil {
		return nil, nil, err
	}
	how := render.PacketOptions{MapOptions: render.MapOptions{Units: s.site.Units}}
	sheets, err := render.Packet(s.plat, s.measure, plan, how)
	if err != nil {
		return nil, nil, err
	}
	if _, page, err = render.Page(s.plat, s.measure, plan, render.PageOptions{PacketOptions: how}); err != nil {
		return nil, nil, err
	}
	pdf, err = render.PDF(render.Bound(sheets...)...)
	return pdf, page, err
}

const demoHelp = `turfplat demo writes an invented property into a folder: its site file, its
site map as PDF and SVG, a season's program, the packet that its crew takes
along, on paper and as a page for a phone, and its rows for a quoting tool.

Usage:
    turfplat demo [flags]

Flags:
    -o DIR         the folder; default: turfplat-demo
    --json         print for machines
`
