package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.org/turfplat/zones"
)

// reports prints a page a site: covers, zones, deductions, edges.
type reports struct{ count int }

func (r *reports) print(w io.Writer, s surveyed) error {
	if r.count++; r.count > 1 {
		fmt.Fprintln(w)
	}
	f, m := figuresIn(s.site.Units), s.measure
	fmt.Fprintf(w, "%s\n\n", title(m))
	if _, err := coverTable(f, m, s.plat.Measure(s.plat.Ground.Unknown)).WriteTo(w); err != nil {
		return err
	}
	if len(m.Zones) > 1 || len(m.Zones) == 1 && !m.Zones[0].Apply {
		fmt.Fprintln(w)
		if _, err := zoneTable(f, m.Zones).WriteTo(w); err != nil {
			return err
		}
	}
	if len(m.Deductions) > 0 {
		fmt.Fprintln(w)
		if _, err := deductionTable(f, m).WriteTo(w); err != nil {
			return err
		}
	}
	fmt.Fprintf(w, "\nedges: %s along hardscape, %s along beds, %s to trim\n", f.length(m.Edges.TurfHardscapeM), f.length(m.Edges.TurfBedM), f.length(m.Edges.TrimM))
	if s.plat.TurfResidual() {
		fmt.Fprintln(w, "no lawn is mapped: turf is what is left of the outline")
	}
	_, err := fmt.Fprintln(w, "+/- is half of the 95 % interval that the traced edges bear")
	return err
}

func (r *reports) finish(io.Writer) error { return nil }

func title(m zones.Measurement) string {
	if m.Name == m.ID {
		return m.ID
	}
	return fmt.Sprintf("%s (%s)", m.Name, m.ID)
}

func coverTable(f figures, m zones.Measurement, unknown zones.AreaMeasure) *table {
	t := newTable("lrrr")
	t.row("cover", f.areaUnit(), "share", "+/-")
	whole := 0.0
	if m.Outline != nil {
		whole = m.Outline.AreaM2
	}
	covers := append([]zones.Kind{zones.Turf}, zones.CoverKinds...)
	for i, k := range covers {
		c, there := m.Covers[k]
		if !there || i > 0 && k == zones.Turf {
			continue
		}
		t.row(string(k), f.Area(c.AreaM2, c.CI95M2), share(c.AreaM2, whole), f.PlusMinus(c.CI95M2))
	}
	if m.Outline != nil {
		if unknown.AreaM2 > 0 {
			t.row("unknown", f.Area(unknown.AreaM2, unknown.CI95M2), share(unknown.AreaM2, whole), f.PlusMinus(unknown.CI95M2))
		}
		t.row("outline", f.Area(whole, m.Outline.CI95M2), share(whole, whole), f.PlusMinus(m.Outline.CI95M2))
	}
	return t
}

func zoneTable(f figures, measured []zones.ZoneMeasure) *table {
	sunny := slices.ContainsFunc(measured, func(z zones.ZoneMeasure) bool { return z.SunHours != nil })
	if !sunny {
		t := newTable("llrrl")
		t.row("zone", "", f.areaUnit(), "+/-", "")
		for _, z := range measured {
			t.row(z.Letter, z.Name, f.Area(z.AreaM2, z.CI95M2), f.PlusMinus(z.CI95M2), remarks(f, z))
		}
		return t
	}
	t := newTable("llrrrl")
	t.row("zone", "", f.areaUnit(), "+/-", "sun h", "")
	for _, z := range measured {
		t.row(z.Letter, z.Name, f.Area(z.AreaM2, z.CI95M2), f.PlusMinus(z.CI95M2), sunHours(z), remarks(f, z))
	}
	return t
}

// sunHours prints the hours of direct sun a day that a zone gets.
func sunHours(z zones.ZoneMeasure) string {
	if z.SunHours == nil {
		return ""
	}
	return fmt.Sprintf("%.1f", *z.SunHours)
}

// worthALook is the share of a zone near a limit of exposure that people are
// told of.
const worthALook = 0.05

func remarks(f figures, z zones.ZoneMeasure) string {
	var said []string
	if z.Exposure != "" && !z.NameTellsExposure() {
		said = append(said, z.Exposure)
	}
	if z.Species != "" && !z.NameTellsSpecies() {
		said = append(said, z.Species)
	}
	if z.SunFit != "" && !z.NameTellsFit() && z.Apply {
		said = append(said, z.SunFit)
	}
	if z.SlopePercent > 0 {
		said = append(said, fmt.Sprintf("slope %.0f %%, surface %s", z.SlopePercent, f.Area(z.SurfaceAreaM2, 0)))
	}
	if z.DoubtfulShare >= worthALook && z.Apply {
		said = append(said, fmt.Sprintf("%.0f %% near a limit: check on site", 100*z.DoubtfulShare))
	}
	if !z.Apply {
		said = append(said, "no application")
	}
	return strings.Join(said, ", ")
}

// traced names what deductions are taken off.
func traced(m zones.Measurement) string {
	if m.TracedTurf.From == zones.Outline {
		return "outline"
	}
	return "traced turf"
}

func deductionTable(f figures, m zones.Measurement) *table {
	t := newTable("llr")
	t.row("off the "+traced(m), "", f.areaUnit())
	for _, d := range m.Deductions {
		label := d.Name
		if label == "" {
			label = d.Feature
		}
		t.row(label, string(d.Kind), f.Area(d.AreaM2, 0))
	}
	return t
}
